/** How much one strip of each position counts in the ski: what strip matching weighs it by. */
import {
  benchMomentMm,
  type SkiBuild,
  type SkiFlex,
  type StripColumn,
  stripWidthLeftMm,
  woodHalfWidthMm,
} from "#engine/flex";

export interface StripWeight {
  /**
   * First-order share of a strip's modulus in the centre deflection, ∫(M/EI)²·w·t³ dx with w the width that the mill leaves of
   * it at x and M the moment of the centre load between shoulder and heel (unit-load method; the core lies near the neutral
   * axis).
   */
  readonly stiffness: number;
  /** Share of a strip's density in the mass of the wood, ∫ w·t dx. */
  readonly mass: number;
}

/**
 * Both scaled so that the weights of one half of the ski have mean 1.
 *
 * @param flex of the same build, bare
 */
export function stripWeights(build: SkiBuild, flex: SkiFlex): Readonly<Record<StripColumn["position"], StripWeight>> {
  const raw = build.columns.map((column, index) => rawWeight(index, column.position, build, flex));
  const mean = (of: (weight: StripWeight) => number) => raw.reduce((sum, each) => sum + of(each), 0) / raw.length;
  const [stiffness, mass] = [mean((each) => each.stiffness), mean((each) => each.mass)];
  const none = { stiffness: 0, mass: 0 };
  const weights = { C: none, I: none, M: none, O: none };
  build.columns.forEach(({ position }, index) => {
    const each = raw[index] ?? none;
    weights[position] = { stiffness: each.stiffness / stiffness, mass: each.mass / mass };
  });
  return weights;
}

/** Of one strip; the centre strip lies on both sides of the centre line. */
function rawWeight(
  index: number,
  position: StripColumn["position"],
  build: SkiBuild,
  { stations }: SkiFlex,
): StripWeight {
  let stiffness = 0;
  let mass = 0;
  for (const [i, { xMm, coreMm, bendingStiffnessNmm2 }] of stations.entries()) {
    if (xMm < build.coreFromMm || xMm > build.coreToMm || bendingStiffnessNmm2 === 0) continue;
    const stepMm = ((stations[i + 1]?.xMm ?? xMm) - (stations[i - 1]?.xMm ?? xMm)) / 2;
    const curvature = benchMomentMm(build, xMm) / bendingStiffnessNmm2;
    const sideMm = stripWidthLeftMm(build.columns, index, woodHalfWidthMm(build, xMm));
    const widthMm = position === "C" ? 2 * sideMm : sideMm;
    stiffness += curvature ** 2 * widthMm * coreMm ** 3 * stepMm;
    mass += widthMm * coreMm * stepMm;
  }
  return { stiffness, mass };
}
