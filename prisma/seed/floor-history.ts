/**
 * What the floor has done on a pair so far. Written straight to the rows, with the events that ticking would have left,
 * because a shop's worth of single ticks takes too long for a first start.
 */

import { bumpQueue } from "#data/counters";
import type { NewEvent } from "#data/events";
import { recordEvents } from "#data/events";
import { orderById, updateOrder } from "#data/orders";
import { moveOperation, type OperationChange, pairById, setPairState } from "#data/pairs";
import { consumeStrips } from "#data/strips";
import { transaction } from "#data/transaction";
import { stationsBefore } from "#engine/routing";
import { floorCatalog, stationRecipe } from "#shop/floor/recipe";
import { coreStation, lastStation, layUpStation, pressStation } from "#shop/floor/stations";
import type { DemoShop } from "./sales";
import type { DemoCalendar } from "./shop-days";

/** Working days after the release on which a pair usually comes to a station. */
const usualDay: Readonly<Record<number, number>> = {
  1: 0,
  2: 0,
  3: 1,
  4: 2,
  5: 3,
  6: 1,
  7: 2,
  8: 1,
  9: 4,
  10: 5,
  11: 5,
  12: 7,
  13: 8,
  14: 9,
};

const slowest = 9;

export interface FloorProgress {
  readonly pairId: string;
  /** Working days since its release: everything that is usually done by then is done. */
  readonly days: number;
  /** Spreads the pairs of one day over its hours. */
  readonly turn: number;
  /** Working days in which it went through the whole shop; absent: as long as is usual. */
  readonly through?: number;
}

/** Benches that are taken by pairs already placed, so that no station runs more than it has room for. */
export type BusyStations = Map<number, number>;

export async function seedFloorHistory(
  shop: DemoShop,
  calendar: DemoCalendar,
  progress: FloorProgress,
  busy: BusyStations,
): Promise<void> {
  const { pairId, days, turn, through } = progress;
  const usual = (station: number) => Math.floor((usualDay[station] ?? 0) * ((through ?? slowest) / slowest));
  const isDone = (station: number) => days > usual(station);
  await transaction(shop.db, async (tx) => {
    await bumpQueue(tx);
    const pair = await pairById(tx, pairId);
    if (pair === null) throw new Error(`demo: pair ${pairId} is not there`);
    const events: NewEvent[] = [];
    for (const operation of pair.operations) {
      const { station } = operation;
      const change = isDone(station)
        ? doneChange(calendar, station, days - usual(station), turn)
        : stationsBefore(station).every(isDone)
          ? nextChange(calendar, station, days === usual(station), busy)
          : null;
      if (change === null) continue;
      await moveOperation(tx, operation.id, { state: operation.state, version: operation.version }, change);
      events.push(...ticks(pairId, station, change));
    }
    if (isDone(coreStation)) await consumeStrips(tx, pairId);
    const hasBegun = events.length > 0;
    const isReady = isDone(lastStation);
    const last = events.filter(({ kind }) => kind === "operation-finished").at(-1);
    if (isReady && last !== undefined) {
      events.push({
        ...last,
        kind: "order-ready",
        subjectKind: "order",
        subjectId: pair.orderId,
        data: { from: "building" },
      });
    }
    if (hasBegun) await setPairState(tx, pairId, "released", isReady ? "ready" : "building");
    const order = await orderById(tx, pair.orderId);
    if (hasBegun && order !== null)
      await updateOrder(tx, order.id, order.version, { state: isReady ? "ready" : "building" });
    await recordEvents(
      tx,
      events.sort((a, b) => a.at.getTime() - b.at.getTime()),
    );
  });
}

function doneChange(calendar: DemoCalendar, station: number, daysAgo: number, turn: number): OperationChange {
  const { typicalMinutes, restMinutes } = stationRecipe(station);
  const startedAt = calendar.back(daysAgo, hourAt(station, turn), (station * 7) % 50);
  const finishedAt = new Date(startedAt.getTime() + (typicalMinutes + shutMinutes(station)) * 60_000);
  const nextFrom = restMinutes === 0 ? null : new Date(finishedAt.getTime() + restMinutes * 60_000);
  const by = makerOf(station);
  return { state: "done", startedAt, startedByName: by, finishedAt, finishedByName: by, nextFrom, ...pressAt(station) };
}

/** Two pairs of one day share the press with a cycle between them; what follows on the same day comes after it. */
function hourAt(station: number, turn: number): number {
  const usesPress = station === layUpStation || station === pressStation;
  const follows = station === 2 || station === pressStation;
  return 8 + (usesPress ? 3 * (turn % 2) : turn % 6) + (follows ? 1 : 0);
}

/** The press is finished when it is opened. */
function shutMinutes(station: number): number {
  if (station !== pressStation) return 0;
  const { heatUpMinutes, dwellMinutes, coolMinutes, unloadMinutes } = floorCatalog().pressProgramme;
  return heatUpMinutes + dwellMinutes + coolMinutes + unloadMinutes;
}

/** Under work if its day has come and a bench is free, else ready for whoever comes. */
function nextChange(
  calendar: DemoCalendar,
  station: number,
  isItsDay: boolean,
  busy: BusyStations,
): OperationChange | null {
  const { capacity } = stationRecipe(station);
  const taken = busy.get(station) ?? 0;
  if (!isItsDay || taken >= capacity) return { state: "ready" };
  busy.set(station, taken + 1);
  const startedAt = new Date(calendar.present.getTime() - (8 + station) * 60_000);
  return {
    state: "running",
    startedAt,
    startedByName: makerOf(station),
    ...pressAt(station),
  };
}

const onlyPress = { id: "press-1", label: "Press 1" } as const;

function pressAt(station: number): { readonly press?: string } {
  return station === pressStation ? { press: onlyPress.id } : {};
}

function makerOf(station: number): string {
  return station === 1 ? "Ines Calder" : "Mo Tarrant";
}

function ticks(pairId: string, station: number, change: OperationChange): readonly NewEvent[] {
  const event = (
    kind: "operation-started" | "operation-finished",
    at: unknown,
    told: { readonly press?: string },
  ): readonly NewEvent[] =>
    at instanceof Date
      ? [
          {
            at,
            kind,
            subjectKind: "pair",
            subjectId: pairId,
            actorKind: "staff",
            actorId: null,
            actorName: makerOf(station),
            data: { station, ...told },
          },
        ]
      : [];
  return [
    ...event("operation-started", change.startedAt, station === pressStation ? { press: onlyPress.label } : {}),
    ...event("operation-finished", change.finishedAt, {}),
  ];
}
