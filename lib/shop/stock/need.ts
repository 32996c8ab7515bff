/** What wood one pair needs, and how alike it must be. */
import type { CoreBlend, PairSpec } from "#engine/configuration";
import type { SkiBuild, StripColumn } from "#engine/flex";
import { halfWidthAt } from "#engine/geometry";
import type { StripLimits, StripNeed, StripPosition } from "#engine/matching";

/** Common practice, no source; per cent. */
export const stripLimits: StripLimits = {
  groupSpreadPercent: 5,
  twinPercent: 1.5,
  imbalancePercent: 2,
  densityPercent: 2,
  targetPercent: 3,
};

const samples = 60;

export function stripNeed(spec: PairSpec, build: SkiBuild, blend: CoreBlend): StripNeed {
  const weights = build.columns.map((column) => widthLeft(column, build));
  const hasWindows = spec.graphic.windows.length > 0 || blend.isWindowGrade;
  const positions = build.columns.map((column, index): StripPosition => {
    const species = blend.strips[column.position];
    return {
      name: column.position,
      perSki: column.position === "C" ? 1 : 2,
      species: [species],
      weight: Math.max(weights[index] ?? 0, 0.01),
      ...(hasWindows ? { grades: ["W"] } : {}),
    };
  });
  return { pairs: 1, positions, targetModulusMpa: targetModulus(build.columns, weights, positions) };
}

/** Share of a strip's width that the outline leaves, averaged over the wood's length: the outer ones are milled away. */
function widthLeft(column: StripColumn, build: SkiBuild): number {
  const { coreFromMm, coreToMm, shape, sidewall } = build;
  const inner = column.position === "C" ? 0 : column.innerMm;
  let sum = 0;
  for (let i = 0; i < samples; i += 1) {
    const xMm = coreFromMm + ((i + 0.5) / samples) * (coreToMm - coreFromMm);
    const half = halfWidthAt(shape, xMm) - sidewall.widthMm;
    sum += Math.min(Math.max(half - inner, 0), column.outerMm - inner) / (column.outerMm - inner);
  }
  return sum / samples;
}

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
