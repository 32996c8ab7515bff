/** How much one strip of each position counts for the ski's stiffness: what strip matching weighs it by. */
import { benchMomentMm, type SkiBuild, type SkiFlex, type StripColumn } from "#engine/flex";
import { halfWidthAt } from "#engine/geometry";

/**
 * First-order share of a strip's modulus in the centre deflection, ∫(M/EI)²·w·t³ dx with w the width the mill leaves of it
 * at x and M the moment of the centre load between shoulder and heel (unit-load method; the core lies near the neutral
 * axis). Scaled so that the weights of one half of the ski have mean 1.
 *
 * @param flex of the same build, bare
 */
export function stripWeights(build: SkiBuild, flex: SkiFlex): Readonly<Record<StripColumn["position"], number>> {
  const raw = build.columns.map((column) => ({ position: column.position, weight: rawWeight(column, build, flex) }));
  const mean = raw.reduce((sum, each) => sum + each.weight, 0) / raw.length;
  const weights = { C: 0, I: 0, M: 0, O: 0 };
  for (const { position, weight } of raw) weights[position] = weight / mean;
  return weights;
}

function rawWeight(column: StripColumn, build: SkiBuild, { stations }: SkiFlex): number {
  let sum = 0;
  for (const [i, station] of stations.entries()) {
    const { xMm, coreMm, bendingStiffnessNmm2 } = station;
    if (xMm < build.coreFromMm || xMm > build.coreToMm || bendingStiffnessNmm2 === 0) continue;
    const stepMm = ((stations[i + 1]?.xMm ?? xMm) - (stations[i - 1]?.xMm ?? xMm)) / 2;
    const curvature = benchMomentMm(build, xMm) / bendingStiffnessNmm2;
    sum += curvature ** 2 * stripWidthAt(column, build, xMm) * coreMm ** 3 * stepMm;
  }
  return sum;
}

/** Of one strip; the centre strip lies on both sides of the centre line. */
export function stripWidthAt({ position, innerMm, outerMm }: StripColumn, build: SkiBuild, xMm: number): number {
  const woodMm = halfWidthAt(build.shape, xMm) - build.sidewall.widthMm;
  const sideMm = Math.max(0, Math.min(outerMm, woodMm) - innerMm);
  return position === "C" ? 2 * sideMm : sideMm;
}
