/** One measure of a pair: what the bench read of each ski beside target and limits. */
import type { BenchMeasure } from "#engine/calibration";
import type { FinishRules } from "#schemas/content/index";
import type { BenchRow } from "./views";

type Limit = FinishRules["qcLimits"][number];

const limitOf: Readonly<Record<BenchMeasure, Limit["measure"]>> = {
  massKg: "mass",
  camberMm: "camber",
  springCentreNPerMm: "springCentre",
  springForebodyNPerMm: "springEnds",
  springAfterbodyNPerMm: "springEnds",
  twistNmPerDeg: "torsion",
};
/** What 1 of an absolute limit, written in the bench's unit, is in the engine's. */
const perBench: Readonly<Record<BenchMeasure, number>> = {
  massKg: 0.001,
  camberMm: 1,
  springCentreNPerMm: 0.1,
  springForebodyNPerMm: 0.1,
  springAfterbodyNPerMm: 0.1,
  twistNmPerDeg: 1,
};

/** In, out, or null where nothing was read or no limit is set. */
export function benchRow(
  measure: BenchMeasure,
  target: number,
  limits: readonly Limit[],
  left: number | undefined,
  right: number | undefined,
): BenchRow {
  const own = limits.find((limit) => limit.measure === limitOf[measure]);
  const amount = ({ kind, amount: size }: NonNullable<Limit["band"]>) =>
    kind === "percent" ? (Math.abs(target) * size) / 100 : size * perBench[measure];
  const limit = own?.band ? amount(own.band) : null;
  const twinLimit = own?.twinBands ? Math.max(...own.twinBands.map(amount)) : null;
  const twinDifference = left === undefined || right === undefined ? null : Math.abs(left - right);
  const within = (distance: number | null, most: number | null) =>
    distance === null || most === null ? null : distance <= most + 1e-9 ? "in" : "out";
  const offTarget = (value: number | undefined) => (value === undefined ? null : Math.abs(value - target));
  return {
    measure,
    target,
    limit,
    twinLimit,
    left: left ?? null,
    right: right ?? null,
    twinDifference,
    states: {
      L: within(offTarget(left), limit),
      R: within(offTarget(right), limit),
      twins: within(twinDifference, twinLimit),
    },
  };
}
