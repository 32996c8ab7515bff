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
import { after, type FloorBook } from "./floor-book";
import type { DemoShop } from "./sales";
import type { DemoCalendar } from "./shop-days";

/** Working days after the release on which a pair usually comes to the station of a role. */
const usualDay: Readonly<Record<StationRole, number>> = {
  release: 0,
  strips: 0,
  core: 1,
  sidewalls: 2,
  profile: 3,
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

export async function seedFloorHistory(
  shop: DemoShop,
  calendar: DemoCalendar,
  progress: FloorProgress,
  book: FloorBook,
): Promise<void> {
  const { pairId } = progress;
  await transaction(shop.db, async (tx) => {
    await bumpQueue(tx);
    const pair = await pairById(tx, pairId);
    if (pair === null) throw new Error(`demo: pair ${pairId} is not there`);
    const visits = visitsOf(calendar, progress, book);
    const events: NewEvent[] = [];
    for (const operation of pair.operations) {
      const change = visits.get(operation.station);
      if (change === undefined) continue;
      const { state, ...what } = change;
      await moveOperation(tx, operation.id, { state: operation.state, version: operation.version }, state, what);
      events.push(...ticks(pairId, operation.station, change));
    }
    const isDone = (station: StationId) => visits.get(station)?.state === "done";
    if (isDone(stationIdTaking("strips"))) await consumeStrips(tx, pairId);
    const hasBegun = events.length > 0;
    const isReady = isDone(stationIdFor("check"));
    events.sort((a, b) => a.at.getTime() - b.at.getTime());
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
    await recordEvents(tx, events);
  });
}

/** A state with what goes with it. */
type Visit = OperationChange & { readonly state: OperationState; readonly nextFrom?: Date | null };

/**
 * What each station has done on a pair: on its usual day, or as soon after it as what comes before has rested and there is room.
 * Work of days gone by is done; today's is under way where there is room.
 */
function visitsOf(
  calendar: DemoCalendar,
  { days, turn, through }: FloorProgress,
  book: FloorBook,
): ReadonlyMap<StationId, Visit> {
  const pair = `${days} ${turn}`;
  const usual = (station: StationId) => Math.floor((usualDay[roleOf(station)] * (through ?? slowest)) / slowest);
  const visits = new Map<StationId, Visit>();
  let loaded: Date | undefined;
  for (const { id: station } of floorCatalog().stations) {
    const before = mustPrecede(station).map((earlier) => visits.get(earlier));
    if (before.some((visit) => visit?.state !== "done")) continue;
    const free = Math.max(0, ...before.map((visit) => Number(visit?.nextFrom ?? visit?.finishedAt)));
    const daysAgo = days - usual(station);
    const from = new Date(Math.max(free, Number(calendar.back(Math.max(0, daysAgo), 8 + (turn % 3)))));
    const isPress = roleOf(station) === "press";
    const startedAt =
      daysAgo < 1 ? null : isPress ? (loaded ?? null) : book.firstRoom(station, pair, from, calendar.back(0, 0));
    if (startedAt !== null) {
      const finishedAt = tickedEnd(calendar, station, days, startedAt, book.minutesAt(station, pair));
      if (roleOf(station) === "lay-up") loaded = finishedAt;
      book.take(station, startedAt, finishedAt);
      visits.set(station, doneVisit(station, startedAt, finishedAt));
    } else {
      visits.set(station, daysAgo < 0 ? { state: "ready" } : presentVisit(calendar, station, free, book));
    }
  }
  return visits;
}

/** Ticks that say nothing of the work, as on every floor: a finish forgotten until the next morning, a double tap. */
const slips: readonly { readonly days: number; readonly role: StationRole; readonly what: "forgotten" | "tapped" }[] = [
  { days: 22, role: "print", what: "forgotten" },
  { days: 19, role: "print", what: "forgotten" },
  { days: 16, role: "kit", what: "tapped" },
  { days: 9, role: "release", what: "tapped" },
];

/** When the end was ticked. */
function tickedEnd(calendar: DemoCalendar, station: StationId, days: number, startedAt: Date, minutes: number): Date {
  const slip = slips.find((each) => each.days === days && each.role === roleOf(station));
  if (slip === undefined) return after(startedAt, minutes);
  if (slip.what === "tapped") return startedAt;
  let ago = days;
  while (calendar.back(ago, 7) < startedAt) ago -= 1;
  return calendar.back(ago, 9);
}

function doneVisit(station: StationId, startedAt: Date, finishedAt: Date): Visit {
  const { restMinutes } = stationRecipe(station);
  const nextFrom = restMinutes === 0 ? null : after(finishedAt, restMinutes);
  const by = makerOf(station);
  return { state: "done", startedAt, startedByName: by, finishedAt, finishedByName: by, nextFrom, ...pressAt(station) };
}

/** Under work if a bench is free and nothing rests any more, else ready for whoever comes. */
function presentVisit(calendar: DemoCalendar, station: StationId, free: number, book: FloorBook): Visit {
  const startedAt = after(calendar.present, -8 - positionOf(station));
  if (Number(startedAt) < free || !book.hasRoom(station, startedAt)) return { state: "ready" };
  book.take(station, startedAt, new Date(8.64e15));
  return { state: "running", startedAt, startedByName: makerOf(station), ...pressAt(station) };
}

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
