/** Who cannot be worked on, why, and since when: the customer, material, a decision, a rest, somebody away, no slot. */

import { findStation, latestVisits, type StationId, type StationTool } from "#engine/floor";
import type { FloorCatalog } from "#engine/routing";
import { mustPrecede, stationNumber } from "#shop/floor/stations";
import { firstName, notBefore } from "#shop/pair/view";
import { openConditions, openForPrint } from "#shop/queue/on-floor";
import type { PairInQueue } from "#shop/queue/queued-pairs";
import type { ReasonedChange } from "./station-board";
import type { BlockedPair, QueueChange } from "./views";
import { waitingSince } from "./waiting-since";

type Reason = BlockedPair["reasons"][number];

export interface AwayNow extends ReasonedChange {
  readonly shown: QueueChange;
}

/** Only pairs that are held by something; what simply waits for its turn is not blocked. `away` counts at `now` only. */
export function blockedPairs(
  pairs: readonly PairInQueue[],
  away: readonly AwayNow[],
  floor: FloorCatalog,
  now: Date,
): readonly BlockedPair[] {
  return pairs.flatMap((pair): readonly BlockedPair[] => {
    const reasons = reasonsOf(pair, away, floor, now);
    if (reasons.length === 0) return [];
    return [
      {
        pairId: pair.id,
        serial: pair.serial,
        skierFirstName: firstName(pair.skierName),
        reasons,
      },
    ];
  });
}

function reasonsOf(pair: PairInQueue, away: readonly AwayNow[], floor: FloorCatalog, now: Date): readonly Reason[] {
  const customer = [...openConditions(pair), ...openForPrint(pair)].map(
    (condition): Reason => ({
      kind: "customer",
      condition,
      isAsked: condition === "proof" && pair.proofState === "issued",
      since: waitingSince(pair, condition).toISOString(),
    }),
  );
  const holds = pair.holds.map(
    (hold): Reason => ({
      kind: hold.reason,
      ...at(hold.station),
      expectedOn: hold.expectedOn,
      note: hold.note,
      since: hold.madeAt.toISOString(),
    }),
  );
  const { slotLostAt } = pair.order;
  const slot: readonly Reason[] = slotLostAt === null ? [] : [{ kind: "no-slot", since: slotLostAt.toISOString() }];
  const known = [...slot, ...customer, ...holds];
  return known.length > 0
    ? [...known, ...awayFor(pair, away, floor)]
    : [...awayFor(pair, away, floor), ...held(pair, now)];
}

/** A ready visit that rests, or none ready while something before it has not been opened. */
function held(pair: PairInQueue, now: Date): readonly Reason[] {
  const visits = latestVisits(pair.operations);
  if (visits.some(({ state }) => state === "running")) return [];
  const ready = visits.filter(({ state }) => state === "ready");
  const rests = ready.map(({ station }) => ({ station, until: notBefore(station, pair) }));
  if (rests.some(({ until }) => until === null || until <= now)) return [];
  const first = [...rests].sort((a, b) => Number(a.until) - Number(b.until))[0];
  const since = lastFinished(visits);
  if (first?.until != null) return [{ kind: "rest", ...at(first.station), until: first.until.toISOString(), since }];
  const next = visits.find(({ state }) => state === "blocked");
  if (next === undefined) return [];
  const open = visits.filter(({ state }) => state !== "done").map(({ station }) => station);
  const before = mustPrecede(next.station).find((station) => open.includes(station)) ?? next.station;
  return [{ kind: "before", ...at(before), since }];
}

/** Since then nobody could work on it: when the last work on it ended. */
function lastFinished(visits: readonly { readonly finishedAt: Date | null }[]): string | null {
  const ends = visits.flatMap(({ finishedAt }) => (finishedAt === null ? [] : [finishedAt.getTime()]));
  return ends.length === 0 ? null : new Date(Math.max(...ends)).toISOString();
}

function awayFor(pair: PairInQueue, away: readonly AwayNow[], floor: FloorCatalog): readonly Reason[] {
  const next = latestVisits(pair.operations).filter(({ state }) => state === "ready");
  return next.flatMap(({ station }) =>
    away.flatMap((each): readonly Reason[] =>
      stops(each, station, pair, away, floor)
        ? [{ kind: "away", ...at(station), what: each.shown.what ?? "", until: each.shown.to, since: each.shown.from }]
        : [],
    ),
  );
}

const at = (station: StationId) => ({ station, stationNumber: stationNumber(station) });

function uses(floor: FloorCatalog, station: StationId, tool: StationTool): boolean {
  return findStation(floor, station)?.uses.includes(tool) ?? false;
}

/** True when the change leaves nothing and nobody to do the pair's work at the station. */
function stops(
  { change }: AwayNow,
  station: StationId,
  pair: PairInQueue,
  away: readonly AwayNow[],
  floor: FloorCatalog,
): boolean {
  switch (change.kind) {
    case "press-down": {
      const down = new Set(away.flatMap((each) => (each.change.kind === "press-down" ? [each.change.press] : [])));
      const added = away.flatMap((each) => (each.change.kind === "extra-press" ? [each.change.press] : []));
      // Lay-up is not begun without a press to close.
      return uses(floor, station, "mould") && [...floor.presses, ...added].every(({ id }) => down.has(id));
    }
    case "station-down":
      return change.station === station;
    case "mould-out":
      return change.mould === pair.mould && uses(floor, station, "mould");
    case "person-away": {
      const gone = new Set(away.flatMap((each) => (each.change.kind === "person-away" ? [each.change.person] : [])));
      const able = floor.crew.filter(({ stations }) => stations.includes(station));
      const needed = findStation(floor, station)?.crewNeeded ?? 1;
      return able.some(({ id }) => id === change.person) && able.filter(({ id }) => !gone.has(id)).length < needed;
    }
    default:
      return false;
  }
}
