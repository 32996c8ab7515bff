/** The board as it is drawn: days of working hours side by side, bars on lines, what is away. Pure; shop minutes throughout. */

import type { StationId } from "#engine/floor";
import {
  dateOfDay,
  dayIndex,
  type FloorCatalog,
  type FloorChange,
  minutesPerDay,
  type PromiseStanding,
  type ShopMinute,
  weekdayOf,
} from "#engine/routing";
import type { IsoDate } from "#engine/units";
import { stationIdFor } from "#shop/floor/stations";
import type { BarPiece, BoardDay, BoardRow, DaySpan, QueueBar, QueueCell } from "./views";

export interface ReasonedChange {
  readonly change: FloorChange;
  readonly reason: string;
}

/** One planned visit, as {@link boardRows} places it. */
export interface PlannedVisit {
  readonly cell: QueueCell;
  readonly standing: PromiseStanding;
  readonly startMinute: ShopMinute;
  readonly workEndMinute: ShopMinute;
  readonly freeMinute: ShopMinute;
}

/** So much of the axis a serial takes in print: beside a shorter bar its line is kept free for that long. */
const labelMinutes = 66;

/** Calendar days from `first` on without weekends; a closed weekday stays, with the reason. */
export function boardDays(
  first: IsoDate,
  count: number,
  floor: FloorCatalog,
  changes: readonly ReasonedChange[],
): readonly BoardDay[] {
  const from = dayIndex(first);
  return Array.from({ length: count }, (_, index) => boardDay(from + index, floor, changes)).filter(
    (day) => day.open.length > 0 || day.closedBecause !== null,
  );
}

function boardDay(day: number, { hours }: FloorCatalog, changes: readonly ReasonedChange[]): BoardDay {
  const date = dateOfDay(day);
  const isWeekday = hours.workingWeekdays.includes(weekdayOf(day));
  const holiday = hours.closedDays.find((closed) => closed.date === date);
  const closures = changes.flatMap(({ change, reason }) => {
    const span = change.kind === "shop-closed" ? spanOn(day, change) : null;
    return span === null ? [] : [{ span, reason }];
  });
  const overtime = changes.flatMap(({ change }) => {
    const span = change.kind === "overtime" ? spanOn(day, change) : null;
    return span === null ? [] : [span];
  });
  const usual = isWeekday && holiday === undefined ? hours.windows : [];
  const kept = closures.reduce<readonly DaySpan[]>((spans, { span }) => without(spans, span), usual);
  const open = joined([...kept, ...overtime]);
  const closedBecause =
    open.length > 0 || !isWeekday ? null : (holiday?.label ?? closures.map(({ reason }) => reason).join("; "));
  const axis = { fromMinute: open[0]?.fromMinute ?? 0, toMinute: open.at(-1)?.toMinute ?? 0 };
  return { date, axis, open, overtime, closedBecause };
}

/** The part of a stretch of shop minutes that falls into a day, in minutes of that day; null when there is none. */
function spanOn(
  day: number,
  { fromMinute, toMinute }: { readonly fromMinute: ShopMinute; readonly toMinute: ShopMinute | null },
): DaySpan | null {
  const from = Math.max(0, fromMinute - day * minutesPerDay);
  const to = Math.min(minutesPerDay, (toMinute ?? Number.MAX_SAFE_INTEGER) - day * minutesPerDay);
  return to > from ? { fromMinute: from, toMinute: to } : null;
}

function without(spans: readonly DaySpan[], cut: DaySpan): readonly DaySpan[] {
  return spans.flatMap(({ fromMinute, toMinute }) =>
    [
      { fromMinute, toMinute: Math.min(toMinute, cut.fromMinute) },
      { fromMinute: Math.max(fromMinute, cut.toMinute), toMinute },
    ].filter((span) => span.toMinute > span.fromMinute),
  );
}

function joined(spans: readonly DaySpan[]): readonly DaySpan[] {
  const out: DaySpan[] = [];
  for (const span of [...spans].sort((a, b) => a.fromMinute - b.fromMinute)) {
    const last = out.at(-1);
    if (last === undefined || span.fromMinute > last.toMinute) out.push(span);
    else out[out.length - 1] = { ...last, toMinute: Math.max(last.toMinute, span.toMinute) };
  }
  return out;
}

/** Every station with its bars on as few lines as they need. */
export function boardRows(
  stations: readonly StationId[],
  visits: readonly PlannedVisit[],
  days: readonly BoardDay[],
  changes: readonly ReasonedChange[],
): readonly BoardRow[] {
  return stations.map((station) => {
    const bars = laid(
      visits.filter(({ cell }) => cell.station === station),
      days,
      changes,
    );
    return {
      station,
      lanes: 1 + bars.reduce((most, { lane }) => Math.max(most, lane), 0),
      bars,
      down: changes.flatMap(({ change }) => (isDown(change, station) ? pieces(days, change, (day) => [day.axis]) : [])),
    };
  });
}

function isDown(
  change: FloorChange,
  station: StationId,
): change is Extract<FloorChange, { kind: "press-down" | "station-down" }> {
  if (change.kind === "press-down") return station === stationIdFor("press");
  return change.kind === "station-down" && change.station === station;
}

function laid(
  visits: readonly PlannedVisit[],
  days: readonly BoardDay[],
  changes: readonly ReasonedChange[],
): readonly QueueBar[] {
  const ends: number[] = [];
  const bars: QueueBar[] = [];
  for (const visit of [...visits].sort(
    (a, b) => a.startMinute - b.startMinute || a.cell.serial.localeCompare(b.cell.serial),
  )) {
    const { startMinute, workEndMinute, freeMinute, cell, standing } = visit;
    const attended = pieces(days, { fromMinute: startMinute, toMinute: workEndMinute }, (day) =>
      openAt(cell.station, day, changes),
    );
    const unattended = pieces(days, { fromMinute: workEndMinute, toMinute: freeMinute }, (day) => [day.axis]);
    const first = attended[0] ?? unattended[0];
    if (first === undefined) continue;
    const best = widest(attended) ?? first;
    const isBeside = minutesOf(best) < labelMinutes;
    // Beside: behind the last piece of its day, for lunch may cut a short bar in two.
    const piece = isBeside ? (attended.findLast(({ date }) => date === best.date) ?? best) : best;
    const start = onAxis(days, first.date, first.fromMinute);
    // A press is taken until it is opened; a rest leaves its bench to the next pair, which lies over the hatching.
    const last = (cell.station === stationIdFor("press") ? unattended.at(-1) : undefined) ?? attended.at(-1) ?? first;
    const labelled = onAxis(days, piece.date, piece.toMinute) + (isBeside ? labelMinutes : 0);
    const end = Math.max(labelled, onAxis(days, last.date, last.toMinute));
    const free = ends.findIndex((taken) => taken <= start);
    const lane = free < 0 ? ends.length : free;
    ends[lane] = end;
    bars.push({ ...cell, lane, standing, attended, unattended, label: { piece, isBeside } });
  }
  return bars;
}

const minutesOf = ({ fromMinute, toMinute }: BarPiece) => toMinute - fromMinute;

function widest(all: readonly BarPiece[]): BarPiece | undefined {
  return all.reduce<BarPiece | undefined>(
    (best, each) => (best === undefined || minutesOf(each) > minutesOf(best) ? each : best),
    undefined,
  );
}

/** Overtime for some stations only is no time of the others. */
function openAt(station: StationId, day: BoardDay, changes: readonly ReasonedChange[]): readonly DaySpan[] {
  const index = dayIndex(day.date);
  return changes.reduce<readonly DaySpan[]>((open, { change }) => {
    if (change.kind !== "overtime" || change.stations === undefined || change.stations.includes(station)) return open;
    const span = spanOn(index, change);
    return span === null ? open : without(open, span);
  }, day.open);
}

function pieces(
  days: readonly BoardDay[],
  stretch: { readonly fromMinute: ShopMinute; readonly toMinute: ShopMinute },
  spansOf: (day: BoardDay) => readonly DaySpan[],
): readonly BarPiece[] {
  return days.flatMap((day) => {
    const own = spanOn(dayIndex(day.date), stretch);
    if (own === null) return [];
    return spansOf(day).flatMap((span): readonly BarPiece[] => {
      const fromMinute = Math.max(own.fromMinute, span.fromMinute);
      const toMinute = Math.min(own.toMinute, span.toMinute);
      return toMinute > fromMinute ? [{ date: day.date, fromMinute, toMinute }] : [];
    });
  });
}

/** Minutes of axis from the board's left edge. */
function onAxis(days: readonly BoardDay[], date: IsoDate, minute: number): number {
  let before = 0;
  for (const { date: own, axis } of days) {
    if (own === date) return before + minute - axis.fromMinute;
    before += axis.toMinute - axis.fromMinute;
  }
  return before;
}
