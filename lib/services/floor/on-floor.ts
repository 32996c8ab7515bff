/** Open pairs as the queue's engine reads them: shop minutes, states, what each waits on. */
import type { PairRecord } from "../../data/pairs";
import { frozen } from "../../data/quotes";
import type { BuildCatalog, PairSpec } from "../../engine/configuration";
import { type ClockStartCondition, clockStart, type OperationState } from "../../engine/lifecycle";
import type { OperationOnFloor, PairOnFloor, WaitingOn } from "../../engine/routing";
import type { IsoDate } from "../../engine/units";
import { gateFacts } from "../orders/gate-facts";
import { shopMinuteOf } from "../shop-time";
import { routeOf } from "./facts";

/** The floor begins only when everything is in, so every condition holds up the first station. */
const firstStation = 1;

export function pairOnFloor(pair: PairRecord, build: BuildCatalog, timeZone: string): PairOnFloor {
  const { promisedOn, promiseClass } = pair.order;
  return {
    pairId: pair.id,
    route: routeOf(frozen<PairSpec>(pair.spec), build),
    operations: pair.operations.map((operation) => operationOnFloor(operation, timeZone)),
    waitingOn: waitingOn(pair),
    queuedAtMinute: shopMinuteOf(pair.queuedAt, timeZone),
    promise:
      promisedOn === null
        ? null
        : { class: promiseClass === "hard" ? "hard-date" : "promise", date: promisedOn as IsoDate },
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

function operationOnFloor(operation: PairRecord["operations"][number], timeZone: string): OperationOnFloor {
  const { startedAt, finishedAt, press, minutesShare } = operation;
  return {
    station: operation.station,
    state: operation.state as OperationState,
    visit: operation.visit,
    ...(startedAt === null ? {} : { startedAtMinute: shopMinuteOf(startedAt, timeZone) }),
    ...(finishedAt === null ? {} : { doneAtMinute: shopMinuteOf(finishedAt, timeZone) }),
    ...(press === null ? {} : { press }),
    ...(minutesShare === null ? {} : { minutesShare }),
  };
}

function waitingOn(pair: PairRecord): readonly WaitingOn[] {
  return [
    ...openConditions(pair).map((reason) => ({ reason, holdsUpStation: firstStation })),
    ...pair.holds.map(({ reason, station, expectedOn }) => ({
      reason: reason as "material" | "decision",
      holdsUpStation: station,
      ...(expectedOn === null ? {} : { expectedDate: expectedOn as IsoDate }),
    })),
  ];
}

export function openConditions(pair: PairRecord): readonly ClockStartCondition[] {
  if (pair.state !== "waiting") return [];
  const start = clockStart(gateFacts(pair.order.depositPaidAt, pair));
  return start.started ? [] : start.waitingFor;
}
