import { describe, expect, it } from "vitest";
import { guestByToken } from "#auth";
import {
  type AcceptedQuote,
  type Context,
  cancelOrder,
  editPair,
  finishOperation,
  lockSpecification,
  orderDocument,
  readOrder,
  readPair,
  recordDeposit,
  startOperation,
} from "#services";
import { pdfPages } from "../papers/pdf-text";
import { acceptedQuote } from "../support/builders/sale";
import { must, openShop, shopNow, stockWood, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { fewRuns } from "./scenarios/released-pairs";

const db = databaseForTests();
const denied = { ok: false, refusal: { code: "not-allowed" } };

async function soldPair(): Promise<{ readonly shop: TestShop; readonly order: AcceptedQuote }> {
  const shop = fewRuns(await openShop(db()), 20);
  await stockWood(db());
  return { shop, order: await acceptedQuote(shop, { choices: { "choices.model": "midlow-95" } }) };
}

async function readPaper(ctx: Context, input: Omit<Parameters<typeof orderDocument>[1], "paper">): Promise<string> {
  return pdfPages(must(await orderDocument(ctx, { ...input, paper: "A4" })).bytes).join(" ");
}

const amount = (cents: number) =>
  `$${Math.trunc(cents / 100).toLocaleString("en-US")}.${String(cents % 100).padStart(2, "0")}`;
const day = (iso: string) => {
  const { weekday, ...parts } = Object.fromEntries(
    new Intl.DateTimeFormat("en-GB", {
      weekday: "short",
      day: "numeric",
      month: "short",
      year: "numeric",
      timeZone: "UTC",
    })
      .formatToParts(new Date(`${iso}T12:00:00Z`))
      .map(({ type, value }) => [type, value]),
  );
  return `${weekday} ${parts.day} ${parts.month?.slice(0, 3)} ${parts.year}`;
};

// Contents of an order confirmation: the workshop's own list; common practice, no source.
describe("order confirmation", () => {
  it("says what was accepted, and gives the range and what is still missing while nothing is paid", async () => {
    const { shop, order } = await soldPair();
    const desk = shop.as(shop.desk);
    const { orderId } = order;
    const view = must(await readOrder(desk, { orderId }));
    const text = await readPaper(desk, { orderId });
    const [pair] = view.pairs;
    expect(pair).toBeDefined();
    for (const words of [
      order.orderNumber,
      view.quote.number,
      "Accepted by Robin Alder",
      "10 Nov 2026, 10:00, by telephone",
      `Pair ${pair?.serial} for Robin Alder`,
      (pair?.specHash.slice(0, 12).match(/.{4}/g) ?? []).join(" "),
      "Midlow 95",
      amount(view.price.totalCents),
      `${amount(view.price.depositCents)}, not received yet`,
      `${day(view.estimate.p50)} to ${day(view.estimate.p90)}`,
      "Estimate: a range that moves",
      "Our final check of your measures and options",
      "up to the start of gluing the core",
      "until the pair is shipped",
      "Put together from options that this shop offers",
      "Bindings are not included",
    ]) {
      expect(text).toContain(words);
    }
  });

  it("gives the promised day, the deposit and the changed pair once they are there", async () => {
    const { shop, order } = await soldPair();
    const desk = shop.as(shop.desk);
    const { orderId } = order;
    const pairId = order.pairs[0]?.pairId as never;
    const choices = { lengthCm: 186 };
    must(await editPair(desk, { pairId, choices, reason: "wants them longer", revision: 1 }));
    must(await lockSpecification(desk, { pairId }));
    must(await recordDeposit(desk, { orderId, method: "counter", reference: "receipt 7" }));
    const view = must(await readOrder(desk, { orderId }));
    const text = await readPaper(desk, { orderId });
    expect(text).toContain("Promise: fixed when the clock started");
    expect(text).toContain(`Ready by ${day(view.promisedOn ?? "")}`);
    expect(text).not.toContain("Still missing");
    expect(text).toContain(`${amount(view.money.paidCents)} received Tue 10 Nov 2026, at the counter`);
    expect(text).toContain(`Still to pay before shipping ${amount(view.money.openCents)}`);
    expect(text).toContain("186 cm");
    expect(text).toContain(", revision 2");

    for (const station of ["release", "base-cut"]) {
      const { operations } = must(await readPair(desk, { pairId }));
      const { operationId, version } =
        operations.find((each) => each.station === station) ?? expect.fail("no such one");
      const running = must(await startOperation(shop.as(shop.maker), { operationId, version }));
      if (station === "release")
        must(await finishOperation(shop.as(shop.owner), { operationId, version: running.version }));
    }
    const later = await readPaper(desk, { orderId });
    expect(later).toContain("Base closed with the start of cutting the base");
    expect(later).toContain("Core up to the start of gluing the core");
  });

  it("opens to its own link and the office, to no maker, no passer-by and no other order's link", async () => {
    const { shop, order } = await soldPair();
    const other = await acceptedQuote(shop, { phone: "303 555 0151", name: "Kim Rowan" });
    const guest = async ({ token }: AcceptedQuote) =>
      shop.as((await guestByToken(token, shopNow))?.actor ?? expect.fail("the link is closed"));
    const { orderId, token } = order;
    const own = (await readPaper(await guest(order), { orderId, token })).replace(/\s/g, "");
    expect(own).toContain("scantofollowtheorder");
    // What the office prints opens the customer's page too, by a link of the paper's own; a copy without prices the pair's alone.
    const links = () => db().privateLink.groupBy({ by: ["subjectKind"], where: { revokedAt: null }, _count: true });
    const count = async (kind: string) => (await links()).find(({ subjectKind }) => subjectKind === kind)?._count ?? 0;
    const before = [await count("order"), await count("pair")] as const;
    expect(await readPaper(shop.as(shop.owner), { orderId })).toContain("scan to follow the order");
    expect([await count("order"), await count("pair")]).toEqual([before[0] + 1, before[1]]);
    await readPaper(shop.as(shop.owner), { orderId, isWithoutPrices: true });
    expect([await count("order"), await count("pair")]).toEqual([before[0] + 1, before[1] + 1]);
    for (const ctx of [shop.visitor, shop.as(shop.maker), await guest(other)]) {
      expect(await orderDocument(ctx, { orderId, paper: "A4" })).toMatchObject(denied);
    }
  });

  it("leaves every amount out of the copy without prices, and is not printed of a cancelled order", async () => {
    const { shop, order } = await soldPair();
    const desk = shop.as(shop.desk);
    const { orderId } = order;
    const text = await readPaper(desk, { orderId, isWithoutPrices: true });
    expect(text).toContain("Midlow 95");
    expect(text).not.toContain("$");
    must(await cancelOrder(desk, { orderId, reason: "changed their mind" }));
    expect(await orderDocument(desk, { orderId, paper: "A4" })).toMatchObject({
      ok: false,
      refusal: { code: "order-closed", state: "cancelled" },
    });
  });
});
