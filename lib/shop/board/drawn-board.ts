/** Everything the drawn board needs, from the plan and the floor as it is today. */
import { dateOfShopMinute, dayIndex, minutesPerDay, singleChanges } from "#engine/routing";
import type { IsoDate } from "#engine/units";
import { floorCatalog } from "#shop/floor/recipe";
import { shopMinuteOf } from "#shop/time/shop-time";
import type { AwayNow } from "./blocked";
import { boardDays, boardRows, type PlannedVisit } from "./station-board";
import type { StationBoard } from "./views";

export interface BoardInput {
  readonly now: Date;
  readonly today: IsoDate;
  /** Calendar days from today. */
  readonly days: number;
  readonly cells: readonly PlannedVisit[];
  readonly changes: readonly AwayNow[];
}

export function drawnBoard({ now, today, days, cells, changes }: BoardInput): StationBoard {
  const floor = floorCatalog();
  const single = changes.flatMap(({ change, reason }) =>
    singleChanges([change], floor.hours).map((each) => ({ change: each, reason })),
  );
  const shown = boardDays(today, days, floor, single);
  const minute = shopMinuteOf(now, floor.hours.timeZone);
  const date = dateOfShopMinute(minute);
  const ofDay = minute - dayIndex(date) * minutesPerDay;
  const current = shown.find((day) => day.date === date)?.axis;
  const isOnAxis = current !== undefined && ofDay >= current.fromMinute && ofDay < current.toMinute;
  return {
    days: shown,
    rows: boardRows(
      floorCatalog().stations.map(({ id }) => id),
      cells,
      shown,
      single,
    ),
    now: isOnAxis ? { date, minute: ofDay } : null,
    changes: changes.map((each) => each.shown),
  };
}
