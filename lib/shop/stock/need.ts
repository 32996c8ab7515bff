/** What wood one pair needs, and how alike it must be. */
import { type CoreBlend, type PairSpec, type SolvedSpec, stripWeights } from "#engine/configuration";
import type { StripColumn } from "#engine/flex";
import type { StripLimits, StripNeed, StripPosition, StripSize } from "#engine/matching";
import { type PartsRules, stripBlank } from "#engine/parts";

/** Common practice, no source; per cent. */
export const stripLimits: StripLimits = {
  groupSpreadPercent: 5,
  twinPercent: 1.5,
  imbalancePercent: 2,
  densityPercent: 2,
  targetPercent: 3,
};

/** Of a strip that is milled away altogether, which must still be told from another. */
const leastWeight = 0.01;

/**
 * @param solved the spec worked out: strips count by what the mill leaves of them where the bench bends the ski
 * @param parts  whether strips must measure what the cut list says, or only be long enough
 */
export function stripNeed(spec: PairSpec, solved: SolvedSpec, blend: CoreBlend, parts: PartsRules): StripNeed {
  const { build, flex } = solved;
  const byPosition = stripWeights(build, flex);
  const weights = build.columns.map(({ position }) => Math.max(byPosition[position].stiffness, leastWeight));
  const hasWindows = spec.graphic.windows.length > 0 || blend.isWindowGrade;
  const positions = build.columns.map((column, index): StripPosition => {
    const species = blend.strips[column.position];
    return {
      name: column.position,
      perSki: column.position === "C" ? 1 : 2,
      species: [species],
      weight: weights[index] ?? leastWeight,
      massWeight: Math.max(byPosition[column.position].mass, leastWeight),
      ...(hasWindows ? { grades: ["W"] } : {}),
      ...(parts.stripsTakenBy === "size" ? { least: leastSize(index, solved, parts) } : {}),
    };
  });
  return { pairs: 1, positions, targetModulusMpa: targetModulus(build.columns, weights, positions) };
}

/** What the cut list says of the strip at a place. */
function leastSize(index: number, solved: SolvedSpec, parts: PartsRules): StripSize {
  const { widthMm, heightMm, lengthMm } = stripBlank(solved, index, parts);
  return { widthMm: upToTenth(widthMm), heightMm: upToTenth(heightMm), lengthMm: Math.ceil(lengthMm) };
}

/** As a caliper reads a strip. */
const upToTenth = (mm: number) => Math.ceil(mm * 10 - 1e-6) / 10;

/** The modulus the core was designed with, weighed as the strips are. */
function targetModulus(
  columns: readonly StripColumn[],
  weights: readonly number[],
  positions: readonly StripPosition[],
): number {
  const share = (index: number) => (weights[index] ?? 0) * (positions[index]?.perSki ?? 0);
  const total = columns.reduce((sum, _column, index) => sum + share(index), 0);
  return columns.reduce((sum, column, index) => sum + column.axialModulusMpa * share(index), 0) / total;
}
