/**
 * Priority rules: the index by which a list is ordered. Time, durations and due dates share one unit.
 * EDD: Jackson 1955. WSPT: Smith 1956. ATC: Vepsalainen & Morton 1987, Management Science 33(8).
 * ATCS: Lee, Bhaskaran & Pinedo 1997, IIE Transactions 29(1).
 */
import { portableExp } from "#engine/math";

export interface RuleJob {
  readonly minutes: number;
  readonly due: number;
  readonly weight: number;
}

/** Apparent tardiness cost: w/p · exp(−max(0, d − p − t)/(K·p̄)). Higher goes first. */
export function apparentTardinessCost(
  job: RuleJob,
  { time, lookAhead, meanMinutes }: { readonly time: number; readonly lookAhead: number; readonly meanMinutes: number },
): number {
  const slack = Math.max(0, job.due - job.minutes - time);
  return (job.weight / job.minutes) * portableExp(Math.max(-700, -slack / (lookAhead * meanMinutes)));
}

/** ATC with setups: also · exp(−s/(k2·s̄)), s the changeover from what is mounted now. */
export function apparentTardinessCostWithSetups(
  job: RuleJob & { readonly setupMinutes: number },
  scales: {
    readonly time: number;
    readonly lookAhead: number;
    readonly meanMinutes: number;
    readonly setupScale: number;
    readonly meanSetupMinutes: number;
  },
): number {
  const base = apparentTardinessCost(job, scales);
  if (scales.meanSetupMinutes === 0) return base;
  return base * portableExp(Math.max(-700, -job.setupMinutes / (scales.setupScale * scales.meanSetupMinutes)));
}
