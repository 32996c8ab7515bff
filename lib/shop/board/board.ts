/** The queue as a board: stations, days, pairs, the press plan and who waits for what. */

import { currentQueueRevision } from "#data/counters";
import { floorChangesInForce } from "#data/floor-changes";
import { begunOperationStates, isOneOf, latestVisits, type StationId } from "#engine/floor";
import { dateOfDay, dayIndex } from "#engine/routing";
import type { IsoDate } from "#engine/units";
import { currentCatalog } from "#shop/catalogue/current";
import type { ShopContext } from "#shop/context";
import { floorCatalog, stationRecipe } from "#shop/floor/recipe";
import { unreadableView } from "#shop/names/common-view";
import { firstName } from "#shop/pair/view";
import type { OperationState } from "#shop/pair/views";
import { openConditions } from "#shop/queue/on-floor";
import { type FloorPlan, floorPlan } from "#shop/queue/plan";
import { openQueue, type PairInQueue, type QueuedPair } from "#shop/queue/queued-pairs";
import { addDays, shopDay } from "#shop/time/shop-time";
import { blockedPairs } from "./blocked";
import { changesOf, isInForce } from "./changes";
import { drawnBoard } from "./drawn-board";
import { pressDays } from "./press-plan";
import type { PlannedVisit } from "./station-board";
import type { QueueBoard, QueueCell, QueueDay, QueuePair, QueueStation } from "./views";
import { waitingSince } from "./waiting-since";

export async function queueBoardOf(ctx: ShopContext, days: number): Promise<QueueBoard> {
  const [pairs, revision, stored] = await Promise.all([
    openQueue(ctx.db),
    currentQueueRevision(ctx.db),
    floorChangesInForce(ctx.db, ctx.now),
  ]);
  const plan = await floorPlan(ctx, pairs);
  const zone = currentCatalog().shop.timeZone;
  const today = shopDay(ctx.now, zone);
  const planned = new Map(plan.pairs.map((pair) => [pair.pairId, pair]));
  const waiting = pairs.filter((pair) => openConditions(pair).length > 0);
  const changes = changesOf(stored, zone);
  const cells = plannedCells(pairs, plan);
  return {
    revision,
    today,
    stations: floorCatalog().stations.map(({ id }) => stationOf(id, pairs)),
    days: Array.from({ length: days }, (_, index) => dayOf(addDays(today, index), today, cells, plan, zone)),
    board: drawnBoard({ now: ctx.now, today, days, cells, changes }),
    blocked: blockedPairs(
      pairs,
      changes.filter(({ shown }) => isInForce(shown, ctx.now)),
      floorCatalog(),
      ctx.now,
    ),
    pairs: pairs.map((pair) => queuePair(pair, planned.get(pair.id), plan.isWorkingDay)),
    waitingOn: waiting.map((pair) => ({
      pairId: pair.id,
      serial: pair.serial,
      skierFirstName: firstName(pair.skierName),
      waitingFor: openConditions(pair),
      since: earliest(openConditions(pair).map((condition) => waitingSince(pair, condition))).toISOString(),
    })),
    pressPlan: pressDays(plan, pairs, floorCatalog()),
    backlogPairs: pairs.filter((pair) => !isBegun(pair)).length,
    unreadable: pairs.flatMap(({ unreadable }) => (unreadable === null ? [] : [unreadableView(unreadable)])),
  };
}

const earliest = (days: readonly Date[]) => new Date(Math.min(...days.map((day) => day.getTime())));

function isBegun(pair: PairInQueue): boolean {
  return pair.operations.some(({ state }) => isOneOf(begunOperationStates, state));
}

function stationOf(station: StationId, pairs: readonly PairInQueue[]): QueueStation {
  const here = pairs.flatMap((pair) => pair.operations.filter((operation) => operation.station === station));
  const count = (state: OperationState) => here.filter((operation) => operation.state === state).length;
  const { number, name, typicalMinutes, capacity } = stationRecipe(station);
  return {
    station,
    number,
    name,
    capacity,
    ready: count("ready"),
    running: count("running"),
    blocked: count("blocked"),
    minutesWaiting: typicalMinutes * (count("ready") + count("running") + count("blocked")),
  };
}

/**
 * What the plan places, with the operation it stands for. A pair that waits for its customer keeps its place in the plan but
 * is nobody's work yet: it stands on the list of who waits for what.
 */
function plannedCells(pairs: readonly PairInQueue[], plan: FloorPlan): readonly PlannedVisit[] {
  const byId = new Map(pairs.map((pair) => [pair.id, pair]));
  const standings = new Map(plan.pairs.map(({ pairId, standing }) => [pairId, standing] as const));
  return plan.operations.flatMap((planned): readonly PlannedVisit[] => {
    const pair = byId.get(planned.pairId);
    if (pair === undefined || openConditions(pair).length > 0) return [];
    const operation = latestVisits(pair.operations).find((candidate) => candidate.station === planned.station);
    if (operation === undefined) return [];
    const { startMinute, workEndMinute, freeMinute } = planned;
    const cell: QueueCell = {
      pairId: pair.id,
      serial: pair.serial,
      operationId: operation.id,
      key: `s${operation.station}`,
      station: operation.station,
      state: operation.state,
      startsAt: planned.startsAt.toISOString(),
      endsAt: planned.endsAt.toISOString(),
      freeAt: planned.freeAt.toISOString(),
    };
    return [{ cell, standing: standings.get(pair.id) ?? "open", startMinute, workEndMinute, freeMinute }];
  });
}

/** Work on a day. What is running began today or before: it stands under today. */
function dayOf(
  date: IsoDate,
  today: IsoDate,
  visits: readonly PlannedVisit[],
  plan: FloorPlan,
  zone: string,
): QueueDay {
  const cells = visits.flatMap(({ cell }) => {
    const began = shopDay(new Date(cell.startsAt), zone);
    return (began < today ? today : began) === date ? [cell] : [];
  });
  return { date, isWorkingDay: plan.isWorkingDay(date), cells };
}

function queuePair(
  pair: QueuedPair,
  planned: FloorPlan["pairs"][number] | undefined,
  isWorkingDay: FloorPlan["isWorkingDay"],
): QueuePair {
  const spec = pair.spec;
  const model = currentCatalog().build.models.find((candidate) => candidate.id === spec.model);
  const now =
    pair.operations.find((operation) => operation.state === "running") ??
    pair.operations.find((operation) => operation.state === "ready");
  return {
    pairId: pair.id,
    isUnreadable: pair.unreadable !== null,
    orderId: pair.orderId,
    serial: pair.serial,
    skierFirstName: firstName(pair.skierName),
    modelName: model?.name ?? spec.model,
    lengthCm: spec.lengthCm,
    mould: pair.mould,
    state: pair.state,
    now:
      now === undefined
        ? null
        : {
            station: now.station,
            stationNumber: stationRecipe(now.station).number,
            stationName: stationRecipe(now.station).name,
            state: now.state,
          },
    doneOperations: pair.operations.filter((operation) => operation.state === "done").length,
    allOperations: pair.operations.length,
    plannedReady: planned?.finishDate ?? null,
    expected: planned?.expected ?? null,
    promiseClass: pair.order.promiseClass,
    standing: planned?.standing ?? "open",
    chanceKept: planned?.chanceKept ?? null,
    promisedOn: pair.order.promisedOn,
    slackDays: slack(pair, planned, isWorkingDay),
    waitingFor: openConditions(pair),
  };
}

/** Working days from the day nine of ten would be ready by to the promised day. */
function slack(
  pair: PairInQueue,
  planned: FloorPlan["pairs"][number] | undefined,
  isWorkingDay: FloorPlan["isWorkingDay"],
): number | null {
  const promised = pair.order.promisedOn;
  if (promised === null || planned === undefined) return null;
  const expected = planned.expected?.p90 ?? planned.finishDate;
  return workingDaysBetween(expected, promised, isWorkingDay);
}

/** Negative when `to` lies before `from`. */
function workingDaysBetween(from: IsoDate, to: IsoDate, isWorkingDay: FloorPlan["isWorkingDay"]): number {
  const [low, high] = from <= to ? [from, to] : [to, from];
  let count = 0;
  for (let day = dayIndex(low) + 1; day <= dayIndex(high); day++) if (isWorkingDay(dateOfDay(day))) count += 1;
  return from <= to ? count : -count;
}
