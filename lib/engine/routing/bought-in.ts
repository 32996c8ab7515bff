/**
 * What is bought for one pair when its clock starts, because the shop keeps none: the first station that needs it waits until
 * it is here. A lead of two working days lets work begin on the second working day after it was ordered, as the supplier says
 * it; that suppliers are late is among the shared shocks.
 */
import { placeOf, type StationId, stationTaking } from "#engine/floor";
import type { IsoDate } from "#engine/units";
import type { FloorCatalog } from "./floor";
import type { WaitingOn } from "./types";
import { addWorkingDays } from "./working-days";

interface BoughtPart {
  /** Touch minutes it adds: the first of these stations needs it. */
  readonly extraMinutes: readonly { readonly station: StationId; readonly minutes: number }[];
  /** Working days from the order to the shop's door; 0: in stock. */
  readonly leadDays: number;
}

/** The wait for one part, null when it is in stock. */
export function waitForBought(part: BoughtPart, orderedOn: IsoDate, floor: FloorCatalog): WaitingOn | null {
  if (part.leadDays === 0) return null;
  const places = part.extraMinutes.map(({ station }) => placeOf(floor, station));
  // By the time bought parts are taken for the kit, every one is there.
  const first = floor.stations[Math.min(...places)] ?? stationTaking(floor, "parts");
  const expectedDate = addWorkingDays(floor.hours, orderedOn, part.leadDays);
  return { reason: "material", holdsUpStation: first.id, expectedDate };
}
