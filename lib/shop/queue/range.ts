/** The range for one more pair on the live queue: its operations put into the gaps of every run, nobody else moved. */
import type { PairSpec } from "#engine/configuration";
import { findStation } from "#engine/floor";
import {
  answerRange,
  candidateRange,
  type DateDriver,
  type DateRange as EngineRange,
  jointRange,
  type PairOnFloor,
  prepareCandidate,
} from "#engine/routing";
import type { IsoDate } from "#engine/units";
import type { ExpectedDays } from "#schemas/stored/index";
import { floorBookInForce } from "#shop/catalogue/book-in-force";
import { currentCatalog } from "#shop/catalogue/current";
import type { ShopContext } from "#shop/context";
import { boughtFor, routeOf } from "#shop/floor/facts";
import { floorCatalog } from "#shop/floor/recipe";
import type { DateRange } from "#shop/names/views";
import { shopDay, shopMinuteOf } from "#shop/time/shop-time";
import { completeRuns, inSlices, liveRuns, previewRuns, promiseRuns, runsWith } from "./runs";

export interface RangeOptions {
  /** A pair that is already in the queue is not in its own way. */
  readonly without?: string;
  /** A date that will be promised is worth more runs than a look. */
  readonly isPromise?: boolean;
  /** When a reinforcement that is bought was ordered, by its id; absent: today, as the clock starts. */
  readonly orderedOn?: (reinforcement: string) => IsoDate;
}

/** Counted from the clock start: deposit, lock, proof and rights are taken to be in. @throws Error when the floor has no such mould */
export async function rangeOf(ctx: ShopContext, spec: PairSpec, options: RangeOptions = {}): Promise<DateRange> {
  const { runs, revision, madeAt } = await liveRuns(ctx.db, ctx.now, options.without ?? null);
  const count = ctx.promiseRuns ?? (options.isPromise ? promiseRuns : previewRuns);
  await completeRuns(runs, count);
  const { build } = currentCatalog();
  const floor = floorCatalog();
  const today = shopDay(ctx.now, floor.hours.timeZone);
  const waitingOn = boughtFor(spec, build, floor, options.orderedOn ?? (() => today));
  const asked = prepareCandidate(runs, { route: routeOf(spec, build), waitingOn });
  if (!asked.ok) throw new Error(`the pair does not fit the floor: ${JSON.stringify(asked.refusal)}`);
  await inSlices(count, (to) => answerRange(asked.value, to));
  return dateRangeView(candidateRange(asked.value), revision, madeAt);
}

export interface PairToDate {
  readonly spec: PairSpec;
  /** Its row, when it is in the queue already. */
  readonly pairId?: string;
}

/** When the last of several pairs is ready, behind the others in the queue; of one pair {@link rangeOf}. @throws Error as there, and without a pair */
export async function rangeOfPairs(
  ctx: ShopContext,
  pairs: readonly PairToDate[],
  options: Pick<RangeOptions, "isPromise"> = {},
): Promise<DateRange> {
  const [only, ...others] = pairs;
  if (only === undefined) throw new Error("rangeOfPairs: 0 pairs; at least 1 is needed");
  if (others.length === 0) {
    return rangeOf(ctx, only.spec, { ...options, ...(only.pairId === undefined ? {} : { without: only.pairId }) });
  }
  const { build } = currentCatalog();
  const floor = floorCatalog();
  const { hours } = floor;
  const queuedAtMinute = shopMinuteOf(ctx.now, hours.timeZone);
  const today = shopDay(ctx.now, hours.timeZone);
  const group = pairs.map(
    ({ spec }, index): PairOnFloor => ({
      pairId: `group-${index + 1}`,
      route: routeOf(spec, build),
      operations: [],
      waitingOn: boughtFor(spec, build, floor, () => today),
      queuedAtMinute,
      promise: null,
    }),
  );
  const own = pairs.flatMap(({ pairId }) => pairId ?? []);
  const { runs, revision, madeAt } = await runsWith(ctx.db, ctx.now, own, group);
  const count = ctx.promiseRuns ?? (options.isPromise ? promiseRuns : previewRuns);
  await completeRuns(runs, count);
  const range = jointRange(
    { ...runs, replications: runs.replications.slice(0, count) },
    group.map(({ pairId }) => pairId),
  );
  return dateRangeView(range, revision, madeAt);
}

/** The two days that people see of a range, with their shares. */
export function expectedDays({ dates, shares }: Pick<EngineRange, "dates" | "shares">): ExpectedDays {
  return { p50: dates.p50, p90: dates.p90, shares: { p50: shares.p50, p90: shares.p90 } };
}

function dateRangeView(range: EngineRange, queueRevision: number, madeAt: Date): DateRange {
  const { dates, shares, workingDays, drivers, seed, runs } = range;
  const book = floorBookInForce();
  return {
    ...dates,
    shares: { p50: shares.p50, p80: shares.p80, p90: shares.p90 },
    workingDays: { p50: workingDays.p50, p90: workingDays.p90 },
    drivers: drivers.map(named),
    basis: {
      queueRevision,
      runs,
      seed,
      at: madeAt.toISOString(),
      ...(book === null ? {} : { floorBook: book.version }),
    },
  };
}

function named(driver: DateDriver): DateRange["drivers"][number] {
  const station = driver.station === undefined ? null : findStation(floorCatalog(), driver.station);
  return station === null ? driver : { ...driver, stationName: station.label };
}
