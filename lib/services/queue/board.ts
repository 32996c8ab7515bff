/** The queue as a board: stations, days, pairs, the press plan and who waits for what. */

import { currentQueueRevision } from "../../data/counters";
import { openPairs, type PairRecord } from "../../data/pairs";
import { frozen } from "../../data/quotes";
import type { PairSpec } from "../../engine/configuration";
import { dayIndex, pairStations, weekdayOf } from "../../engine/routing";
import type { IsoDate } from "../../engine/units";
import { currentCatalog } from "../catalogue/current";
import type { Context } from "../context";
import { openConditions } from "../floor/on-floor";
import { type FloorPlan, floorPlan } from "../floor/plan";
import { stationRecipe } from "../floor/recipe";
import { firstName } from "../pairs/view";
import { addDays, shopDay } from "../shop-time";
import type {
  OperationId,
  OperationState,
  OrderId,
  OrderState,
  PairId,
  PressDay,
  QueueBoard,
  QueueCell,
  QueueDay,
  QueuePair,
  QueueStation,
} from "../views";

export async function queueBoardOf(ctx: Context, days: number): Promise<QueueBoard> {
  const [pairs, revision] = await Promise.all([openPairs(ctx.db), currentQueueRevision(ctx.db)]);
  const plan = await floorPlan(ctx, pairs);
  const zone = currentCatalog().shop.timeZone;
  const today = shopDay(ctx.now, zone);
  const planned = new Map(plan.pairs.map((pair) => [pair.pairId, pair]));
  const waiting = pairs.filter((pair) => openConditions(pair).length > 0);
  return {
    revision,
    today,
    stations: pairStations.map((station) => stationOf(station, pairs)),
    days: Array.from({ length: days }, (_, index) => dayOf(addDays(today, index), today, pairs, plan, zone)),
    pairs: pairs.map((pair) => queuePair(pair, planned.get(pair.id))),
    waitingOn: waiting.map((pair) => ({
      pairId: pair.id as PairId,
      serial: pair.serial,
      skierFirstName: firstName(pair.skierName),
      waitingFor: openConditions(pair),
      since: pair.createdAt.toISOString(),
    })),
    pressPlan: pressDays(plan, pairs, zone),
    backlogPairs: pairs.filter((pair) => !isBegun(pair)).length,
  };
}

function isBegun(pair: PairRecord): boolean {
  return pair.operations.some(({ state }) => state === "running" || state === "done" || state === "redo");
}

function stationOf(station: number, pairs: readonly PairRecord[]): QueueStation {
  const here = pairs.flatMap((pair) => pair.operations.filter((operation) => operation.station === station));
  const count = (state: OperationState) => here.filter((operation) => operation.state === state).length;
  const { name, typicalMinutes, capacity } = stationRecipe(station);
  return {
    number: station,
    name,
    capacity,
    ready: count("ready"),
    running: count("running"),
    blocked: count("blocked"),
    minutesWaiting: typicalMinutes * (count("ready") + count("running") + count("blocked")),
  };
}

/**
 * Work on a day. What is running began today or before: it stands under today. A pair that waits for its customer keeps
 * its place in the plan but is nobody's work yet: it stands on the list of who waits for what.
 */
function dayOf(date: IsoDate, today: IsoDate, pairs: readonly PairRecord[], plan: FloorPlan, zone: string): QueueDay {
  const byId = new Map(pairs.map((pair) => [pair.id, pair]));
  const cells = plan.operations.flatMap((planned): QueueCell[] => {
    const pair = byId.get(planned.pairId);
    const operation = pair?.operations.find((candidate) => candidate.station === planned.station);
    if (pair === undefined || operation === undefined || openConditions(pair).length > 0) return [];
    const began = shopDay(planned.startsAt, zone);
    if ((began < today ? today : began) !== date) return [];
    return [
      {
        pairId: pair.id as PairId,
        serial: pair.serial,
        operationId: operation.id as OperationId,
        key: `s${operation.station}`,
        station: operation.station,
        state: operation.state as OperationState,
        startsAt: planned.startsAt.toISOString(),
        endsAt: planned.endsAt.toISOString(),
      },
    ];
  });
  return { date, isWorkingDay: plan.isWorkingDay(date), cells };
}

function queuePair(pair: PairRecord, planned: FloorPlan["pairs"][number] | undefined): QueuePair {
  const spec = frozen<PairSpec>(pair.spec);
  const model = currentCatalog().build.models.find((candidate) => candidate.id === spec.model);
  const now =
    pair.operations.find((operation) => operation.state === "running") ??
    pair.operations.find((operation) => operation.state === "ready");
  return {
    pairId: pair.id as PairId,
    orderId: pair.orderId as OrderId,
    serial: pair.serial,
    skierFirstName: firstName(pair.skierName),
    modelName: model?.name ?? spec.model,
    lengthCm: spec.lengthCm,
    mould: pair.mould,
    state: pair.state as OrderState,
    now:
      now === undefined
        ? null
        : {
            station: now.station,
            stationName: stationRecipe(now.station).name,
            state: now.state as OperationState,
          },
    doneOperations: pair.operations.filter((operation) => operation.state === "done").length,
    allOperations: pair.operations.length,
    plannedReady: planned?.finishDate ?? null,
    expected: planned?.expected ?? null,
    promisedOn: pair.order.promisedOn as IsoDate | null,
    slackDays: slack(pair, planned),
    waitingFor: openConditions(pair),
  };
}

/** Working days from the day nine of ten would be ready by to the promised day. */
function slack(pair: PairRecord, planned: FloorPlan["pairs"][number] | undefined): number | null {
  const promised = pair.order.promisedOn as IsoDate | null;
  if (promised === null || planned === undefined) return null;
  const expected = planned.expected?.p90 ?? planned.finishDate;
  return workingDaysBetween(expected, promised);
}

/** Negative when `to` lies before `from`. */
function workingDaysBetween(from: IsoDate, to: IsoDate): number {
  const [low, high] = [dayIndex(from), dayIndex(to)];
  const step = high >= low ? 1 : -1;
  let count = 0;
  for (let day = low; day !== high; day += step) {
    if (weekdayOf(day + (step > 0 ? 1 : 0)) <= 5) count += step;
  }
  return count;
}

function pressDays(plan: FloorPlan, pairs: readonly PairRecord[], zone: string): readonly PressDay[] {
  const serials = new Map(pairs.map((pair) => [pair.id, pair.serial]));
  const byDay = new Map<IsoDate, PressDay["slots"][number][]>();
  for (const slot of plan.pressPlan) {
    const date = shopDay(slot.startsAt, zone);
    const slots = byDay.get(date) ?? [];
    byDay.set(date, slots);
    slots.push({
      pairId: slot.pairId as PairId,
      serial: serials.get(slot.pairId) ?? "",
      mould: slot.mould,
      startsAt: slot.startsAt.toISOString(),
      endsAt: slot.endsAt.toISOString(),
      changeoverMinutes: slot.changeoverMinutes,
      isFixed: slot.isFixed,
    });
  }
  return [...byDay].map(([date, slots]) => ({ date, slots }));
}
