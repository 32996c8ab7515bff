/** Open pairs as the queue's engine reads them: shop minutes, states, what each waits on. */

import type { BuildCatalog, PairSpec } from "#engine/configuration";
import { begunOperationStates, type ClockStartCondition, clockStart, isOneOf, type StationId } from "#engine/floor";
import type { FloorCatalog, OperationOnFloor, PairOnFloor, WaitingOn } from "#engine/routing";
import type { IsoDate } from "#engine/units";
import { boughtFor, routeOf } from "#shop/floor/facts";
import { stationIdFor } from "#shop/floor/stations";
import { gateFacts } from "#shop/order/gate-facts";
import { shopDay, shopMinuteOf } from "#shop/time/shop-time";
import type { PairInQueue } from "./queued-pairs";

/** @param now what a waiting pair needs is ordered when its clock starts: today, as far as anybody knows */
export function pairOnFloor(pair: PairInQueue, build: BuildCatalog, floor: FloorCatalog, now: Date): PairOnFloor {
  const { promisedOn, promiseClass } = pair.order;
  const { timeZone } = floor.hours;
  const spec = pair.spec;
  const bought = boughtFor(spec, build, floor, orderedOn(pair, shopDay(now, timeZone), timeZone));
  return {
    pairId: pair.id,
    route: routeOf(spec, build),
    operations: pair.operations.map((operation) => operationOnFloor(operation, timeZone)),
    waitingOn: [...waitingOn(pair), ...bought.filter(({ holdsUpStation }) => !wasEverBegun(pair, holdsUpStation))],
    queuedAtMinute: shopMinuteOf(pair.queuedAt, timeZone),
    promise: promisedOn === null ? null : { class: promiseClass, date: promisedOn },
    ...(pair.placeMinute === null ? {} : { placeMinute: pair.placeMinute }),
    ...(pair.pressSlotAt === null || pair.pressSlotPress === null
      ? {}
      : {
          frozenPressStart: {
            press: pair.pressSlotPress,
            startMinute: shopMinuteOf(pair.pressSlotAt, timeZone),
          },
        }),
  };
}

/** At the clock start, or when a later change of the specification brought it in. */
export function orderedOn(pair: PairInQueue, today: IsoDate, timeZone: string): (reinforcement: string) => IsoDate {
  const { clockStartedAt } = pair.order;
  return (reinforcement) => {
    const isIn = (spec: PairSpec) => spec.reinforcements.includes(reinforcement);
    if (clockStartedAt === null || !isIn(pair.spec)) return today;
    const without = pair.revisions.findLastIndex(({ spec }) => !isIn(spec));
    const broughtIn = pair.revisions[without + 1]?.createdAt ?? clockStartedAt;
    return shopDay(new Date(Math.max(Number(broughtIn), Number(clockStartedAt))), timeZone);
  };
}

/** A station that was begun had what it needs, even if its work is to be done again. */
function wasEverBegun(pair: PairInQueue, station: StationId): boolean {
  return pair.operations.some((each) => each.station === station && isOneOf(begunOperationStates, each.state));
}

function operationOnFloor(operation: PairInQueue["operations"][number], timeZone: string): OperationOnFloor {
  const { startedAt, finishedAt, press, minutesShare } = operation;
  return {
    station: operation.station,
    state: operation.state,
    visit: operation.visit,
    ...(startedAt === null ? {} : { startedAtMinute: shopMinuteOf(startedAt, timeZone) }),
    ...(finishedAt === null ? {} : { doneAtMinute: shopMinuteOf(finishedAt, timeZone) }),
    ...(press === null ? {} : { press }),
    ...(minutesShare === null ? {} : { minutesShare }),
  };
}

function waitingOn(pair: PairInQueue): readonly WaitingOn[] {
  const print = stationIdFor("print");
  const first = stationIdFor("release");
  return [
    // The floor begins only when everything is in, so every condition holds up the first station.
    ...openConditions(pair).map((reason) => ({ reason, holdsUpStation: first })),
    ...openForPrint(pair).map((reason) => ({ reason, holdsUpStation: print })),
    ...pair.holds.map(({ reason, station, expectedOn }) => ({
      reason: reason,
      holdsUpStation: station,
      ...(expectedOn === null ? {} : { expectedDate: expectedOn }),
    })),
  ];
}

/** A change after the clock start may ask for a proof or for rights anew: the print waits for them, the rest goes on. */
export function openForPrint(pair: PairInQueue): readonly ("proof" | "rights")[] {
  if (pair.state === "waiting" || wasEverBegun(pair, stationIdFor("print"))) return [];
  const { proofApprovedAtMs, rightsConfirmedAtMs } = gateFacts(pair.order.depositPaidAt, pair);
  const open = [
    ["proof", proofApprovedAtMs],
    ["rights", rightsConfirmedAtMs],
  ] as const;
  return open.flatMap(([condition, at]) => (at === null ? [condition] : []));
}

/** What a waiting pair's clock still waits for. */
export function openConditions(pair: PairInQueue): readonly ClockStartCondition[] {
  if (pair.state !== "waiting") return [];
  const start = clockStart(gateFacts(pair.order.depositPaidAt, pair));
  return start.started ? [] : start.waitingFor;
}
