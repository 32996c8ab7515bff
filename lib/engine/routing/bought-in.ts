/**
 * What is bought for one pair when its clock starts, because the shop keeps none: the first station that needs it waits until
 * it is here. A lead of two working days lets work begin on the second working day after it was ordered, as the supplier says
 * it; that suppliers are late is among the shared shocks.
 */
import type { IsoDate } from "#engine/units";
import type { ShopHours } from "./floor";
import type { WaitingOn } from "./types";
import { addWorkingDays } from "./working-days";

/** Where cloths are cut and the kit is put together: by then every part is there. */
const kitStation = 9;

interface BoughtPart {
  /** Touch minutes it adds: the first of these stations needs it. */
  readonly extraMinutes: readonly { readonly station: number; readonly minutes: number }[];
  /** Working days from the order to the shop's door; 0: in stock. */
  readonly leadDays: number;
}

/** The wait for one part, null when it is in stock. */
export function waitForBought(part: BoughtPart, orderedOn: IsoDate, hours: ShopHours): WaitingOn | null {
  if (part.leadDays === 0) return null;
  const stations = part.extraMinutes.map(({ station }) => station);
  const holdsUpStation = stations.length === 0 ? kitStation : Math.min(...stations);
  return { reason: "material", holdsUpStation, expectedDate: addWorkingDays(hours, orderedOn, part.leadDays) };
}
