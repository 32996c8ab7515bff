/** The core card: thickness programme, strips, pocket, spacers, and the wood's weight as milled. */
import words from "#content/copy/papers.json";
import { type BuildCatalog, type CoreBlend, coreMassG, milledPocket, stripPlaces } from "#engine/configuration";
import { type CoreSolution, profileMarks, profileName, type SkiBuild, thicknessAt } from "#engine/flex";
import { fill } from "#engine/units";
import type { AllocatedStrip } from "#papers/build-sheet/facts";
import type { SkiSide, WoodFacts } from "#papers/parts/facts";
import { numberText, plainNumber } from "#papers/parts/format";
import type { CoreDrawing, StripRow } from "./printed";

const STATION_COUNT = 9;
/** A maker marks the stations with a tape: whole centimetres. */
const STATION_GRID_MM = 10;

export function composeCore(input: {
  readonly build: SkiBuild;
  readonly core: CoreSolution;
  readonly catalog: BuildCatalog;
  readonly blend: CoreBlend;
  readonly strips: readonly AllocatedStrip[] | null;
  readonly wood: WoodFacts | undefined;
  /** Model-length and its revision, e.g. "M95-178-C". */
  readonly mould: string;
}): CoreDrawing {
  const { build, core, catalog, blend, strips, wood: moisture, mould } = input;
  const { rules } = catalog;
  const wood = { fromMm: build.coreFromMm, toMm: build.coreToMm };
  const massG = (ski: SkiSide) =>
    coreMassG(
      build,
      core.profile,
      rules,
      strips?.filter((strip) => strip.ski === ski),
    );
  return {
    profileId: profileName(mould, core.profile),
    wood,
    thickness: core.profile.stations.map((s) => ({ x: s.xMm, y: s.thicknessMm })),
    stations: profileMarks(core.profile, wood, STATION_COUNT, STATION_GRID_MM).map((mark, index) => ({
      name: String(index + 1),
      xMm: mark.xMm,
      plannedMm: mark.thicknessMm,
    })),
    strips: build.columns.map((c) => ({
      position: c.position,
      innerMm: c.innerMm,
      outerMm: c.outerMm,
      species: woodLabel(catalog, blend.strips[c.position]),
    })),
    sidewall: { widthMm: build.sidewall.widthMm, material: build.sidewall.material.label },
    pocket: pocketOf(build, catalog),
    hollows: build.pockets ?? [],
    spacers: {
      tipMm: build.coreFromMm,
      tailMm: build.shape.lengthMm - build.coreToMm,
      scarfMm: rules.spacers.scarfMm,
      tipThicknessMm: thicknessAt(core.profile, build.coreFromMm),
      tailThicknessMm: thicknessAt(core.profile, build.coreToMm),
      material: (build.spacer ?? build.sidewall.material).label,
    },
    moisture: moisture ? moistureText(moisture) : "",
    plannedG: { L: massG("L"), R: massG("R") },
    thicknessAtMountMm: thicknessAt(core.profile, build.mountFromTipMm),
  };
}

function moistureText({ moistureFromPercent, moistureToPercent }: WoodFacts): string {
  return fill(words.buildSheet.core.moistureValue, {
    fromPercent: plainNumber(moistureFromPercent, 1),
    toPercent: plainNumber(moistureToPercent, 1),
  });
}

function pocketOf({ plate }: SkiBuild, { rules }: BuildCatalog): CoreDrawing["pocket"] {
  if (!plate) return null;
  return {
    ...milledPocket(plate, rules),
    plateLengthMm: plate.lengthMm,
    plateWidthMm: plate.widthMm,
    plateMm: plate.thicknessMm,
    rubberMm: plate.rubberMm,
    plate: plate.material.label,
  };
}

export function woodLabel(catalog: BuildCatalog, id: string): string {
  return catalog.materials.woods.find((w) => w.id === id)?.label ?? id;
}

/** The seven places of one core from left to right, each with its strip or an empty line to write in. */
export function composeStrips(
  ski: SkiSide,
  strips: readonly AllocatedStrip[] | null,
  blend: CoreBlend,
  catalog: BuildCatalog,
): readonly StripRow[] {
  return stripPlaces.map(({ position, place }) => {
    const strip = strips?.find((s) => s.ski === ski && s.position === position && s.place === place);
    return {
      position,
      place,
      species: woodLabel(catalog, strip?.species ?? blend.strips[position]),
      id: strip?.id ?? "",
      bin: strip?.bin ?? "",
      board: strip?.board ?? "",
      modulus: strip?.modulusMpa ? numberText(strip.modulusMpa / 1000, 2) : "",
      density: strip?.densityKgM3 ? numberText(strip.densityKgM3) : "",
    };
  });
}
