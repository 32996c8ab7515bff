/** The core card: thickness programme, strips, pocket, spacers, and the wood's weight as milled. */
import type { BuildCatalog, CoreBlend } from "#engine/configuration";
import type { CoreSolution, SkiBuild, StripColumn, ThicknessProfile } from "#engine/flex";
import { halfWidthAt } from "#engine/geometry";
import type { AllocatedStrip } from "#papers/build-sheet/facts";
import type { SkiSide } from "#papers/parts/facts";
import { numberText } from "#papers/parts/format";
import type { CoreDrawing, StripRow } from "./printed";

const STATION_COUNT = 9;
/** A maker marks the stations with a tape: whole centimetres. */
const STATION_GRID_MM = 10;
const WEIGHT_STEPS = 400;

export function composeCore(input: {
  readonly build: SkiBuild;
  readonly core: CoreSolution;
  readonly catalog: BuildCatalog;
  readonly blend: CoreBlend;
  readonly strips: readonly AllocatedStrip[] | null;
  /** Model-length and its revision, e.g. "M95-178-C". */
  readonly mould: string;
}): CoreDrawing {
  const { build, core, catalog, blend, strips, mould } = input;
  const { rules } = catalog;
  const { stations } = core.profile;
  return {
    profileId: `${mould}-${profileChecksum(core.profile)}`,
    wood: { fromMm: build.coreFromMm, toMm: build.coreToMm },
    thickness: stations.map((s) => ({ x: s.xMm, y: s.thicknessMm })),
    stations: nineStations(core.profile, build.coreFromMm, build.coreToMm),
    strips: build.columns.map((c) => ({
      position: c.position,
      innerMm: c.innerMm,
      outerMm: c.outerMm,
      species: woodLabel(catalog, blend.strips[c.position]),
    })),
    sidewall: { widthMm: build.sidewall.widthMm, material: build.sidewall.material.label },
    pocket: pocketOf(build, catalog),
    spacers: {
      tipMm: build.coreFromMm,
      tailMm: build.shape.lengthMm - build.coreToMm,
      scarfMm: rules.spacers.scarfMm,
      tipThicknessMm: thicknessAt(core.profile, build.coreFromMm),
      tailThicknessMm: thicknessAt(core.profile, build.coreToMm),
      material: (build.spacer ?? build.sidewall.material).label,
    },
    plannedG: {
      L: coreMassG(build, core.profile, pocketDepthMm(build, catalog), strips, "L"),
      R: coreMassG(build, core.profile, pocketDepthMm(build, catalog), strips, "R"),
    },
    thicknessAtMountMm: thicknessAt(core.profile, build.mountFromTipMm),
  };
}

/** FNV-1a, 32 bits, over the programme in hundredths of a millimetre: a name, not a secret. */
function profileChecksum({ stations }: ThicknessProfile): string {
  const text = stations.map((s) => `${Math.round(s.xMm)}:${Math.round(s.thicknessMm * 100)}`).join(",");
  let hash = 0x811c9dc5;
  for (const character of text) hash = Math.imul(hash ^ character.charCodeAt(0), 0x01000193);
  return (hash >>> 0).toString(16).toUpperCase().padStart(8, "0").slice(-6);
}

function pocketDepthMm(build: SkiBuild, catalog: BuildCatalog): number {
  const { plate } = build;
  return plate ? plate.thicknessMm + plate.rubberMm + catalog.rules.plate.pocketClearanceMm : 0;
}

function pocketOf(build: SkiBuild, catalog: BuildCatalog): CoreDrawing["pocket"] {
  const { plate } = build;
  if (!plate) return null;
  const play = 2 * catalog.rules.plate.pocketPlanMm;
  const half = (plate.lengthMm + play) / 2;
  return {
    fromMm: plate.centreMm - half,
    toMm: plate.centreMm + half,
    widthMm: plate.widthMm + play,
    depthMm: pocketDepthMm(build, catalog),
    plateLengthMm: plate.lengthMm,
    plateWidthMm: plate.widthMm,
    plateMm: plate.thicknessMm,
    rubberMm: plate.rubberMm,
    plate: plate.material.label,
  };
}

/** Nine stations from one end of the wood to the other, on whole centimetres. */
function nineStations(profile: ThicknessProfile, fromMm: number, toMm: number): CoreDrawing["stations"] {
  return Array.from({ length: STATION_COUNT }, (_, i) => {
    const exact = fromMm + ((toMm - fromMm) * i) / (STATION_COUNT - 1);
    const xMm = Math.min(toMm, Math.max(fromMm, Math.round(exact / STATION_GRID_MM) * STATION_GRID_MM));
    return { name: String(i + 1), xMm, plannedMm: thicknessAt(profile, xMm) };
  });
}

/** Linear between the programme's own stations, level beyond them. */
export function thicknessAt(profile: ThicknessProfile, xMm: number): number {
  const { stations } = profile;
  const next = stations.findIndex((s) => s.xMm >= xMm);
  const b = stations[next === -1 ? stations.length - 1 : next];
  if (!b) throw new RangeError("profile.stations: the core has no stations");
  const a = stations[next - 1];
  if (next === -1 || !a) return b.thicknessMm;
  return a.thicknessMm + ((b.thicknessMm - a.thicknessMm) * (xMm - a.xMm)) / (b.xMm - a.xMm);
}

/**
 * Mass of the wood of one core as milled to outline and thickness, pocket out, g (mm³ · kg/m³ · 1e-6).
 * A strip counts with the width it really has in each section. Midpoint sum, 400 slices.
 */
function coreMassG(
  build: SkiBuild,
  profile: ThicknessProfile,
  depthMm: number,
  strips: readonly AllocatedStrip[] | null,
  ski: SkiSide,
): number {
  const { coreFromMm, coreToMm, shape, sidewall, plate } = build;
  const dx = (coreToMm - coreFromMm) / WEIGHT_STEPS;
  let grams = 0;
  for (let i = 0; i < WEIGHT_STEPS; i++) {
    const x = coreFromMm + (i + 0.5) * dx;
    const half = halfWidthAt(shape, x) - sidewall.widthMm;
    const t = thicknessAt(profile, x);
    const inPocket = plate !== undefined && Math.abs(x - plate.centreMm) <= plate.lengthMm / 2;
    for (const column of build.columns) {
      const density = densityOf(column, strips, ski);
      const pocketHalf = inPocket ? plate.widthMm / 2 : 0;
      grams += 2 * density * dx * 1e-6 * (overlap(column, half) * t - overlap(column, pocketHalf) * depthMm);
    }
  }
  return grams;
}

/** Width of one column (one side of the centre line) that lies within `half` of the centre. */
function overlap(column: StripColumn, half: number): number {
  return Math.max(0, Math.min(column.outerMm, half) - column.innerMm);
}

/** Mean of the measured strips in this position of this ski, else the blend's book density. */
function densityOf(column: StripColumn, strips: readonly AllocatedStrip[] | null, ski: SkiSide): number {
  const measured = (strips ?? [])
    .filter((s) => s.ski === ski && s.position === column.position)
    .map((s) => s.densityKgM3)
    .filter((d): d is number => d !== null);
  if (measured.length === 0) return column.densityKgM3;
  return measured.reduce((sum, d) => sum + d, 0) / measured.length;
}

export function woodLabel(catalog: BuildCatalog, id: string): string {
  return catalog.materials.woods.find((w) => w.id === id)?.label ?? id;
}

const PLACES = [
  ["O", "left"],
  ["M", "left"],
  ["I", "left"],
  ["C", "centre"],
  ["I", "right"],
  ["M", "right"],
  ["O", "right"],
] as const;

/** The seven places of one core from left to right, each with its strip or an empty line to write in. */
export function composeStrips(
  ski: SkiSide,
  strips: readonly AllocatedStrip[] | null,
  blend: CoreBlend,
  catalog: BuildCatalog,
): readonly StripRow[] {
  return PLACES.map(([position, place]) => {
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
