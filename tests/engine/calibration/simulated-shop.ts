/**
 * A shop whose materials and mill are off by amounts that only the test knows. Its readings are computed with those amounts
 * and given seeded noise; the fit sees the readings alone. The rule is the same as in any simulation study: what is
 * recovered is compared with what was put in, never with an earlier output.
 */
import { type CalibrationSettings, type MeasuredSki, type PredictedValues, predictSki } from "#engine/calibration";
import type { BuildableSpec, BuildCatalog } from "#engine/configuration";
import type { Corrections } from "#engine/materials";
import { type Random32, seededRandom, unitFromU32 } from "#engine/math";
import { catalog, specOf } from "../demo-catalog";

export const nominal: BuildCatalog = catalog.build;

export const settings: CalibrationSettings = {
  leastPairs: 20,
  priorSd: { modulus: 0.08, density: 0.04, sheet: 0.01, coreOffsetMm: 0.1, camberOffsetMm: 1, twist: 0.1 },
  readingSd: { mass: 0.01, spring: 0.01, camberMm: 0.3, twist: 0.02 },
  suspiciousAt: 4.5,
};

/** A bench that reads ten times as well: what is left then is the fit's own error. */
export const fineSettings: CalibrationSettings = {
  ...settings,
  readingSd: { mass: 0.001, spring: 0.001, camberMm: 0.03, twist: 0.002 },
};

export const hidden: Corrections = {
  version: "hidden",
  moduli: { aspen: 0.94, ash: 1.04, "triax-750": 1.05 },
  densities: { "triax-750": 1.03 },
  coreOffsetMm: 0.08,
  camberOffsetMm: -0.7,
  twist: 0.93,
};

export const truth: BuildCatalog = { ...nominal, corrections: hidden };

const MODELS = ["kerfline-68", "pathwick-75", "midlow-84", "midlow-95"];
const CORES = ["aspen-ash", "poplar-ash", "maple-aspen", "aspen-ash", "maple-poplar-planted"];
const RATIOS = [0.8, 0.9, 1, 1.1, 1.3];
const EXTRAS: readonly (readonly string[])[] = [[], ["carbon-stringers"], [], ["carbon-biax"], ["flax"]];

/** Specs of pair number i: models, cores, lengths, ratios and reinforcements in changing company. */
function specNumber(i: number): BuildableSpec {
  const model = MODELS[i % MODELS.length] ?? "";
  const lengths = nominal.models.find((each) => each.id === model)?.lengths ?? [];
  const {
    model: id,
    lengthCm,
    core,
    reinforcements,
    flexRatio,
  } = specOf({
    model,
    lengthCm: lengths[(i * 3) % lengths.length]?.lengthCm ?? 0,
    core: CORES[(i + Math.floor(i / 4)) % CORES.length] ?? "",
    reinforcements: EXTRAS[(i * 2 + Math.floor(i / 5)) % EXTRAS.length] ?? [],
    flexRatio: RATIOS[(i + Math.floor(i / 3)) % RATIOS.length] ?? 1,
  });
  return { model: id, lengthCm, core, reinforcements, flexRatio };
}

/** Normal draw by Box and Muller (1958). */
function normal(random: Random32): number {
  return Math.sqrt(-2 * Math.log(unitFromU32(random()))) * Math.cos(2 * Math.PI * unitFromU32(random()));
}

/** What the hidden shop builds of a spec, without noise. */
export function truly(ski: Pick<MeasuredSki, "spec" | "strips">): PredictedValues {
  const values = predictSki(ski, truth);
  if (!values.ok) throw new Error(JSON.stringify(values.refusal));
  return values.value;
}

/** Two measured skis a pair, with strips of their own, read with the scatter that the settings name. */
export function measuredPairs(pairs: number, seed: number, { readingSd } = settings): readonly MeasuredSki[] {
  const random = seededRandom(seed);
  return Array.from({ length: pairs }, (_, i) => i).flatMap((i) => {
    const spec = specNumber(i);
    const pair = `TY-${String(100 + i).padStart(4, "0")}`;
    return (["L", "R"] as const).map((side): MeasuredSki => {
      const ski = { spec, strips: stripsOf(spec, random) };
      const exact = truly(ski);
      const scaled = (value: number, sd: number) => value * (1 + sd * normal(random));
      return {
        ...ski,
        id: `${pair}-${side}`,
        pair,
        side,
        measured: {
          massKg: scaled(exact.massKg, readingSd.mass),
          camberMm: exact.camberMm + readingSd.camberMm * normal(random),
          springCentreNPerMm: scaled(exact.springCentreNPerMm, readingSd.spring),
          springForebodyNPerMm: scaled(exact.springForebodyNPerMm, readingSd.spring),
          springAfterbodyNPerMm: scaled(exact.springAfterbodyNPerMm, readingSd.spring),
          twistNmPerDeg: scaled(exact.twistNmPerDeg, readingSd.twist),
        },
      };
    });
  });
}

/** Strips as the bench read them: matched twins scatter about the handbook's axial value by 8 %. */
function stripsOf(spec: BuildableSpec, random: Random32): NonNullable<MeasuredSki["strips"]> {
  const blend = nominal.blends.find((each) => each.id === spec.core);
  const entries = (["C", "I", "M", "O"] as const).map((position) => {
    const wood = nominal.materials.woods.find((each) => each.id === blend?.strips[position]);
    if (!wood) throw new Error(`${spec.core}: no wood in ${position}`);
    return [
      position,
      {
        modulusMpa: 1.1 * wood.bendingModulusMpa * (1 + 0.08 * normal(random)),
        densityKgM3: wood.densityKgM3 * (1 + 0.04 * normal(random)),
      },
    ] as const;
  });
  return Object.fromEntries(entries) as NonNullable<MeasuredSki["strips"]>;
}
