/**
 * How promises were kept, from the events alone: what was told when the clock started, and when the order was ready. An order
 * counts at a level once the day told has passed, ready or not: counting what is ready would count the early ones first.
 */
import { permit } from "#auth";
import type { EventRecord } from "#data/events";
import { orderEventsOf, orderNumbersOf } from "#data/promises";
import { accept, type Outcome } from "#engine/units";
import { idOf } from "#schemas/ids";
import type { Context } from "#services/context";
import { floorCatalog } from "#shop/floor/recipe";
import { orderNumber } from "#shop/names/numbers";
import { shopDay } from "#shop/time/shop-time";
import { keptPeriod } from "./kept-period";
import type { KeptOrder, KeptPromises } from "./views";

export async function readKeptPromises(ctx: Context): Promise<Outcome<KeptPromises>> {
  const allowed = permit(ctx.actor, "promise.read");
  if (!allowed.ok) return allowed;
  const events = await orderEventsOf(ctx.db, [
    "clock-started",
    "promise-fixed",
    "promise-changed",
    "order-ready",
    "order-cancelled",
  ]);
  const numbers = await orderNumbersOf(ctx.db, [...new Set(events.map(({ subjectId }) => subjectId))]);
  const cancelled = new Set(events.flatMap((event) => (event.kind === "order-cancelled" ? [event.subjectId] : [])));
  const orders = events
    .filter(({ kind, subjectId }) => kind === "clock-started" && !cancelled.has(subjectId))
    .map((started) => keptOrder(started, events, numbers));
  const { hours } = floorCatalog();
  const today = shopDay(ctx.now, hours.timeZone);
  const told = orders.filter(({ p50 }) => p50 !== null && p50 < today);
  const months = [...new Set(told.map(monthOf))].sort();
  const of = (month: string) => orders.filter((order) => monthOf(order) === month);
  return accept({
    all: keptPeriod(null, orders, today, hours),
    months: months.map((month) => keptPeriod(month, of(month), today, hours)),
    orders: [...orders].reverse(),
    open: orders.filter(({ readyOn }) => readyOn === null).length,
    overdue: orders.filter(({ readyOn, p90 }) => readyOn === null && p90 < today).length,
  });
}

const monthOf = ({ fixedAt }: KeptOrder) => shopDay(new Date(fixedAt), floorCatalog().hours.timeZone).slice(0, 7);

function keptOrder(
  started: EventRecord,
  events: readonly EventRecord[],
  numbers: ReadonlyMap<string, number>,
): KeptOrder {
  const own = events.filter(({ subjectId }) => subjectId === started.subjectId);
  // A tick that was taken back makes an order ready twice: the last time counts.
  const ready = own.filter(({ kind }) => kind === "order-ready").at(-1);
  const promises = own.flatMap(promiseOf);
  const [first, last] = [promises[0], promises.at(-1)];
  if (first === undefined || last === undefined) throw new Error(`order ${started.subjectId} has no promise`);
  // A hard date that was fixed before says nothing about the range: the clock start does.
  const told = started.facts.kind === "clock-started" ? started.facts.data.told : first.data;
  return {
    orderId: idOf("order", started.subjectId),
    number: orderNumber({ number: numbers.get(started.subjectId) ?? 0 }),
    fixedAt: started.at.toISOString(),
    p50: told.p50 ?? null,
    p80: told.p80 ?? null,
    p90: told.p90 ?? first.data.promisedOn,
    shares: told.shares ?? null,
    promisedOn: last.data.promisedOn,
    readyOn: ready === undefined ? null : shopDay(ready.at, floorCatalog().hours.timeZone),
    changes: promises
      .filter(({ kind }) => kind === "promise-changed")
      .map(({ at, data, by }) => ({ at: at.toISOString(), to: data.promisedOn, reason: data.reason, by })),
  };
}

function promiseOf({ at, facts, actorName: by }: EventRecord) {
  return facts.kind === "promise-fixed" || facts.kind === "promise-changed" ? [{ ...facts, at, by }] : [];
}
