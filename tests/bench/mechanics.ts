/** The mechanics beside the sheet: how sure, how it rings, what lies flat, which other builds, what measured pairs teach. */
import { engineCatalog, loadCatalog, priceBookNamed } from "#catalog";
import { assessSheet, sameFlexOptions } from "#engine/assessment";
import { calibrate, type MeasuredSki } from "#engine/calibration";
import { solveSpec } from "#engine/configuration";
import {
  closingForceN,
  evaluateFlex,
  flexSpread,
  type SkiBuild,
  type SkiFlex,
  skiBehaviour,
  type ThicknessProfile,
} from "#engine/flex";
import { type SkiOnSnowInput, skiOnSnow } from "#engine/snow";
import { radians } from "#engine/units";
import { arithmetic, type Measured, measured } from "./measure";

const loaded = loadCatalog();
const catalog = engineCatalog(loaded, priceBookNamed(loaded, "PB-3"));
const answers = { heightCm: 182, massKg: 82, ability: "confident", offPistePercent: 40 } as const;
const million = "1,000,000 multiply-adds";

export async function mechanicsMeasures(): Promise<Measured[]> {
  const { spec } = assessSheet({ answers, choices: {} }, catalog);
  const solved = spec === null ? null : solveSpec(spec, catalog.build);
  const { scatter } = catalog.build.rules;
  if (spec === null || !solved?.ok || !scatter) throw new Error("the bench's sheet gives no ski");
  const { build, core, flexWithPlate } = solved.value;
  const skis = thirtyPairs(spec, flexWithPlate);
  const plain = arithmetic(1e6);
  const found = [
    await measured("spread of one ski (first order)", () => flexSpread(build, core.profile, scatter), million, plain),
    await measured("swing, twist and frequencies", () => skiBehaviour(build, flexWithPlate), million, plain),
    await measured("twist of a whole ski (all its stations)", () => twistOf(build, core.profile), million, plain),
    await measured("force that closes the camber", () => closingForceN(build, flexWithPlate), million, plain, 3),
    await measured("a ski on snow, on edge", () => skiOnSnow(onEdge(build, flexWithPlate)), million, plain),
    await measured(
      "all builds of the same flex",
      () => sameFlexOptions({ answers, choices: {} }, catalog),
      million,
      plain,
      3,
    ),
    await measured(
      "learning from 30 pairs (60 skis, 300 readings)",
      () => calibrate(skis, catalog.build, loaded.calibration, [], "CB-1"),
      million,
      plain,
      1,
    ),
  ];
  return found;
}

/** Asks a ski worked out anew for its stiffness in twist. */
function twistOf(build: SkiBuild, profile: ThicknessProfile): number {
  return evaluateFlex(build, profile).stations.reduce(
    (sum, { torsionalStiffnessNmm2 }) => sum + torsionalStiffnessNmm2,
    0,
  );
}

/** Thirty pairs that measure a little off what was computed, each with a flex of its own. */
function thirtyPairs(
  spec: MeasuredSki["spec"],
  flex: {
    readonly massKg: number;
    readonly springCentreNPerMm: number;
    readonly springForebodyNPerMm: number;
    readonly springAfterbodyNPerMm: number;
  },
): readonly MeasuredSki[] {
  return Array.from({ length: 60 }, (_, i) => {
    const off = 1 + ((i * 37) % 11) / 500;
    return {
      id: `bench-${i}`,
      pair: `bench-${Math.floor(i / 2)}`,
      side: i % 2 === 0 ? "L" : "R",
      spec: { ...spec, flexRatio: 0.9 + (i % 10) / 50 },
      measured: {
        massKg: flex.massKg * off,
        camberMm: 4,
        springCentreNPerMm: flex.springCentreNPerMm * off,
        springForebodyNPerMm: flex.springForebodyNPerMm * off,
        springAfterbodyNPerMm: flex.springAfterbodyNPerMm * off,
      },
    };
  });
}

/** 84 kg at 45° on packed snow. */
function onEdge({ shape, mountFromTipMm }: SkiBuild, { stations }: SkiFlex): SkiOnSnowInput {
  const standing = { mountMm: mountFromTipMm, bootSoleMm: 310, weightN: 824, bed: { hardnessNPerMm3: 0.05 } };
  return { shape, stations, ...standing, edgeAngle: radians(45) };
}
