/** Which visits tell how long work takes: one-second ticks and forgotten finishes tell nothing. */
import { type Station, stationOf } from "#engine/floor";
import { portableExp, portableLog } from "#engine/math";
import { dateOfShopMinute, type FloorCatalog, minutesPerDay, shopCalendar } from "#engine/routing";
import { type WorkCalendar, workCalendar, workMinutesBefore } from "#engine/schedule";
import type { FloorHistory, FloorLearningSettings, FloorVisit, LeftOutVisit } from "./types";

export interface CountedVisit {
  readonly visit: FloorVisit;
  /** Touch minutes of the station itself for a whole pair: without what options added, all people together. */
  readonly touchMinutes: number;
}

export interface SortedVisits {
  readonly counted: readonly CountedVisit[];
  readonly leftOut: readonly LeftOutVisit[];
}

/** The shop's hours over the time looked at, closures and overtime in them; minutes from `originMinute`. */
export interface FloorClock {
  readonly calendar: WorkCalendar;
  readonly originMinute: number;
}

export function floorClock(floor: FloorCatalog, history: FloorHistory): FloorClock {
  const firstDay = Math.floor(history.fromMinute / minutesPerDay);
  const calendar = workCalendar([shopCalendar(floor, firstDay, history.changes, "any")]);
  return { calendar, originMinute: firstDay * minutesPerDay };
}

/** A station of one-second ticks has no pace. */
const leastPace = 1e-3;

interface Looked {
  readonly visit: FloorVisit;
  readonly station: Station;
  readonly endMinute: number;
  /** Working minutes from start to end, the unattended press cycle left out. */
  readonly workMinutes: number;
  readonly isOvernight: boolean;
}

/** Sorts the visits of stations that the floor knows. */
export function sortVisits(
  floor: FloorCatalog,
  history: FloorHistory,
  settings: FloorLearningSettings,
  clock: FloorClock,
): SortedVisits {
  const looked = history.visits
    .filter(({ startMinute }) => startMinute >= clock.originMinute)
    .flatMap((visit) => look(floor, history, clock, visit));
  const paces = paceOf(looked, settings.prior.visits);
  const isForgotten = (each: Looked) => {
    const most = mostMinutes(each);
    const pace = Math.max(1, paces.get(each.station.id) ?? 1);
    if (each.workMinutes > settings.forgottenTimesHigh * most * pace) return true;
    return each.isOvernight && each.workMinutes > settings.overnightTimesHigh * most * pace;
  };
  const isTooShort = (each: Looked) => each.workMinutes < settings.tooShortShareOfLow * leastMinutes(each);
  const left = (each: Looked, why: LeftOutVisit["why"]): LeftOutVisit => {
    return { visit: each.visit, why, workMinutes: each.workMinutes };
  };
  const forgotten = looked.filter(isForgotten);
  const closed = looked.filter((each) => each.visit.endMinute !== null);
  const tooShort = closed.filter(isTooShort);
  const honest = closed.filter((each) => !isForgotten(each) && !isTooShort(each));
  const shared = batchMinutes(honest, clock);
  return {
    counted: honest.flatMap((each, index): readonly CountedVisit[] => {
      const { crewNeeded } = each.station;
      const { share, extraMinutes } = each.visit;
      const touchMinutes = ((shared[index] as number) * crewNeeded) / share - extraMinutes;
      return touchMinutes > 0 ? [{ visit: each.visit, touchMinutes }] : [];
    }),
    leftOut: [
      ...forgotten.map((each) => left(each, "forgotten")),
      ...tooShort.filter((each) => !isForgotten(each)).map((each) => left(each, "too-short")),
    ].sort((a, b) => a.visit.startMinute - b.visit.startMinute),
  };
}

function look(floor: FloorCatalog, history: FloorHistory, clock: FloorClock, visit: FloorVisit): readonly Looked[] {
  if (!floor.stations.some(({ id }) => id === visit.station)) return [];
  const station = stationOf(floor, visit.station);
  const endMinute = visit.endMinute ?? history.toMinute;
  const isPress = station.uses.includes("press");
  const isOvernight = dateOfShopMinute(visit.startMinute) !== dateOfShopMinute(endMinute);
  // Who begins outside the shop's hours works outside them.
  const isAfterHours = !isOvernight && workBetween(clock, visit.startMinute, visit.startMinute + 1) === 0;
  const byTheClock = isPress || isAfterHours;
  const worked = byTheClock ? endMinute - visit.startMinute : workBetween(clock, visit.startMinute, endMinute);
  const { heatUpMinutes, dwellMinutes, coolMinutes, unloadMinutes } = floor.pressProgramme;
  const shut = isPress ? heatUpMinutes + dwellMinutes + coolMinutes + unloadMinutes : 0;
  return [{ visit, station, endMinute, workMinutes: Math.max(0, worked - shut), isOvernight }];
}

/** Working minutes between two shop minutes. */
export function workBetween({ calendar, originMinute }: FloorClock, from: number, to: number): number {
  return to <= from
    ? 0
    : workMinutesBefore(calendar, to - originMinute) - workMinutesBefore(calendar, from - originMinute);
}

const elapsed = (minutes: number, { station, visit }: Looked) =>
  ((minutes + visit.extraMinutes) * visit.share) / station.crewNeeded;
const leastMinutes = (each: Looked) => elapsed(each.station.minutes.low, each);
const mostMinutes = (each: Looked) => elapsed(each.station.minutes.high, each);

/**
 * How many times as long as usual each station takes: median of the visits that ended on the day they began, its logarithm
 * shrunk as the minutes are, so that the few visits of a new station do not excuse one another.
 */
function paceOf(looked: readonly Looked[], weight: number): ReadonlyMap<string, number> {
  const ratios = new Map<string, number[]>();
  for (const each of looked) {
    if (each.visit.endMinute === null || each.isOvernight) continue;
    const usual = elapsed(each.station.minutes.typ, each);
    ratios.set(each.station.id, [...(ratios.get(each.station.id) ?? []), each.workMinutes / usual]);
  }
  return new Map(
    [...ratios].map(([station, values]) => {
      const median = Math.max(leastPace, medianOf(values));
      return [station, portableExp((values.length * portableLog(median)) / (values.length + weight))] as const;
    }),
  );
}

/** @throws RangeError without a value */
export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted[Math.floor((sorted.length - 1) / 2)];
  const next = sorted[Math.floor(sorted.length / 2)];
  if (middle === undefined || next === undefined) throw new RangeError("medianOf: 0 values");
  return (middle + next) / 2;
}

/** What one person has open at one station at the same time is a batch: each has its share of that time. */
function batchMinutes(honest: readonly Looked[], clock: FloorClock): readonly number[] {
  const minutes = honest.map(({ workMinutes }) => workMinutes);
  const groups = new Map<string, number[]>();
  honest.forEach(({ visit, station }, index) => {
    if (visit.by === null || station.uses.includes("press")) return;
    const key = `${station.id} ${visit.by}`;
    groups.set(key, [...(groups.get(key) ?? []), index]);
  });
  for (const group of groups.values()) {
    const sorted = group.sort(
      (a, b) => (honest[a] as Looked).visit.startMinute - (honest[b] as Looked).visit.startMinute,
    );
    for (let at = 0; at < sorted.length; ) {
      let until = (honest[sorted[at] as number] as Looked).endMinute;
      let next = at + 1;
      for (; next < sorted.length; next++) {
        const { visit, endMinute } = honest[sorted[next] as number] as Looked;
        if (visit.startMinute >= until) break;
        until = Math.max(until, endMinute);
      }
      if (next - at > 1) shareOut(sorted.slice(at, next), honest, clock, minutes);
      at = next;
    }
  }
  return minutes;
}

/** Between two ticks the time is shared alike among what is open. */
function shareOut(batch: readonly number[], honest: readonly Looked[], clock: FloorClock, minutes: number[]): void {
  const of = (index: number) => honest[index] as Looked;
  const ticks = [...new Set(batch.flatMap((index) => [of(index).visit.startMinute, of(index).endMinute]))];
  ticks.sort((a, b) => a - b);
  for (const index of batch) minutes[index] = 0;
  for (const [at, from] of ticks.entries()) {
    const to = ticks[at + 1];
    if (to === undefined) break;
    const open = batch.filter((index) => of(index).visit.startMinute <= from && of(index).endMinute >= to);
    const each = workBetween(clock, from, to) / Math.max(1, open.length);
    for (const index of open) minutes[index] = (minutes[index] as number) + each;
  }
}
