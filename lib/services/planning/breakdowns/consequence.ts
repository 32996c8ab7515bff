/** What something that went wrong does to the floor and to single pairs. */

import problems from "#content/copy/problems.json";
import {
  findStation,
  latestVisits,
  placeOf,
  reworkFaults,
  type StationId,
  standingOperationStates,
} from "#engine/floor";
import type { FloorChange, PairOnFloor, QueueSituation } from "#engine/routing";
import { accept, fill, type IsoDate, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { floorCatalog } from "#shop/floor/recipe";
import { stationIdFor, stationIdTaking, stationNumber } from "#shop/floor/stations";
import type { PairInQueue } from "#shop/queue/queued-pairs";
import { queuedPairs } from "#shop/queue/situation";
import { farthestDays, isTooFar, shopClock, shopDay, shopMinuteOf } from "#shop/time/shop-time";
import { baseShortage } from "./base-short";
import { hasBegun } from "./has-begun";
import type { BaseShortage, BreakdownInput, RemedyOption } from "./views";

const w = problems.breakdowns;

export interface Hold {
  readonly pairId: string;
  readonly reason: "material" | "decision";
  readonly station: StationId;
  readonly expectedOn: IsoDate | null;
}

export interface Consequence {
  readonly changes: readonly FloorChange[];
  readonly holds: readonly Hold[];
  /** One ski of a pair is made again from this station on. */
  readonly rebuild: { readonly pairId: string; readonly fromStation: StationId } | null;
  readonly base: BaseShortage | null;
}

/** Nothing done to the floor yet. */
const nothing: Consequence = { changes: [], holds: [], rebuild: null, base: null };

/** A redo of one ski of two. */
const oneSkiShare = 0.5;

/** Checks what was entered. Refuses `invalid-field` with the field's name and limit, `not-found`. */
export async function consequenceOf(ctx: Context, input: BreakdownInput): Promise<Outcome<Consequence>> {
  const floor = floorCatalog();
  const { timeZone } = floor.hours;
  switch (input.kind) {
    case "press-down":
    case "person-away": {
      const times = awayTimes(ctx, input, timeZone);
      if (!times.ok) return times;
      if (input.kind === "press-down") {
        if (!floor.presses.some(({ id }) => id === input.press)) return invalid("press", w.press);
        return accept({ ...nothing, changes: [{ kind: "press-down", press: input.press, ...times.value }] });
      }
      if (!floor.crew.some(({ id }) => id === input.person)) return invalid("person", w.person);
      return accept({ ...nothing, changes: [{ kind: "person-away", person: input.person, ...times.value }] });
    }
    case "supplier-late": {
      const late = expectedDay(ctx, input.expectedOn, timeZone);
      if (!late.ok) return late;
      if (!isStation(input.station)) return invalid("station", w.station);
      if (input.material.trim() === "") return invalid("material", w.material);
      const waiting = (await queuedPairs(ctx.db)).filter((pair) => !hasBegun(pair, input.station));
      const { station, expectedOn } = input;
      return accept({
        ...nothing,
        holds: waiting.map(({ id }) => ({ pairId: id, reason: "material", station, expectedOn })),
      });
    }
    case "base-short": {
      const late = expectedDay(ctx, input.expectedOn, timeZone);
      if (!late.ok) return late;
      const found = await baseShortage(ctx, input);
      if (!found.ok) return found;
      const { expectedOn } = input;
      const without = found.value.pairs.filter(({ isServed }) => !isServed);
      return accept({
        ...nothing,
        base: found.value,
        holds: without.map(({ pairId }) => ({
          pairId,
          reason: "material",
          station: stationIdTaking("base-sheets"),
          expectedOn,
        })),
      });
    }
    case "proof-late": {
      const late = expectedDay(ctx, input.expectedOn, timeZone);
      if (!late.ok) return late;
      const pair = await openPair(ctx, input.pairId);
      if (!pair.ok) return pair;
      const { id } = pair.value;
      const station = stationIdFor(pair.value.state === "waiting" ? "release" : "print");
      if (hasBegun(pair.value, station)) return invalid("pairId", w.printBegun);
      return accept({ ...nothing, holds: [{ pairId: id, reason: "decision", station, expectedOn: input.expectedOn }] });
    }
    case "ski-rebuild": {
      const pair = await openPair(ctx, input.pairId);
      if (!pair.ok) return pair;
      if (!isStation(input.fromStation)) return invalid("fromStation", w.fromStation);
      if (!hasBegun(pair.value, input.fromStation)) {
        return invalid("fromStation", fill(w.fromStationNotDone, { fromStation: stationNumber(input.fromStation) }));
      }
      if (!reworkFaults.some(({ id }) => id === input.fault)) return invalid("fault", w.fault);
      return accept({ ...nothing, rebuild: { pairId: pair.value.id, fromStation: input.fromStation } });
    }
  }
}

/** The situation with a consequence in it, and with a way on where one is looked at. */
export function situationWith(
  situation: QueueSituation,
  consequence: Consequence,
  option: Pick<RemedyOption, "changes" | "places"> = { changes: [], places: [] },
): QueueSituation {
  const places = new Map(option.places.map(({ pairId, placeMinute }) => [pairId, placeMinute] as const));
  return {
    ...situation,
    changes: [...situation.changes, ...consequence.changes, ...option.changes],
    pairs: situation.pairs.map((pair) => {
      const placeMinute = places.get(pair.pairId);
      const held = withHolds(rebuilt(pair, consequence.rebuild), consequence.holds);
      return placeMinute === undefined ? held : { ...held, placeMinute };
    }),
  };
}

function withHolds(pair: PairOnFloor, holds: readonly Hold[]): PairOnFloor {
  const own = holds.filter(({ pairId }) => pairId === pair.pairId);
  if (own.length === 0) return pair;
  return {
    ...pair,
    waitingOn: [
      ...pair.waitingOn,
      ...own.map(({ reason, station, expectedOn }) => ({
        reason,
        holdsUpStation: station,
        ...(expectedOn === null ? {} : { expectedDate: expectedOn }),
      })),
    ],
  };
}

function rebuilt(pair: PairOnFloor, rebuild: Consequence["rebuild"]): PairOnFloor {
  if (rebuild === null || rebuild.pairId !== pair.pairId) return pair;
  const floor = floorCatalog();
  const from = placeOf(floor, rebuild.fromStation);
  return {
    ...pair,
    operations: latestVisits(pair.operations.map((each) => ({ ...each, visit: each.visit ?? 0 }))).map((operation) => {
      const isDone = standingOperationStates.includes(operation.state);
      if (placeOf(floor, operation.station) < from || !isDone) return operation;
      const visit = operation.visit + 1;
      return { station: operation.station, state: "blocked", visit, minutesShare: oneSkiShare };
    }),
  };
}

function awayTimes(ctx: Context, input: { readonly from: string; readonly until: string }, timeZone: string) {
  const [from, until] = [new Date(input.from), new Date(input.until)];
  if (Number.isNaN(from.getTime())) return invalid("from", w.from);
  if (Number.isNaN(until.getTime())) return invalid("until", w.until);
  const told = (at: Date) => shopClock(at, timeZone).replace("T", " ");
  if (until <= from) return invalid("until", fill(w.untilBeforeFrom, { until: told(until), from: told(from) }));
  if (until <= ctx.now) return invalid("until", fill(w.untilPast, { until: told(until), now: told(ctx.now) }));
  const fromMinute = shopMinuteOf(from, timeZone);
  const toMinute = shopMinuteOf(until, timeZone);
  // What lasts longer is a different floor, not an incident.
  if (toMinute - fromMinute > farthestDays * 1440)
    return invalid("until", fill(w.untilTooFar, { until: told(until), farthestDays, from: told(from) }));
  return accept({ fromMinute, toMinute });
}

function expectedDay(ctx: Context, on: IsoDate, timeZone: string): Outcome<void> {
  const today = shopDay(ctx.now, timeZone);
  if (on < today) return invalid("expectedOn", fill(w.expectedPast, { on, today }));
  if (isTooFar(on, today)) return invalid("expectedOn", fill(w.expectedTooFar, { on, farthestDays, today }));
  return accept(undefined);
}

async function openPair(ctx: Context, pairId: string): Promise<Outcome<PairInQueue>> {
  const pair = (await queuedPairs(ctx.db)).find(({ id }) => id === pairId);
  return pair === undefined ? invalid("pairId", w.pair) : accept(pair);
}

function isStation(station: StationId): boolean {
  return findStation(floorCatalog(), station) !== null;
}

function invalid(path: string, message: string) {
  return refuse({ code: "invalid-field", path, message });
}
