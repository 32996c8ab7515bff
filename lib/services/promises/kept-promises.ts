/** How promises were kept, from the events alone: what was told when the clock started, and when the order was ready. */
import { permit } from "../../auth";
import type { EventRecord } from "../../data/events";
import { orderEventsOf, orderNumbersOf } from "../../data/promises";
import { binomialBand } from "../../engine/math";
import { workingDaysBetween } from "../../engine/routing";
import { accept, type IsoDate, type Outcome } from "../../engine/units";
import type { Context } from "../context";
import { floorCatalog } from "../floor/recipe";
import { orderNumber } from "../numbers";
import { shopDay } from "../shop-time";
import type { KeptOrder, KeptPeriod, KeptPromises, KeptShare, OrderId } from "../views";

const levels = [
  ["p50", 0.5],
  ["p80", 0.8],
  ["p90", 0.9],
] as const;
const confidence = 0.95;

export async function readKeptPromises(ctx: Context): Promise<Outcome<KeptPromises>> {
  const allowed = permit(ctx.actor, "promise.read");
  if (!allowed.ok) return allowed;
  const events = await orderEventsOf(ctx.db, ["promise-fixed", "promise-changed", "order-ready", "order-cancelled"]);
  const numbers = await orderNumbersOf(ctx.db, [...new Set(events.map(({ subjectId }) => subjectId))]);
  const cancelled = new Set(events.flatMap((event) => (event.kind === "order-cancelled" ? [event.subjectId] : [])));
  const orders = events
    .filter(({ kind, subjectId }) => kind === "promise-fixed" && !cancelled.has(subjectId))
    .map((fixed) => keptOrder(fixed, events, numbers));
  const today = shopDay(ctx.now, floorCatalog().hours.timeZone);
  const ready = orders.filter(({ readyOn }) => readyOn !== null);
  const months = [...new Set(ready.map(monthOf))].sort();
  return accept({
    all: period(null, ready),
    months: months.map((month) =>
      period(
        month,
        ready.filter((order) => monthOf(order) === month),
      ),
    ),
    orders: [...orders].reverse(),
    open: orders.length - ready.length,
    overdue: orders.filter(({ readyOn, p90 }) => readyOn === null && p90 < today).length,
  });
}

const monthOf = ({ fixedAt }: KeptOrder) => fixedAt.slice(0, 7);

function keptOrder(
  fixed: EventRecord,
  events: readonly EventRecord[],
  numbers: ReadonlyMap<string, number>,
): KeptOrder {
  const own = events.filter(({ subjectId }) => subjectId === fixed.subjectId);
  // A tick that was taken back makes an order ready twice: the last time counts.
  const ready = own.filter(({ kind }) => kind === "order-ready").at(-1);
  const date = (key: string) => fixed.data[key] as IsoDate | undefined;
  return {
    orderId: fixed.subjectId as OrderId,
    number: orderNumber({ number: numbers.get(fixed.subjectId) ?? 0 }),
    fixedAt: fixed.at.toISOString(),
    p50: date("p50") ?? (date("promisedOn") as IsoDate),
    p80: date("p80") ?? null,
    p90: date("p90") ?? (date("promisedOn") as IsoDate),
    readyOn: ready === undefined ? null : shopDay(ready.at, floorCatalog().hours.timeZone),
    changes: own
      .filter(({ kind }) => kind === "promise-changed")
      .map(({ at, data, actorName }) => ({
        at: at.toISOString(),
        to: data.promisedOn as IsoDate,
        reason: String(data.reason ?? ""),
        by: actorName,
      })),
  };
}

function period(month: string | null, orders: readonly KeptOrder[]): KeptPeriod {
  const { hours } = floorCatalog();
  const lateness = orders.map(({ readyOn, p90 }) => (readyOn === null ? 0 : workingDaysBetween(hours, p90, readyOn)));
  return {
    month,
    shares: levels.map(([level, expected]): KeptShare => {
      const told = orders.filter((order) => order[level] !== null);
      const kept = told.filter(
        ({ readyOn, [level]: day }) => readyOn !== null && day !== null && readyOn <= day,
      ).length;
      return { level, expected, orders: told.length, kept, band: binomialBand(told.length, expected, confidence) };
    }),
    meanLateness: orders.length === 0 ? null : lateness.reduce((sum, days) => sum + days, 0) / orders.length,
  };
}
