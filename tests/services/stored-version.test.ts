import { createHash } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { gunzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { guestByToken } from "#auth";
import { database } from "#data/client";
import { openPairs } from "#data/pairs";
import { unreadableRows } from "#data/unreadable";
import { readEvent } from "#schemas/events";
import { keysIn } from "../support/keys-in";
import { openStored, storedFile } from "../support/stored/open-stored";
import { paperFacts, type ShopFacts, shopFacts } from "../support/stored/shop-facts";
import { lookedAt, storedOwner } from "../support/stored/store-version";
import { inOldFlow, inOldPages, onTodaysFloor } from "../support/stored/words-since";

/** Data that an earlier version made, and what that version itself said of it. */
const version = "2026-11-26";

interface Expected {
  readonly seededAt: string;
  readonly shop: ShopFacts;
  readonly papers: Readonly<Record<string, readonly string[]>>;
}

const expected = JSON.parse(storedFile(version, "expected.json").toString("utf8")) as Expected;
const sections = Object.keys(expected.shop) as (keyof ShopFacts)[];
const statesOf = (records: Readonly<Record<string, unknown>>) =>
  new Set(Object.values(records).map((record) => (record as { readonly state: string }).state));

describe(`a shop stored by the version of ${version}`, () => {
  const scratch = mkdtempSync(path.join(os.tmpdir(), "pairwright-stored-"));
  let close: () => Promise<void> = async () => undefined;
  let shop: ShopFacts;
  let papers: Expected["papers"];

  beforeAll(async () => {
    close = await openStored(version, scratch);
    const ctx = await storedOwner(lookedAt(new Date(expected.seededAt)));
    shop = JSON.parse(JSON.stringify(await shopFacts(ctx)));
    papers = await paperFacts(ctx);
  }, 300_000);

  afterAll(async () => {
    await close();
    rmSync(scratch, { recursive: true, force: true });
  });

  it("holds orders, quotes and proofs in every state, letters between two bases, and a book of corrections", () => {
    const orders = ["building", "cancelled", "delivered", "ready", "released", "shipped", "waiting"];
    expect([...statesOf(shop.orders)].sort()).toEqual(orders);
    expect([...statesOf(shop.quotes)].sort()).toEqual(["accepted", "expired", "open", "replaced", "withdrawn"]);
    const proofs = Object.values(shop.pairs).flatMap((pair) => pair.proofs);
    expect([...new Set(proofs.map(([, state]) => state))].sort()).toEqual([
      "approved",
      "changes-asked",
      "issued",
      "void",
    ]);
    for (const records of [shop.pairs, shop.quotes])
      expect(JSON.stringify(records)).toContain("letters exchanged between the bases");
    expect(shop.learning.books).toHaveLength(1);
    expect(Object.keys(shop.releases).length).toBeGreaterThanOrEqual(8);
  });

  it.each(sections)("says the same of its %s", (section) => {
    const { pairs } = expected.shop;
    const today = Object.fromEntries(Object.entries(pairs).map(([serial, pair]) => [serial, onTodaysFloor(pair)]));
    expect(shop[section]).toEqual({ ...expected.shop, pairs: today }[section]);
  });

  it("holds no row that cannot be read and no event that is not of its kind", async () => {
    const { db } = await database();
    expect(await unreadableRows(db)).toEqual([]);
    expect((await openPairs(db)).flatMap(({ unreadable }) => unreadable ?? [])).toEqual([]);
    const events = await db.event.findMany({ select: { kind: true, data: true } });
    expect(events.length).toBeGreaterThan(500);
    const others = events.filter(({ kind, data }) => readEvent(kind, data).kind === "other").map(({ kind }) => kind);
    expect([...new Set(others)]).toEqual([]);
  });

  it("keeps no key of a link in any table, and opens every link that is out as before", async () => {
    const { db } = await database();
    expect(await keysIn(db)).toEqual([]);
    const told = gunzipSync(storedFile(version, "database.sql.gz"))
      .toString("utf8")
      .matchAll(/"token": "([\w-]{43})"/g);
    const tokens = [...told].map(([, token = ""]) => token);
    expect(tokens.length).toBeGreaterThan(50);
    const now = lookedAt(new Date(expected.seededAt));
    const before = gunzipSync(storedFile(version, "database.sql.gz")).toString("utf8");
    for (const token of tokens) {
      const hash = createHash("sha256").update(token).digest("hex");
      // Closed before: closed still.
      const wasOpen = new RegExp(`'${hash}'[^;]*, NULL, NULL\\);`).test(before);
      expect([token, (await guestByToken(token, now)) !== null]).toEqual([token, wasOpen]);
    }
    expect(await db.privateLink.count({ where: { expiresAt: null } })).toBe(0);
  });

  it("keeps who bought with every quote and order, and every order its place", async () => {
    const { db } = await database();
    const orders = await db.order.findMany({ include: { customer: true, pairs: true } });
    expect(orders.length).toBeGreaterThan(20);
    for (const { buyerName, buyerEmail, customer, confirmedAt, acceptedAt } of orders) {
      expect([buyerName, buyerEmail, confirmedAt]).toEqual([customer.name, customer.email, acceptedAt]);
    }
    const quotes = await db.quote.findMany({ include: { customer: true } });
    expect(quotes.filter(({ buyerName, customer }) => buyerName !== customer.name)).toEqual([]);
    const waiting = orders.filter(({ state }) => ["waiting", "released", "building"].includes(state));
    expect(await openPairs(db)).toHaveLength(waiting.flatMap(({ pairs }) => pairs).length);
  });

  it("prices every quote again, by its own release and book, to the cent", () => {
    for (const quote of Object.values(shop.quotes)) {
      const { price, pricedAgainCents } = quote as { price: { totalCents: number }; pricedAgainCents: number };
      expect(pricedAgainCents).toBe(price.totalCents);
    }
  });

  it("prints the same papers, word by word", () => {
    expect(Object.keys(papers)).toEqual(Object.keys(expected.papers));
    const isRunning = (name: string) => /^(quote|confirmation) /.test(name);
    for (const [name, pages] of Object.entries(expected.papers)) {
      const now = papers[name] ?? [];
      if (isRunning(name)) expect(inOldFlow(now), name).toBe(inOldFlow(pages));
      else expect(inOldPages(now), name).toEqual(inOldPages(pages));
    }
  });
});
