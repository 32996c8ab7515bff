/** Everything about one person as a file, and a person forgotten: looked for in every column of the database. */

import sharp from "sharp";
import { beforeEach, describe, expect, it } from "vitest";
import { letterText } from "#data/letters";
import { unreadableRows } from "#data/unreadable";
import { readEvent } from "#schemas/events";
import {
  applyRetention,
  type CustomerId,
  cancelOrder,
  erasePerson,
  listOrders,
  openSheet,
  personFile,
  readOrder,
  readRetention,
  recordDeposit,
  requestChange,
  saveSheet,
  setRetention,
  stateRights,
  uploadArtwork,
} from "#services";
import { enqueueLetter } from "#services/letters/enqueue-letter";
import { guestWith, onlineOrder } from "../support/builders/online";
import { acceptedQuote, quotedSheet } from "../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

const who = {
  name: "Zebedee Quillfeather",
  phone: "303 555 0188",
  email: "zebedee@quillfeather.example",
  address: { lines: ["77 Quillfeather Row"], town: "Nowhere", postcode: "80001", country: "US" },
};
/** What must be found nowhere afterwards; whoever reads a row must not learn who it was. */
const traces = /quillfeather|zebedee|5550188|555 0188/i;

/** Every text, JSON and number of every table, by where it stands. */
async function everything(): Promise<readonly (readonly [string, string])[]> {
  const tables = await db().$queryRaw<{ name: string }[]>`
    SELECT tablename AS name FROM pg_tables WHERE schemaname = current_schema() AND tablename <> '_prisma_migrations'`;
  const found: (readonly [string, string])[] = [];
  for (const { name } of tables) {
    const rows = await db().$queryRawUnsafe<{ row: string }[]>(`SELECT row_to_json(t)::text AS row FROM "${name}" t`);
    for (const { row } of rows) found.push([name, row]);
  }
  return found;
}

async function leftOver(): Promise<readonly string[]> {
  return (await everything()).flatMap(([table, row]) => {
    const trace = traces.exec(row);
    return trace === null ? [] : [`${table}: …${row.slice(Math.max(0, trace.index - 60), trace.index + 60)}…`];
  });
}

describe("a person", () => {
  let shop: TestShop;
  let customerId: CustomerId;
  let orderId: string;

  /** Bought, asked, uploaded, was written to and written about: all of it by their name. */
  beforeEach(async () => {
    shop = await openShop(db());
    await stockWood(db());
    const desk = shop.as(shop.desk);
    const order = await onlineOrder(shop, {
      ...who,
      choices: { "choices.base": { left: "black", right: "black", inlay: "none" } },
    });
    orderId = order.orderId;
    must(await recordDeposit(desk, { orderId: order.orderId, method: "bank-transfer", reference: "Quillfeather 17" }));
    const { token } = must(await openSheet({ ...shop.visitor }, { channel: "online" }));
    const sheetGuest = await guestWith(shop, token ?? "");
    const sheetId = (sheetGuest.actor.kind === "guest" ? sheetGuest.actor.grants[0]?.id : "") as never;
    const patch = { "contact.name": who.name, "contact.phone": who.phone, notes: "Zebedee wants it blue" };
    must(await saveSheet(sheetGuest, { sheetId, patch, baseVersion: 1 }));
    const bytes = await sharp({ create: { width: 900, height: 900, channels: 3, background: "#124e55" } })
      .png()
      .toBuffer();
    const picture = must(await uploadArtwork(sheetGuest, { sheetId, fileName: "zebedee-portrait.png", bytes }));
    must(await stateRights(sheetGuest, { artworkId: picture.artworkId, basis: "own", name: who.name }));
    const quote = await quotedSheet(shop, { phone: who.phone, name: who.name });
    const quoteGuest = await guestWith(shop, quote.token);
    must(await requestChange(quoteGuest, { quoteId: quote.quote.quoteId, note: "Zebedee here: shorter, please" }));
    const row = await db().customer.findFirstOrThrow({ where: { name: who.name, email: who.email } });
    customerId = row.id as CustomerId;
    // A sheet of theirs that is nobody's yet: found by number and name.
    must(await openSheet(desk, { channel: "phone", phone: who.phone, name: who.name }));
    expect(await db().customer.count()).toBe(1);
    // A note of the floor and a letter of somebody else that name them.
    await db().incident.create({
      data: {
        id: "i-1",
        number: 1,
        kind: "supplier-late",
        state: "closed",
        version: 1,
        input: { note: "x" },
        note: `told "${who.name}" on the phone`,
        effect: { crossing: [{ skier: who.name }] },
        options: [],
        reportedAt: shopNow,
        reportedByName: "Ola Owner",
      },
    });
    const about = { kind: "order", id: "order-of-another" } as const;
    const said = { subject: "Your pair", text: `Dear Robin, ${who.name} of the same club pays.`, about };
    await enqueueLetter(db(), {
      id: "l-1",
      kind: "notice-delay",
      to: "robin@alder.example",
      ...said,
      createdAt: shopNow,
    });
  });

  it("is one file: sheets, quotes, orders, letters, pictures and the record, for the owner alone", async () => {
    for (const ctx of [shop.visitor, shop.as(shop.desk), shop.as(shop.maker)]) {
      expect(await personFile(ctx, { customerId })).toMatchObject({ refusal: { code: "not-allowed" } });
    }
    const { text } = must(await personFile(shop.as(shop.owner), { customerId }));
    const file = JSON.parse(text) as Record<string, readonly Record<string, unknown>[]>;
    expect(file.customers?.[0]).toMatchObject({ name: who.name, email: who.email, address: who.address });
    expect(file.orders?.[0]).toMatchObject({ id: orderId, buyerName: who.name });
    expect(file.payments?.map(({ reference }) => reference)).toEqual(["Quillfeather 17"]);
    expect(file.pictures?.[0]).toMatchObject({ fileName: "zebedee-portrait.png" });
    const [image] = (file.pictures?.[0]?.images ?? []) as { bytes: string }[];
    expect(Buffer.from(image?.bytes ?? "", "base64").length).toBeGreaterThan(100);
    expect(file.sheets).toHaveLength(3);
    expect(file.events?.map(({ kind }) => kind)).toEqual(expect.arrayContaining(["order-made", "quote-made"]));
    expect(file.messages?.map(({ kind }) => kind)).toContain("order-confirmation");
    expect(file.mail?.map(({ kind, recipient }) => [kind, recipient])).toEqual([["contact-code", who.email]]);
    expect(file.mail?.[0]?.body).toMatch(/\b[0-9A-Z]{4}-[0-9A-Z]{4}\b/);
    expect(text).not.toMatch(/tokenHash|codeHash/);
    expect(await db().event.count({ where: { kind: "person-exported", subjectId: customerId } })).toBe(1);
  });

  it("is not forgotten while an order is open, nor by anybody but the owner, nor without a reason", async () => {
    const owner = shop.as(shop.owner);
    expect(await erasePerson(shop.as(shop.desk), { customerId, reason: "asked" })).toMatchObject({
      refusal: { code: "not-allowed" },
    });
    expect(await erasePerson(owner, { customerId, reason: " " })).toMatchObject({
      refusal: { code: "reason-missing" },
    });
    const { number } = must(await readOrder(owner, { orderId: orderId as never }));
    expect(await erasePerson(owner, { customerId, reason: "asked" })).toMatchObject({
      refusal: { code: "orders-open", orders: [number] },
    });
    expect((await leftOver()).length).toBeGreaterThan(10);
  });

  it("is in no column of any table once forgotten, and orders, counts, money and days are as they were", async () => {
    const owner = shop.as(shop.owner);
    must(await cancelOrder(owner, { orderId: orderId as never, reason: "Zebedee Quillfeather moved abroad" }));
    const kept = async () => ({
      orders: await db().order.findMany({
        select: {
          number: true,
          state: true,
          totalCents: true,
          depositCents: true,
          acceptedAt: true,
          refundCents: true,
        },
      }),
      payments: await db().payment.findMany({
        orderBy: { id: "asc" },
        select: { kind: true, state: true, cents: true, receivedAt: true },
      }),
      quotes: await db().quote.count(),
      pairs: await db().pair.findMany({ select: { serial: true, specHash: true, mould: true } }),
      events: await db().event.count(),
      letters: await db().outboxMessage.count(),
    });
    const before = await kept();
    const erased = must(await erasePerson(owner, { customerId, reason: "asked in writing" }));
    expect(erased).toMatchObject({ quotes: 2, sheets: 3, pictures: 1 });
    expect(await leftOver()).toEqual([]);
    // What is sealed no search in the tables finds.
    const letters = await db().letter.findMany({ where: { body: { not: null } } });
    expect(letters.map(letterText)).toEqual(["Dear Robin, (erased) of the same club pays."]);
    expect(await kept()).toEqual({ ...before, events: before.events + 1 });
    expect(await db().artworkImage.count()).toBe(0);
    expect(await db().privateLink.count({ where: { revokedAt: null } })).toBe(0);
    // What is left can still be read, as what it is.
    expect(await unreadableRows(db())).toEqual([]);
    const events = await db().event.findMany();
    expect(events.filter(({ kind, data }) => readEvent(kind, data).kind === "other")).toEqual([]);
    expect(must(await readOrder(owner, { orderId: orderId as never })).customer.name).toBe("(erased)");
    expect(must(await listOrders(owner, {})).total).toBe(1);
    expect(await erasePerson(owner, { customerId, reason: "again" })).toMatchObject({
      refusal: { code: "customer-gone" },
    });
  });

  it("takes nobody else with it: a namesake with another number keeps name and orders", async () => {
    const owner = shop.as(shop.owner);
    const other = await acceptedQuote(shop, { phone: "303 555 0199", name: who.name });
    must(await cancelOrder(owner, { orderId: orderId as never, reason: "moved" }));
    const before = await db().order.findUnique({ where: { id: other.orderId } });
    const events = await db().event.findMany({ where: { subjectId: other.orderId } });
    must(await erasePerson(owner, { customerId, reason: "asked" }));
    expect(await db().order.findUnique({ where: { id: other.orderId } })).toEqual(before);
    expect(await db().event.findMany({ where: { subjectId: other.orderId } })).toEqual(events);
  });
});

describe("how long what is kept", () => {
  const keepAll = { drafts: null, askers: null, unconfirmed: null, letters: null, buyers: null };

  it("is set by the owner, looked at first, and then done: nothing goes before", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const later = daysAfter(shopNow, 100);
    const owner = shop.as(shop.owner, later);
    const sold = await acceptedQuote(shop, { phone: "303 555 0150", name: "Robin Alder" });
    must(await cancelOrder(shop.as(shop.desk), { orderId: sold.orderId, reason: "moved" }));
    const open = await acceptedQuote(shop, { phone: "303 555 0151", name: "Cora Ling" });
    await quotedSheet(shop, { phone: "303 555 0152", name: "Dov Gorse" });
    const loose = await onlineOrder(shop, { name: "Nobody", phone: "303 555 0153" });
    const draft = must(await openSheet(shop.visitor, { channel: "online" }));
    const drawn = await guestWith(shop, draft.token ?? "");
    must(await saveSheet(drawn, { sheetId: draft.sheet.sheetId, patch: { notes: "blue" }, baseVersion: 1 }));
    must(await openSheet(shop.as(shop.desk, daysAfter(shopNow, 99)), { channel: "phone", phone: "303 555 0154" }));
    expect(await readRetention(shop.as(shop.desk))).toMatchObject({ refusal: { code: "not-allowed" } });
    const asked = { drafts: 30, askers: 60, unconfirmed: 10, letters: null, buyers: 90 };
    const look = must(await readRetention(owner, asked));
    expect(look.lines.map(({ kind, count, first }) => [kind, count, first])).toEqual([
      ["drafts", 1, ["2026-11-10"]],
      ["askers", 1, ["Dov Gorse"]],
      ["unconfirmed", 1, [loose.orderNumber]],
      ["letters", 0, []],
      ["buyers", 1, ["Robin Alder"]],
    ]);
    // Looking changes nothing, and nothing is done that was not set.
    expect(must(await applyRetention(owner))).toEqual({ sheets: 0, persons: 0, orders: 0, letters: 0 });
    expect(await setRetention(owner, { rules: asked, reason: "" })).toMatchObject({
      refusal: { code: "reason-missing" },
    });
    must(await setRetention(owner, { rules: asked, reason: "our policy of 2027" }));
    expect(must(await applyRetention(owner))).toEqual({ sheets: 1, persons: 2, orders: 1, letters: 0 });
    const names = (await db().customer.findMany({ orderBy: { name: "asc" } })).map(({ name }) => name);
    expect(names).toEqual(["(erased)", "(erased)", "Cora Ling", "Nobody"]);
    expect(await db().order.findUnique({ where: { id: open.orderId } })).toMatchObject({ buyerName: "Cora Ling" });
    expect(await db().order.findUnique({ where: { id: loose.orderId } })).toMatchObject({ state: "cancelled" });
    expect(await db().sheet.findUnique({ where: { id: draft.sheet.sheetId } })).toMatchObject({
      state: "turned-down",
      fields: {},
    });
    expect(must(await applyRetention(owner))).toEqual({ sheets: 0, persons: 0, orders: 0, letters: 0 });
    expect(
      (await db().event.findMany({ where: { kind: { startsWith: "retention" } } })).map(({ kind }) => kind),
    ).toEqual(["retention-set", "retention-applied"]);
    expect(must(await setRetention(owner, { rules: keepAll, reason: "keep all" })).rules).toEqual(keepAll);
  });
});
