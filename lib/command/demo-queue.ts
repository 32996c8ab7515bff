/**
 * The demo shop's queue without its database: as many open pairs as the demo starts with, at every stage, counted back from
 * a given moment. Invented; the same moment gives the same queue.
 */
import { firstStation } from "#engine/floor";
import {
  dateOfDay,
  dayIndex,
  type FloorCatalog,
  minutesPerDay,
  type OperationOnFloor,
  type PairOnFloor,
  type ShopMinute,
} from "#engine/routing";
import type { IsoDate } from "#engine/units";

const openPairs = 29;
/** Of these, so many wait for a deposit or a check and have not begun. */
const waitingPairs = 6;

export function demoQueue(floor: FloorCatalog, today: IsoDate, now: ShopMinute): readonly PairOnFloor[] {
  return Array.from({ length: openPairs }, (_, index): PairOnFloor => {
    const mould = floor.moulds[(index * 7) % floor.moulds.length];
    const waits = index >= openPairs - waitingPairs;
    const queuedDaysAgo = openPairs - index;
    return {
      pairId: `demo-${index + 1}`,
      route: {
        kind: "pair",
        mould: mould?.id ?? null,
        mouldFamily: mould?.family ?? null,
        extraMinutes: [],
        hasOwnGraphic: false,
      },
      operations: waits ? [] : doneSoFar(floor, index, now),
      waitingOn: waits ? [{ reason: "deposit", holdsUpStation: firstStation(floor).id }] : [],
      queuedAtMinute: now - queuedDaysAgo * minutesPerDay,
      promise: waits ? null : { class: "promise", date: dateOfDay(dayIndex(today) + 3 + index) },
    };
  });
}

/** The longer a pair is in, the more of its way is behind it. */
function doneSoFar({ stations }: FloorCatalog, index: number, now: ShopMinute): readonly OperationOnFloor[] {
  const behind = Math.max(0, stations.length - 1 - Math.floor(index * 0.6));
  return stations.slice(0, behind).map(({ id }, turn) => ({
    station: id,
    state: "done",
    doneAtMinute: now - (behind - turn) * 300 - 2 * minutesPerDay,
  }));
}
