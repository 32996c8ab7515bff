/** What is different about the floor, for the board: the engine's change beside its name and its reason. */

import type { FloorChangeRecord } from "#data/floor-changes";
import type { FloorChange } from "#engine/routing";
import { floorCatalog } from "#shop/floor/recipe";
import { stationNumber, stationTitle } from "#shop/floor/stations";
import { floorChangeOf } from "#shop/queue/situation";
import type { AwayNow } from "./blocked";
import type { QueueChange } from "./views";

export function changesOf(records: readonly FloorChangeRecord[], timeZone: string): readonly AwayNow[] {
  return records.map((record) => {
    const change = floorChangeOf(record, timeZone);
    return {
      change,
      reason: record.reason,
      shown: {
        kind: change.kind,
        what: nameOf(change),
        from: record.fromAt?.toISOString() ?? null,
        to: record.toAt?.toISOString() ?? null,
        reason: record.reason,
      },
    };
  });
}

/** Begun and not over. */
export function isInForce({ from, to }: QueueChange, now: Date): boolean {
  const at = now.toISOString();
  return (from === null || from <= at) && (to === null || to > at);
}

function nameOf(change: FloorChange): string | null {
  const floor = floorCatalog();
  switch (change.kind) {
    case "press-down":
      return floor.presses.find(({ id }) => id === change.press)?.label ?? change.press;
    case "person-away":
      return floor.crew.find(({ id }) => id === change.person)?.label ?? change.person;
    case "station-down":
      return stationTitle(change.station);
    case "mould-out":
      return change.mould;
    case "extra-press":
      return change.press.label;
    case "extra-person":
      return change.person.label;
    case "overtime":
      return (
        [
          ...(change.stations ?? []).map(stationNumber),
          ...(change.daily === undefined ? [] : [timesOf(change.daily)]),
        ].join(", ") || null
      );
    default:
      return null;
  }
}

/** "16:30–18:30": of every working day in between. */
function timesOf({ fromMinute, toMinute }: { readonly fromMinute: number; readonly toMinute: number }): string {
  const time = (minute: number) =>
    `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
  return `${time(fromMinute)}–${time(toMinute)}`;
}
