/** Where a minute of a day lies on the board: working hours side by side, one scale for all days. */
import type { BoardDay } from "#services";

export const pixelsPerMinute = 0.7;
/** A closed weekday has no hours; it stays as a column just wide enough for its word. */
const closedWidth = 64;
/** Behind the last day, for a serial that stands beside its bar. */
const labelRoom = 48;

export interface Axis {
  readonly width: number;
  readonly columns: readonly { readonly day: BoardDay; readonly left: number; readonly width: number }[];
}

export function axisOf(days: readonly BoardDay[]): Axis {
  let left = 0;
  const columns = days.map((day) => {
    const minutes = day.axis.toMinute - day.axis.fromMinute;
    const column = { day, left, width: minutes > 0 ? minutes * pixelsPerMinute : closedWidth };
    left += column.width;
    return column;
  });
  return { width: left + labelRoom, columns };
}

/** Pixels from the left edge, or null on a day that is not shown. */
export function placeOf(axis: Axis, date: string, minute: number): number | null {
  const column = axis.columns.find(({ day }) => day.date === date);
  return column === undefined ? null : column.left + (minute - column.day.axis.fromMinute) * pixelsPerMinute;
}
