/**
 * What the floor has done on a pair so far. Written straight to the rows, with the events that ticking would have left,
 * because a shop's worth of single ticks takes too long for a first start.
 */

import { bumpQueue } from "#data/counters";
import type { NewEvent } from "#data/events";
import { recordEvents } from "#data/events";
import { moveOrder, orderById } from "#data/orders";
import { moveOperation, movePair, type OperationChange, pairById } from "#data/pairs";
import { consumeStrips } from "#data/strips";
import { transaction } from "#data/transaction";
import { type OperationState, type StationId, type StationRole, stationOf } from "#engine/floor";
import { floorCatalog, stationRecipe } from "#shop/floor/recipe";
import { mustPrecede, positionOf, stationIdFor, stationIdTaking } from "#shop/floor/stations";
import type { DemoShop } from "./sales";
import type { DemoCalendar } from "./shop-days";

/** Working days after the release on which a pair usually comes to the station of a role. */
const usualDay: Readonly<Record<StationRole, number>> = {
  release: 0,
  strips: 0,
  core: 1,
  profile: 2,
  sidewalls: 3,
  base: 1,
  edges: 2,
  print: 1,
  kit: 4,
  "lay-up": 5,
  press: 5,
  trim: 7,
  finish: 8,
  check: 9,
};

const slowest = usualDay.check;

const roleOf = (station: StationId) => stationOf(floorCatalog(), station).role;

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
export type BusyStations = Map<StationId, number>;

export async function seedFloorHistory(
  shop: DemoShop,
  calendar: DemoCalendar,
  progress: FloorProgress,
  busy: BusyStations,
): Promise<void> {
  const { pairId, days, turn, through } = progress;
  const usual = (station: StationId) => Math.floor(usualDay[roleOf(station)] * ((through ?? slowest) / slowest));
  const isDone = (station: StationId) => days > usual(station);
  await transaction(shop.db, async (tx) => {
    await bumpQueue(tx);
    const pair = await pairById(tx, pairId);
    if (pair === null) throw new Error(`demo: pair ${pairId} is not there`);
    const events: NewEvent[] = [];
    for (const operation of pair.operations) {
      const { station } = operation;
      const change = isDone(station)
        ? doneChange(calendar, station, days - usual(station), turn)
        : mustPrecede(station).every(isDone)
          ? nextChange(calendar, station, days === usual(station), busy)
          : null;
      if (change === null) continue;
      const { state, ...what } = change;
      await moveOperation(tx, operation.id, { state: operation.state, version: operation.version }, state, what);
      events.push(...ticks(pairId, station, change));
    }
    if (isDone(stationIdTaking("strips"))) await consumeStrips(tx, pairId);
    const hasBegun = events.length > 0;
    const isReady = isDone(stationIdFor("check"));
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
    const now = isReady ? "ready" : "building";
    if (hasBegun) await movePair(tx, pairId, { state: "released" }, now);
    const order = await orderById(tx, pair.orderId);
    if (hasBegun && order !== null) await moveOrder(tx, order.id, { state: order.state, version: order.version }, now);
    await recordEvents(
      tx,
      events.sort((a, b) => a.at.getTime() - b.at.getTime()),
    );
  });
}

function doneChange(calendar: DemoCalendar, station: StationId, daysAgo: number, turn: number): Visit {
  const { typicalMinutes, restMinutes } = stationRecipe(station);
  const startedAt = calendar.back(daysAgo, hourAt(station, turn), (positionOf(station) * 7) % 50);
  const finishedAt = new Date(startedAt.getTime() + (typicalMinutes + shutMinutes(station)) * 60_000);
  const nextFrom = restMinutes === 0 ? null : new Date(finishedAt.getTime() + restMinutes * 60_000);
  const by = makerOf(station);
  return { state: "done", startedAt, startedByName: by, finishedAt, finishedByName: by, nextFrom, ...pressAt(station) };
}

/** Two pairs of one day share the press with a cycle between them; what follows on the same day comes after it. */
function hourAt(station: StationId, turn: number): number {
  const role = roleOf(station);
  const usesPress = role === "lay-up" || role === "press";
  const follows = role === "strips" || role === "press";
  return 8 + (usesPress ? 3 * (turn % 2) : turn % 6) + (follows ? 1 : 0);
}

/** The press is finished when it is opened. */
function shutMinutes(station: StationId): number {
  if (roleOf(station) !== "press") return 0;
  const { heatUpMinutes, dwellMinutes, coolMinutes, unloadMinutes } = floorCatalog().pressProgramme;
  return heatUpMinutes + dwellMinutes + coolMinutes + unloadMinutes;
}

/** Under work if its day has come and a bench is free, else ready for whoever comes. */
function nextChange(calendar: DemoCalendar, station: StationId, isItsDay: boolean, busy: BusyStations): Visit | null {
  const { capacity } = stationRecipe(station);
  const taken = busy.get(station) ?? 0;
  if (!isItsDay || taken >= capacity) return { state: "ready" };
  busy.set(station, taken + 1);
  const startedAt = new Date(calendar.present.getTime() - (8 + positionOf(station)) * 60_000);
  return {
    state: "running",
    startedAt,
    startedByName: makerOf(station),
    ...pressAt(station),
  };
}

/** A state with what goes with it. */
type Visit = OperationChange & { readonly state: OperationState };

const onlyPress = { id: "press-1", label: "Press 1" } as const;

function pressAt(station: StationId): { readonly press?: string } {
  return roleOf(station) === "press" ? { press: onlyPress.id } : {};
}

function makerOf(station: StationId): string {
  return roleOf(station) === "release" ? "Ines Calder" : "Mo Tarrant";
}

function ticks(pairId: string, station: StationId, change: Visit): readonly NewEvent[] {
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
    ...event("operation-started", change.startedAt, roleOf(station) === "press" ? { press: onlyPress.label } : {}),
    ...event("operation-finished", change.finishedAt, {}),
  ];
}
