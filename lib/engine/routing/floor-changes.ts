/**
 * What makes the floor different from its settings for a while, or from a day on: a press that is down, a person who is ill,
 * a closure, overtime, a second press. The same list serves what happened, what is planned, and what is only asked about.
 */
import type { StationId } from "#engine/floor";
import type { MinuteWindow } from "#engine/schedule";
import type { CrewMember, FloorCatalog, Press, ShopHours } from "./floor";
import { dateOfDay, minutesPerDay } from "./shop-time";
import type { ShopMinute } from "./types";
import { isWorkingDay } from "./working-days";

/** Half-open, shop minutes. */
interface ForAWhile {
  readonly fromMinute: ShopMinute;
  readonly toMinute: ShopMinute;
}

/** `toMinute` null: for good. */
interface FromADayOn {
  readonly fromMinute: ShopMinute;
  readonly toMinute: ShopMinute | null;
}

export type FloorChange =
  | ({ readonly kind: "press-down"; readonly press: string } & ForAWhile)
  | ({ readonly kind: "station-down"; readonly station: StationId } & ForAWhile)
  | ({ readonly kind: "person-away"; readonly person: string } & ForAWhile)
  | ({ readonly kind: "mould-out"; readonly mould: string } & ForAWhile)
  | ({ readonly kind: "shop-closed" } & ForAWhile)
  /**
   * Extra open time. With `stations`, for the work there only: an evening of lay-up and press whose pair then cures overnight
   * is overtime for those two stations. With `daily`, only these minutes of every working day in between: ten evenings are
   * one change.
   */
  | ({
      readonly kind: "overtime";
      readonly stations?: readonly StationId[];
      readonly daily?: { readonly fromMinute: number; readonly toMinute: number };
    } & ForAWhile)
  | ({ readonly kind: "extra-press"; readonly press: Press } & FromADayOn)
  | ({ readonly kind: "extra-person"; readonly person: CrewMember } & FromADayOn)
  /** Every rework loop's chance times this. */
  | { readonly kind: "rework-factor"; readonly factor: number };

export type FloorChangeKind = FloorChange["kind"];

const longestChance = 0.95;

/** The floor with the presses and people that are added at any time and the rework as it is expected. */
export function floorWithChanges(floor: FloorCatalog, changes: readonly FloorChange[]): FloorCatalog {
  if (changes.length === 0) return floor;
  const presses = changes.flatMap((change) => (change.kind === "extra-press" ? [change.press] : []));
  const crew = changes.flatMap((change) => (change.kind === "extra-person" ? [change.person] : []));
  const factor = changes.reduce((all, change) => (change.kind === "rework-factor" ? all * change.factor : all), 1);
  const rework = floor.rework.map((loop) => ({
    ...loop,
    probability: Math.min(longestChance, loop.probability * factor),
  }));
  return { ...floor, presses: [...floor.presses, ...presses], crew: [...floor.crew, ...crew], rework };
}

/** When a press, person, station or mould is not there, in minutes from `originMinute`, ascending and apart. */
export function unavailableWindows(
  changes: readonly FloorChange[],
  who: {
    readonly press?: string;
    readonly person?: string;
    readonly station?: StationId;
    readonly mould?: string;
  },
  originMinute: ShopMinute,
): readonly MinuteWindow[] {
  const windows = changes.flatMap((change): readonly MinuteWindow[] => {
    switch (change.kind) {
      case "press-down":
        return change.press === who.press ? [[change.fromMinute, change.toMinute]] : [];
      case "station-down":
        return change.station === who.station ? [[change.fromMinute, change.toMinute]] : [];
      case "person-away":
        return change.person === who.person ? [[change.fromMinute, change.toMinute]] : [];
      case "mould-out":
        return change.mould === who.mould ? [[change.fromMinute, change.toMinute]] : [];
      case "extra-press":
        return change.press.id === who.press ? outside(change, originMinute) : [];
      case "extra-person":
        return change.person.id === who.person ? outside(change, originMinute) : [];
      default:
        return [];
    }
  });
  return joined(windows.map(([from, to]) => [Math.max(0, from - originMinute), to - originMinute] as const));
}

/** Ten years: beyond every plan, short of the calendars' own end. */
const longAway = 10 * 366 * 1440;

function outside({ fromMinute, toMinute }: FromADayOn, originMinute: ShopMinute): readonly MinuteWindow[] {
  const before: MinuteWindow = [originMinute, fromMinute];
  return toMinute === null ? [before] : [before, [toMinute, originMinute + longAway]];
}

function joined(windows: readonly MinuteWindow[]): readonly MinuteWindow[] {
  const out: [number, number][] = [];
  for (const [from, to] of [...windows].sort((a, b) => a[0] - b[0])) {
    if (to <= from) continue;
    const last = out.at(-1);
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], to);
    else out.push([from, to]);
  }
  return out;
}

/** Changes of which every one is a single stretch of time: a series of evenings becomes an evening on each working day. */
export function singleChanges(changes: readonly FloorChange[], hours: ShopHours): readonly FloorChange[] {
  return changes.flatMap((change): readonly FloorChange[] => {
    if (change.kind !== "overtime" || change.daily === undefined) return [change];
    const { daily, ...once } = change;
    const first = Math.floor(change.fromMinute / minutesPerDay);
    const last = Math.floor((change.toMinute - 1) / minutesPerDay);
    const days = Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => first + index);
    return days
      .filter((day) => isWorkingDay(hours, dateOfDay(day)))
      .map((day) => ({
        ...once,
        fromMinute: Math.max(change.fromMinute, day * minutesPerDay + daily.fromMinute),
        toMinute: Math.min(change.toMinute, day * minutesPerDay + daily.toMinute),
      }))
      .filter(({ fromMinute, toMinute }) => fromMinute < toMinute);
  });
}

/** Closures and extra hours of the whole shop, or with `station` also the overtime of that station. */
export function hoursChanges(
  changes: readonly FloorChange[],
  originMinute: ShopMinute,
  station: StationId | "any" | null = null,
): { readonly closures: readonly MinuteWindow[]; readonly extraWindows: readonly MinuteWindow[] } {
  const closures: MinuteWindow[] = [];
  const extra: MinuteWindow[] = [];
  for (const change of changes) {
    if (change.kind === "shop-closed")
      closures.push([change.fromMinute - originMinute, change.toMinute - originMinute]);
    if (change.kind !== "overtime") continue;
    const isMine =
      change.stations === undefined || station === "any" || (station !== null && change.stations.includes(station));
    if (isMine) extra.push([change.fromMinute - originMinute, change.toMinute - originMinute]);
  }
  return { closures: joined(closures), extraWindows: joined(extra) };
}

/** Stations that have overtime of their own. */
export function stationsWithOvertime(changes: readonly FloorChange[]): ReadonlySet<StationId> {
  return new Set(changes.flatMap((change) => (change.kind === "overtime" ? (change.stations ?? []) : [])));
}
