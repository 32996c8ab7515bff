/** The range for one more pair on the live queue: its operations put into the gaps of every run, nobody else moved. */
import type { PairSpec } from "../../engine/configuration";
import { answerRange, candidateRange, prepareCandidate } from "../../engine/routing";
import { currentCatalog } from "../catalogue/current";
import type { Context } from "../context";
import { routeOf } from "../floor/facts";
import { completeRuns, inSlices, liveRuns, previewRuns, promiseRuns } from "../floor/queue-runs";
import type { DateRange } from "../views";

export interface RangeOptions {
  /** A pair that is already in the queue is not in its own way. */
  readonly without?: string;
  /** A date that will be promised is worth more runs than a look. */
  readonly isPromise?: boolean;
}

/** Counted from the clock start: deposit, lock, proof and rights are taken to be in. @throws Error when the floor has no such mould */
export async function rangeOf(ctx: Context, spec: PairSpec, options: RangeOptions = {}): Promise<DateRange> {
  const { runs, revision, madeAt } = await liveRuns(ctx.db, ctx.now, options.without ?? null);
  const count = ctx.promiseRuns ?? (options.isPromise ? promiseRuns : previewRuns);
  await completeRuns(runs, count);
  const asked = prepareCandidate(runs, { route: routeOf(spec, currentCatalog().build), waitingOn: [] });
  if (!asked.ok) throw new Error(`the pair does not fit the floor: ${JSON.stringify(asked.refusal)}`);
  await inSlices(count, (to) => answerRange(asked.value, to));
  const { dates, workingDays, drivers, seed } = candidateRange(asked.value);
  return {
    ...dates,
    workingDays: { p50: workingDays.p50, p90: workingDays.p90 },
    drivers,
    basis: { queueRevision: revision, runs: count, seed, at: madeAt.toISOString() },
  };
}
