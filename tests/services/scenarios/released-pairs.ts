/** Several orders whose clocks run, dated from few runs: what is looked at is the order of things, not fine quantiles. */
import type { AcceptedQuote } from "#services";
import { releasedOrder } from "../../support/builders/sale";
import type { TestShop } from "../../support/builders/shop";

export function fewRuns(shop: TestShop, promiseRuns = 60): TestShop {
  return { ...shop, as: (actor, now) => ({ ...shop.as(actor, now), promiseRuns }) };
}

export async function releasedPairs(shop: TestShop, count: number): Promise<readonly AcceptedQuote[]> {
  const orders: AcceptedQuote[] = [];
  for (let index = 0; index < count; index += 1) {
    orders.push(await releasedOrder(shop, { phone: `303 555 ${String(1000 + index)}`, name: `Skier ${index + 1}` }));
  }
  return orders;
}
