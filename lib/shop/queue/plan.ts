import type { StationId } from "#engine/floor";
import {
  chanceKept,
  dayIndex,
  type PromiseStanding,
  planQueue,
  type QueuePlan,
  type QueueRuns,
  queueRanges,
  type ShopMinute,
  standingOf,
  weekdayOf,
} from "#engine/routing";
import type { IsoDate, PairId } from "#engine/units";
import { idOf } from "#schemas/ids";
import type { ExpectedDays } from "#schemas/stored/index";
import type { ShopContext } from "#shop/context";
import { floorCatalog } from "#shop/floor/recipe";
import { stationIdFor } from "#shop/floor/stations";
import { instantOfShopMinute } from "#shop/time/shop-time";
import type { PairInQueue } from "./queued-pairs";
import { expectedDays } from "./range";
import { completeRuns, liveRuns, previewRuns } from "./runs";

export interface FloorPlan {
  readonly operations: readonly {
    readonly pairId: PairId;
    readonly station: StationId;
    readonly startsAt: Date;
    /** End of the work by hand. */
    readonly endsAt: Date;
    /** End of press cycle, cure or rest. */
    readonly freeAt: Date;
    readonly startMinute: ShopMinute;
    readonly workEndMinute: ShopMinute;
    readonly freeMinute: ShopMinute;
  }[];
  readonly pairs: readonly {
    readonly pairId: PairId;
    readonly finishDate: IsoDate;
    readonly expected: ExpectedDays | null;
    readonly standing: PromiseStanding;
    /** Share of the runs that are ready on the promised day; null without a promise. */
    readonly chanceKept: number | null;
  }[];
  readonly pressPlan: readonly {
    readonly press: string;
    readonly pairId: PairId;
    readonly mould: string;
    readonly startsAt: Date;
    readonly endsAt: Date;
    readonly changeoverMinutes: number;
    readonly isFixed: boolean;
  }[];
  readonly isWorkingDay: (date: IsoDate) => boolean;
}

/** @throws Error when a pair does not fit the floor */
export async function floorPlan(ctx: ShopContext, pairs: readonly PairInQueue[]): Promise<FloorPlan> {
  const floor = floorCatalog();
  const { timeZone } = floor.hours;
  const { runs } = await liveRuns(ctx.db, ctx.now);
  await completeRuns(runs, ctx.promiseRuns ?? previewRuns);
  const ranges = queueRanges(runs);
  const plan = planOf(runs);
  const instant = (minute: number) => instantOfShopMinute(minute, timeZone);
  const pressing = stationIdFor("press");
  const isRunning = (pairId: string, station: StationId) =>
    pairs.some(
      (pair) =>
        pair.id === pairId && pair.operations.some((each) => each.station === station && each.state === "running"),
    );
  const hasFrozenSlot = (pairId: string) => pairs.some((pair) => pair.id === pairId && pair.pressSlotAt !== null);
  return {
    operations: plan.operations.map(({ pairId, station, startMinute, workEndMinute, freeMinute }) => ({
      pairId: idOf("pair", pairId),
      station,
      startsAt: instant(startMinute),
      endsAt: instant(workEndMinute),
      freeAt: instant(freeMinute),
      startMinute,
      workEndMinute,
      freeMinute,
    })),
    pairs: plan.pairs.map(({ pairId, finishDate, promise }) => {
      const range = ranges.get(pairId);
      return {
        pairId: idOf("pair", pairId),
        finishDate,
        expected: range === undefined ? null : expectedDays(range),
        standing: range === undefined ? ("open" as const) : standingOf(promise, range.dates),
        chanceKept: promise === null ? null : chanceKept(runs, pairId, promise.date),
      };
    }),
    pressPlan: plan.pressPlan.map(({ press, pairId, mould, startMinute, freeMinute, changeoverMinutes }) => ({
      press,
      pairId: idOf("pair", pairId),
      mould,
      startsAt: instant(startMinute),
      endsAt: instant(freeMinute),
      changeoverMinutes,
      isFixed: isRunning(pairId, pressing) || hasFrozenSlot(pairId),
    })),
    isWorkingDay: (date) => isWorkingDay(date),
  };
}

const plans = new WeakMap<QueueRuns, QueuePlan>();

/** Made once for each set of runs: both stand for the same queue at the same moment. */
function planOf(runs: QueueRuns): QueuePlan {
  const known = plans.get(runs);
  if (known !== undefined) return known;
  const planned = planQueue(runs.situation);
  if (!planned.ok) throw new Error(`the queue does not fit the floor: ${JSON.stringify(planned.refusal)}`);
  plans.set(runs, planned.value);
  return planned.value;
}

function isWorkingDay(date: IsoDate): boolean {
  const { workingWeekdays, closedDays } = floorCatalog().hours;
  return workingWeekdays.includes(weekdayOf(dayIndex(date))) && !closedDays.some((closed) => closed.date === date);
}
