/**
 * A few sections that stand for the whole ski where only small changes of it are wanted. The centre deflection is
 * ∫ m²/EI dx with m the moment of a unit load, so to first order the spring changes by the mean of dEI/EI weighed by
 * m²/EI, and mass by the mean of its own relative change weighed by mass. The ski is cut where its build changes and into
 * pieces of at most 220 mm; each is sampled where its part of the deflection has its centre, which is exact for changes
 * that are linear within a piece. Core shear, under 1–2 % of the deflection, is taken to change like the rest.
 */
import { sortedDistinct } from "#engine/math";
import { benchMomentMm } from "./spring-test";
import { stepPositions } from "./stations";
import type { FlexStation, SkiBuild } from "./types";

const LONGEST_PIECE_MM = 220;

export interface Sample {
  readonly xMm: number;
  /** Shares of the centre deflection and of the mass of all stations. Each adds up to 1. */
  readonly springShare: number;
  readonly massShare: number;
}

/** The samples of a build, from its stations as evaluateFlex gives them. */
export function samplesOf(build: SkiBuild, stations: readonly FlexStation[]): readonly Sample[] {
  const cuts = cutsOf(build);
  const sums = cuts.slice(1).map((toMm, i) => ({ fromMm: cuts[i] ?? 0, toMm, spring: 0, springX: 0, mass: 0 }));
  let at = 0;
  stations.forEach((right, i) => {
    const left = stations[i - 1];
    if (!left) return;
    const xMm = (left.xMm + right.xMm) / 2;
    while (at < sums.length - 1 && xMm > (sums[at]?.toMm ?? 0)) at++;
    const sum = sums[at];
    if (!sum) return;
    const dx = right.xMm - left.xMm;
    const spring = (2 * dx * benchMomentMm(build, xMm) ** 2) / (left.bendingStiffnessNmm2 + right.bendingStiffnessNmm2);
    sum.spring += spring;
    sum.springX += spring * xMm;
    sum.mass += (dx * (left.massGPerM + right.massGPerM)) / 2;
  });
  const total = (key: "spring" | "mass") => sums.reduce((all, sum) => all + sum[key], 0);
  const [spring, mass] = [total("spring"), total("mass")];
  return sums.map((sum) => ({
    xMm: sum.spring > 0 ? sum.springX / sum.spring : (sum.fromMm + sum.toMm) / 2,
    springShare: sum.spring / spring,
    massShare: sum.mass / mass,
  }));
}

/** Ends, steps of the build and, between them, even cuts. */
function cutsOf(build: SkiBuild): readonly number[] {
  const { lengthMm } = build.shape;
  const steps = sortedDistinct([0, ...stepPositions(build), lengthMm], 1);
  return steps.flatMap((fromMm, i) => {
    const toMm = steps[i + 1];
    if (toMm === undefined) return [fromMm];
    const pieces = Math.ceil((toMm - fromMm) / LONGEST_PIECE_MM);
    return Array.from({ length: pieces }, (_, piece) => fromMm + ((toMm - fromMm) * piece) / pieces);
  });
}
