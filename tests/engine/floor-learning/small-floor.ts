/** The demo's floor and settings, and visits written by hand. Monday 7 June 2027 is an ordinary week of the demo's hours. */
import { loadCatalog } from "#catalog";
import type { FloorHistory, FloorVisit } from "#engine/floor-learning";
import { shopMinute } from "#engine/routing";
import { isoDate } from "#engine/units";

const catalog = loadCatalog();
export const { floor, floorLearning: settings } = catalog;

/** "2027-06-07 08:30" as a shop minute. */
export function at(text: string): number {
  const [day = "", time = ""] = text.split(" ");
  const [hours = 0, minutes = 0] = time.split(":").map(Number);
  return shopMinute(isoDate(day), hours * 60 + minutes);
}

export function visit(station: string, from: string, to: string | null, more: Partial<FloorVisit> = {}): FloorVisit {
  const endMinute = to === null ? null : at(to);
  return { pair: "a", station, startMinute: at(from), endMinute, by: null, extraMinutes: 0, share: 1, ...more };
}

export function history(visits: readonly FloorVisit[], more: Partial<FloorHistory> = {}): FloorHistory {
  return {
    fromMinute: at("2027-06-07 00:00"),
    toMinute: at("2027-07-03 00:00"),
    visits,
    redos: [],
    changes: [],
    plannedShut: [],
    ...more,
  };
}
