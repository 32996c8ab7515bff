/** What the wood of a milled core weighs, and the pocket that the mill leaves for the binding plate. */
import {
  type PlatePocket,
  type SkiBuild,
  type StripColumn,
  stripWidthLeftMm,
  type ThicknessProfile,
  thicknessAt,
  woodHalfWidthMm,
} from "#engine/flex";
import type { BuildRules } from "./types";

export interface MilledPocket {
  readonly fromMm: number;
  readonly toMm: number;
  readonly widthMm: number;
  readonly depthMm: number;
}

/** The pocket for a plate: play all round in plan, as deep as plate, foil and clearance. */
export function milledPocket(plate: PlatePocket, rules: Pick<BuildRules, "plate">): MilledPocket {
  const { pocketPlanMm, pocketClearanceMm } = rules.plate;
  const half = plate.lengthMm / 2 + pocketPlanMm;
  return {
    fromMm: plate.centreMm - half,
    toMm: plate.centreMm + half,
    widthMm: plate.widthMm + 2 * pocketPlanMm,
    depthMm: plate.thicknessMm + plate.rubberMm + pocketClearanceMm,
  };
}

/** A strip that lies in the core, with what the bench measured of it. */
export interface LaidStrip {
  readonly position: StripColumn["position"];
  /** Null when it was not measured. */
  readonly densityKgM3: number | null;
}

const SLICES = 400;

/**
 * Mass of the wood of one core as milled to outline and thickness, g (mm³ · kg/m³ · 1e-6), the plate's own room taken out.
 * A strip counts with the width that the mill leaves of it in each section. Midpoint sum.
 *
 * @param strips of this core; a position counts with the mean density of its measured strips, else with the book's
 */
export function coreMassG(
  build: SkiBuild,
  profile: ThicknessProfile,
  rules: Pick<BuildRules, "plate">,
  strips: readonly LaidStrip[] = [],
): number {
  const { coreFromMm, coreToMm, plate, pockets = [] } = build;
  const depthMm = plate ? milledPocket(plate, rules).depthMm : 0;
  const { columns } = build;
  const densities = columns.map((column) => densityOf(column, strips));
  const dx = (coreToMm - coreFromMm) / SLICES;
  let grams = 0;
  for (let i = 0; i < SLICES; i++) {
    const x = coreFromMm + (i + 0.5) * dx;
    const half = woodHalfWidthMm(build, x);
    const t = thicknessAt(profile, x);
    const pocketHalf = plate && Math.abs(x - plate.centreMm) <= plate.lengthMm / 2 ? plate.widthMm / 2 : 0;
    const hollow = pockets.find(({ fromMm, toMm }) => x >= fromMm && x <= toMm);
    densities.forEach((density, index) => {
      const widthMm = stripWidthLeftMm(columns, index, half);
      const inPocketMm = widthMm - stripWidthLeftMm(columns, index, half, pocketHalf);
      const inHollowMm = hollow ? widthMm - stripWidthLeftMm(columns, index, half, hollow.widthMm / 2) : 0;
      const takenMm2 = inPocketMm * depthMm + inHollowMm * (hollow?.depthMm ?? 0);
      grams += 2 * density * dx * 1e-6 * (widthMm * t - takenMm2);
    });
  }
  return grams;
}

function densityOf({ position, densityKgM3 }: StripColumn, strips: readonly LaidStrip[]): number {
  const measured = strips.flatMap((strip) =>
    strip.position === position && strip.densityKgM3 !== null ? [strip.densityKgM3] : [],
  );
  if (measured.length === 0) return densityKgM3;
  return measured.reduce((sum, density) => sum + density, 0) / measured.length;
}
