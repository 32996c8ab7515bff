/** How the promises of some orders were kept: those whose day has passed, ready or not. */
import { binomialBand } from "#engine/math";
import { type FloorCatalog, workingDaysBetween } from "#engine/routing";
import type { IsoDate } from "#engine/units";
import type { KeptOrder, KeptPeriod, KeptShare } from "./views";

const levels = [
  ["p50", 0.5],
  ["p80", 0.8],
  ["p90", 0.9],
] as const;
const confidence = 0.95;

/** @param month null: all of them */
export function keptPeriod(
  month: string | null,
  orders: readonly KeptOrder[],
  today: IsoDate,
  hours: FloorCatalog["hours"],
): KeptPeriod {
  const share = (day: (order: KeptOrder) => IsoDate | null) => {
    const due = orders.filter((order) => (day(order) ?? today) < today);
    const kept = due.filter((order) => order.readyOn !== null && order.readyOn <= `${day(order)}`);
    return { orders: due.length, kept: kept.length };
  };
  /** What was told with the days that have passed; the level where no share was. */
  const told = (level: KeptShare["level"], nominal: number) => {
    const due = orders.filter((order) => (order[level] ?? today) < today);
    const above = due.reduce((sum, order) => sum + ((order.shares?.[level] ?? nominal) - nominal), 0);
    return nominal + above / Math.max(1, due.length);
  };
  const due = orders.filter(({ p90 }) => p90 < today);
  // What is not ready yet is late by so much at least.
  const lateness = due.map(({ readyOn, p90 }) => workingDaysBetween(hours, p90, readyOn ?? today));
  return {
    month,
    shares: levels.map(([level, nominal]): KeptShare => {
      const counted = share((order) => order[level]);
      const expected = told(level, nominal);
      return { level, expected, ...counted, band: binomialBand(counted.orders, expected, confidence) };
    }),
    onTime: share(({ promisedOn }) => promisedOn),
    meanLateness: due.length === 0 ? null : lateness.reduce((sum, days) => sum + days, 0) / due.length,
  };
}
