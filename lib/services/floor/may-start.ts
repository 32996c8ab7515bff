/** Whether work may begin at a station at this moment: nothing holds the pair, what it needs is there, there is room. */

import problems from "#content/copy/problems.json";
import type { Tx } from "#data/client";
import { type FloorChangeRecord, floorChangesInForce } from "#data/floor-changes";
import { type PairRecord, type RunningVisit, runningVisits } from "#data/pairs";
import { isAtOrAfter, type StationId, stationFor, stationOf } from "#engine/floor";
import { accept, fill, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { changeData, isFree, isOn, longestAway, pressChoices } from "#shop/floor/presses";
import { floorCatalog, stationRecipe } from "#shop/floor/recipe";
import { stationIdFor, stationNumber, stationTitle } from "#shop/floor/stations";
import type { PressChoice } from "#shop/floor/views";
import { openForPrint } from "#shop/queue/on-floor";
import { shopClock, shopDay } from "#shop/time/shop-time";

const w = problems.floor;

type Operation = PairRecord["operations"][number];
/** The press that is taken; null where none is needed. */
type Start = Outcome<{ readonly press: PressChoice | null }>;

/**
 * Refuses `print-not-agreed` (by: `print-proof`, `print-rights`), `pair-held` and `pair-held-until` (station, note, until), `out-of-use` (what, until, reason), `station-full`
 * (place, capacity, occupants), `press-missing` when several are free and none was named, `invalid-field` (press).
 */
export async function mayStart(
  ctx: Context,
  tx: Tx,
  pair: PairRecord,
  operation: Operation,
  press?: string,
): Promise<Start> {
  const held = heldBy(pair, operation.station, shopDay(ctx.now, zone()));
  if (held !== null) return refuse(held);
  const open = operation.station === stationIdFor("print") ? openForPrint(pair) : [];
  if (open.length > 0) return refuse({ code: "print-not-agreed", by: open.map((code) => ({ code: `print-${code}` })) });
  const changes = await floorChangesInForce(tx, ctx.now);
  const running = await runningVisits(tx);
  const away = outOfUse(pair, operation.station, changes, ctx.now);
  if (away !== null) return refuse(away);
  if (operation.station === stationIdFor("press"))
    return pressFor(pair, pressChoices(floorCatalog(), changes, running, ctx.now), press);
  return roomAt(operation.station, running);
}

const zone = () => floorCatalog().hours.timeZone;

/**
 * What stops a pair stops the station it was stopped at and all that follow it. Material counts as there from the day it was
 * expected on, as the plan has it; a decision has to be made.
 */
function heldBy(pair: PairRecord, station: StationId, today: string) {
  const floor = floorCatalog();
  const hold = pair.holds.find(
    ({ reason, station: at, expectedOn }) =>
      isAtOrAfter(floor, station, at) && !(reason === "material" && expectedOn !== null && expectedOn <= today),
  );
  if (hold === undefined) return null;
  const { expectedOn, note } = hold;
  return {
    code: expectedOn === null ? "pair-held" : "pair-held-until",
    station: stationNumber(hold.station),
    note,
    until: expectedOn,
  } as const;
}

/** Wet resin waits for nobody: mould and press must be there by the end of the lay-up, not at its beginning. */
function outOfUse(pair: PairRecord, station: StationId, changes: readonly FloorChangeRecord[], now: Date) {
  const isLayUp = station === stationIdFor("lay-up");
  const needed = isLayUp ? closingTime(now) : now;
  const usesMould = stationOf(floorCatalog(), station).uses.includes("mould");
  const here = changes.filter((change) => isOn(change, now) && changeData(change, "station-down")?.station === station);
  const mould = changes.filter(
    (change) => usesMould && isOn(change, needed) && changeData(change, "mould-out")?.mould === pair.mould,
  );
  const gone = longestAway(here) ?? longestAway(mould);
  if (gone !== null) {
    const what = gone.kind === "mould-out" ? pair.mould : stationTitle(station);
    return away(what, gone.toAt?.toISOString() ?? null, gone.reason);
  }
  if (!isLayUp) return null;
  const presses = pressChoices(floorCatalog(), changes, [], needed);
  const [first] = presses;
  return first?.down != null && presses.every(({ down }) => down !== null) ? downRefusal(first) : null;
}

function closingTime(now: Date): Date {
  const floor = floorCatalog();
  const layUp = stationFor(floor, "lay-up");
  const minutes = layUp.minutes.typ / Math.max(1, layUp.crewNeeded) + floor.pressProgramme.closeWithinMinutes;
  return new Date(now.getTime() + minutes * 60_000);
}

function roomAt(station: StationId, running: readonly RunningVisit[]): Start {
  const here = running.filter((visit) => visit.station === station);
  const { capacity } = stationRecipe(station);
  if (here.length < capacity) return accept({ press: null });
  return full(
    stationTitle(station),
    capacity,
    here.map(({ pair, startedByName }) => occupant(pair.serial, startedByName)),
  );
}

/** The press that was asked for; else the one its slot is fixed on, else the only free one. */
function pressFor(pair: PairRecord, presses: readonly PressChoice[], asked: string | undefined): Start {
  const names = presses.map(({ name }) => name).join(", ");
  const free = presses.filter(isFree);
  const planned = presses.find(({ press }) => press === pair.pressSlotPress);
  if (asked !== undefined && !presses.some(({ press }) => press === asked)) {
    return refuse({ code: "invalid-field", path: "press", message: fill(w.press, { names, asked }) });
  }
  const chosen =
    asked === undefined
      ? (free.find(({ press }) => press === planned?.press) ??
        (free.length > 1 ? undefined : (free[0] ?? planned ?? presses[0])))
      : presses.find(({ press }) => press === asked);
  if (chosen === undefined) return refuse({ code: "press-missing", path: "press", presses: names });
  if (chosen.down !== null) return refuse(downRefusal(chosen));
  if (chosen.takenBy === null) return accept({ press: chosen });
  return full(chosen.name, 1, [occupant(chosen.takenBy.serial, chosen.takenBy.by)]);
}

function downRefusal({ name, down }: PressChoice) {
  return away(name, down?.until ?? null, down?.reason ?? "");
}

function away(what: string, until: string | null, reason: string) {
  const back = until === null ? null : shopClock(new Date(until), zone()).replace("T", " ");
  return { code: "out-of-use", what, until: back, reason } as const;
}

function full(place: string, capacity: number, occupants: readonly string[]): Start {
  return refuse({ code: "station-full", place, capacity, occupants });
}

const occupant = (serial: string, by: string | null) => (by === null || by === "" ? serial : `${serial} (${by})`);
