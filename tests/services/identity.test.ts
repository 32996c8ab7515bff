/** What a guest types changes nobody that the shop knows; an order keeps who bought it; the desk makes two rows one. */
import { beforeEach, describe, expect, it } from "vitest";
import { issueLink } from "#auth";
import {
  createQuote,
  findByPhone,
  listCustomers,
  mergeCustomers,
  orderDocument,
  quoteDocument,
  readCustomerPage,
  readOrder,
  saveSheet,
} from "#services";
import { pdfPages } from "../papers/pdf-text";
import { guestWith, onlineOrder, onlineQuote } from "../support/builders/online";
import { acceptedQuote, filledSheet, quotedSheet } from "../support/builders/sale";
import { must, openShop, shopNow, stockWood, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const textOf = (bytes: Uint8Array) => pdfPages(bytes).join(" ");
const phone = "303 555 0101";
const address = { lines: ["12 Stranger Street"], town: "Elsewhere", postcode: "80000", country: "US" };

describe("a known number", () => {
  let shop: TestShop;

  beforeEach(async () => {
    shop = await openShop(db());
    await stockWood(db());
  });

  it("typed by a guest with another name, mail and address changes neither the customer nor what they ordered", async () => {
    const order = await acceptedQuote(shop, { phone, name: "Robin Alder" });
    const before = await db().customer.findMany();
    const paper = { orderId: order.orderId, paper: "A4" } as const;
    const stranger = { name: "Mallory Stranger", phone: "+1 (303) 555-0101", email: "mallory@evil.example", address };
    const theirs = await onlineOrder(shop, stranger);
    expect(await db().customer.findMany({ where: { id: { in: before.map(({ id }) => id) } } })).toEqual(before);
    expect(must(await readOrder(shop.as(shop.desk), { orderId: order.orderId })).customer).toMatchObject({
      name: "Robin Alder",
      email: null,
    });
    const text = textOf(must(await orderDocument(shop.as(shop.desk), paper)).bytes);
    expect(text).toContain("Robin Alder");
    expect(text).not.toMatch(/Mallory|Stranger/);
    const own = must(await readOrder(shop.as(shop.desk), { orderId: theirs.orderId }));
    expect(own.customer).toMatchObject({ name: "Mallory Stranger", email: "mallory@evil.example", address });
    // What the stranger gets on paper says that it is not placed; the other order's says nothing of it.
    const strange = await orderDocument(shop.as(shop.desk), { orderId: theirs.orderId, paper: "A4" });
    expect(textOf(must(strange).bytes)).toContain("To be confirmed: your order has no place in the queue yet");
    expect(text).not.toContain("To be confirmed");
    const found = must(await findByPhone(shop.as(shop.desk), { phone }));
    expect(found.customer?.name).toBe("Robin Alder");
    expect(found.sameNumber.map(({ name }) => name)).toEqual(["Mallory Stranger"]);
  });

  it("is the same customer for a guest of the very same name and mail, who still changes nothing", async () => {
    await acceptedQuote(shop, { phone, name: "Robin Alder" });
    const [row] = await db().customer.findMany();
    await onlineQuote(shop, { phone, name: "robin  ALDER" });
    expect(await db().customer.findMany()).toEqual([row]);
    // Another mail address is another word: it may be somebody else who knows name and number.
    await onlineQuote(shop, { phone, name: "Robin Alder", email: "other@mail.example" });
    expect(await db().customer.count()).toBe(2);
    expect(await db().customer.findFirst({ where: { id: row?.id ?? "" } })).toEqual(row);
  });

  it("counts as a guest's word on any sheet whose contact the guest has typed, whoever makes the quote", async () => {
    await acceptedQuote(shop, { phone, name: "Robin Alder" });
    const before = await db().customer.findFirst();
    const sheetId = await filledSheet(shop, { phone, name: "Robin Alder" });
    const told = await issueLink(db(), { kind: "sheet", id: sheetId }, { id: "link-1", now: shopNow });
    const guest = await guestWith(shop, told);
    const patch = { "contact.name": "Mallory Stranger", "contact.email": "mallory@evil.example" };
    must(await saveSheet(guest, { sheetId, patch, baseVersion: 9 }));
    must(await createQuote(shop.as(shop.desk), { sheetId }));
    expect(await db().customer.findFirst({ where: { id: before?.id ?? "" } })).toEqual(before);
    expect(await db().customer.count()).toBe(2);
  });

  it("said by the desk changes what stood there, with an event, and no order and no quote", async () => {
    const first = await quotedSheet(shop, { phone, name: "Robin Alder" });
    await quotedSheet(shop, { phone, name: "Robin Alder-Heath" });
    const rows = await db().customer.findMany();
    expect(rows.map(({ name }) => name)).toEqual(["Robin Alder-Heath"]);
    const [event] = await db().event.findMany({ where: { kind: "customer-changed" } });
    expect(event).toMatchObject({
      subjectId: rows[0]?.id,
      actorName: "Desk 1",
      data: { before: { name: "Robin Alder" } },
    });
    const paper = { quoteId: first.quote.quoteId, paper: "A4" } as const;
    const text = textOf(must(await quoteDocument(shop.as(shop.desk), paper)).bytes);
    expect(text).toContain("Robin Alder");
    expect(text).not.toContain("Alder-Heath");
  });

  it("never takes a row that only a guest has written for the caller's own", async () => {
    await onlineQuote(shop, { phone, name: "Mallory Stranger" });
    await quotedSheet(shop, { phone, name: "Robin Alder" });
    expect(
      (await db().customer.findMany({ orderBy: { name: "asc" } })).map(({ name, givenBy }) => [name, givenBy]),
    ).toEqual([
      ["Mallory Stranger", "skier"],
      ["Robin Alder", "desk"],
    ]);
  });

  it("opened by two desks in one instant is one customer", async () => {
    const [a, b] = [await filledSheet(shop, { phone }), await filledSheet(shop, { phone: "303 555 0102" })];
    const second = shop.as(shop.secondDesk);
    must(await saveSheet(second, { sheetId: b, patch: { "contact.phone": phone }, baseVersion: 9 }));
    await Promise.all([createQuote(shop.as(shop.desk), { sheetId: a }), createQuote(second, { sheetId: b })]);
    expect(await db().quote.count()).toBe(2);
    expect(await db().customer.count()).toBe(1);
  });
});

describe("two rows of one number", () => {
  it("are made one with a reason: everything goes over, and both histories can be read", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const desk = shop.as(shop.desk);
    const mine = await acceptedQuote(shop, { phone, name: "Robin Alder" });
    const theirs = await onlineOrder(shop, { phone, name: "R. Alder", email: "robin@mail.example" });
    const shared = must(await listCustomers(desk, { sharesNumber: true })).rows;
    expect(shared.map(({ name, sameNumber }) => [name, sameNumber.map((each) => each.name)])).toEqual([
      ["R. Alder", ["Robin Alder"]],
      ["Robin Alder", ["R. Alder"]],
    ]);
    const [from, into] = [shared[0]?.customerId, shared[1]?.customerId];
    if (from === undefined || into === undefined) throw new Error("they are not there");
    for (const ctx of [shop.visitor, shop.as(shop.maker)]) {
      expect(await mergeCustomers(ctx, { from, into, reason: "x" })).toMatchObject({
        refusal: { code: "not-allowed" },
      });
    }
    expect(await mergeCustomers(desk, { from, into, reason: " " })).toMatchObject({
      refusal: { code: "reason-missing" },
    });
    expect(await mergeCustomers(desk, { from, into: from, reason: "x" })).toMatchObject({
      refusal: { code: "customers-other-number" },
    });
    // At once in both directions: one of them, and never a ring.
    const both = await Promise.all([
      mergeCustomers(desk, { from, into, reason: "same voice" }),
      mergeCustomers(shop.as(shop.owner), { from: into, into: from, reason: "same voice" }),
    ]);
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
    const kept = both[0]?.ok ? into : from;
    const page = must(await readCustomerPage(desk, { customerId: kept }));
    expect(page.orders.map(({ number }) => number).sort()).toEqual([mine.orderNumber, theirs.orderNumber].sort());
    expect(page.quotes.map(({ name }) => name).sort()).toEqual(["R. Alder", "Robin Alder"]);
    expect(page.sameNumber).toEqual([]);
    expect(page.history.map(({ kind, data }) => [kind, data.reason])).toEqual([["customer-merged", "same voice"]]);
    const gone = must(await readCustomerPage(desk, { customerId: kept === into ? from : into }));
    expect(gone.mergedInto?.customerId).toBe(kept);
    expect(gone.history).toHaveLength(1);
    // The order says still whose it was when it was accepted.
    expect(must(await readOrder(desk, { orderId: theirs.orderId })).customer.name).toBe("R. Alder");
  });
});
