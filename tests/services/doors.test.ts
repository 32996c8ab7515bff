/** Budgets of the doors anybody may use. The numbers are the shop's own; the limiter counts by its own clock. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  acceptQuote,
  askReview,
  createQuote,
  listBudgets,
  openSheet,
  quoteDocument,
  releaseBudgets,
  requestChange,
  uploadArtwork,
} from "#services";
import { doors, spend } from "#services/doors/budgets";
import { currentCatalog } from "#shop/catalogue/current";
import { guestWith, onlineQuote } from "../support/builders/online";
import { must, openShop, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const one = { share: "a".repeat(32), mark: null };
const other = { share: "b".repeat(32), mark: null };
const untold = { share: null, mark: null };

describe("a door that anybody may use", () => {
  let shop: TestShop;

  beforeEach(async () => {
    shop = await openShop(db());
    vi.useFakeTimers({ toFake: ["Date"], now: new Date("2026-11-10T17:00:00Z") });
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  const guest = (visitor: typeof one | typeof untold = one) => ({ ...shop.visitor, visitor });

  it("counts one guest exactly, though they ask thirty times at once, and says how long to wait", async () => {
    const answers = await Promise.all(Array.from({ length: 30 }, () => spend(guest(), "accept")));
    expect(answers.filter(({ ok }) => ok)).toHaveLength(currentCatalog().doors.accept.each);
    const refused = answers.find(({ ok }) => !ok);
    expect(refused).toMatchObject({
      refusal: { code: "budget-used", door: "accept", retryAfterSeconds: 3600, minutes: 60 },
    });
    vi.setSystemTime(new Date("2026-11-10T17:45:30Z"));
    expect(await spend(guest(), "accept")).toMatchObject({ refusal: { retryAfterSeconds: 870, minutes: 15 } });
    vi.setSystemTime(new Date("2026-11-10T18:00:01Z"));
    expect((await spend(guest(), "accept")).ok).toBe(true);
  });

  it("leaves other guests and other doors alone until all together have used what there is", async () => {
    for (let n = 0; n < currentCatalog().doors.accept.each + 3; n += 1) await spend(guest(), "accept");
    expect((await spend(guest(other), "accept")).ok).toBe(true);
    expect((await spend(guest(), "question")).ok).toBe(true);
    // Those who cannot be told apart share no budget of one, and have the one of all.
    const used = currentCatalog().doors.accept.each + 1;
    for (let n = used; n < currentCatalog().doors.accept.all; n += 1)
      expect((await spend(guest(untold), "accept")).ok).toBe(true);
    for (const visitor of [untold, { share: "c".repeat(32), mark: null }]) {
      expect(await spend(guest(visitor), "accept")).toMatchObject({ refusal: { code: "budget-all-used" } });
    }
    expect((await spend(shop.as(shop.desk), "accept")).ok).toBe(true);
  });

  it("is begun anew by staff with a reason, and by nobody else", async () => {
    for (let n = 0; n < 25; n += 1) await spend(guest(), "sheet");
    await spend(guest(), "quote");
    const before = must(await listBudgets(shop.as(shop.desk)));
    expect(before.find(({ door }) => door === "sheet")).toMatchObject({ allUsed: 20, allMost: 400, guestsAtEnd: 1 });
    for (const ctx of [guest(), shop.as(shop.maker)]) {
      expect(await releaseBudgets(ctx, { doors: ["sheet"], reason: "x" })).toMatchObject({
        refusal: { code: "not-allowed" },
      });
    }
    const desk = shop.as(shop.desk);
    expect(await releaseBudgets(desk, { doors: ["sheet"], reason: "" })).toMatchObject({
      refusal: { code: "reason-missing" },
    });
    expect(await releaseBudgets(desk, { doors: ["nothing"], reason: "x" })).toMatchObject({
      refusal: { code: "nothing-ticked" },
    });
    expect(must(await releaseBudgets(desk, { doors: ["sheet"], reason: "an open day" }))).toEqual({ released: 2 });
    expect((await spend(guest(), "sheet")).ok).toBe(true);
    expect(must(await listBudgets(desk)).find(({ door }) => door === "quote")?.allUsed).toBe(1);
    expect(await db().event.findFirst({ where: { kind: "budgets-released" } })).toMatchObject({
      data: { doors: ["sheet"], reason: "an open day" },
      actorName: "Desk 1",
    });
  });

  it("is asked by every use case that a guest can reach", async () => {
    const { quote, token } = await onlineQuote(shop);
    const own = { ...(await guestWith(shop, token)), visitor: one };
    const { quoteId } = quote;
    const sheetLink = must(await openSheet(guest(other), { channel: "online" }));
    const sheetId = sheetLink.sheet.sheetId;
    const onSheet = { ...(await guestWith(shop, sheetLink.token ?? "")), visitor: one };
    for (const door of doors) {
      for (let n = 0; n < currentCatalog().doors[door].each; n += 1) must(await spend(guest(), door));
    }
    const bytes = new Uint8Array(8);
    const attempts = {
      sheet: () => openSheet(guest(), { channel: "online" }),
      upload: () => uploadArtwork(onSheet, { sheetId, fileName: "x.png", bytes }),
      question: () => askReview(onSheet, { sheetId, note: "a call, please" }),
      drawing: () => quoteDocument(own, { quoteId, paper: "A4" }),
      accept: () => acceptQuote(own, { quoteId, how: "online", name: "Wren" }),
    };
    for (const [door, attempt] of Object.entries(attempts)) {
      expect([door, await attempt()]).toMatchObject([door, { refusal: { code: "budget-used", door } }]);
    }
    expect(await requestChange(own, { quoteId, note: "shorter" })).toMatchObject({ refusal: { door: "question" } });
    // A quote is counted once it could be made.
    expect(await createQuote(onSheet, { sheetId })).toMatchObject({ refusal: { code: "contact-missing" } });
    expect(await db().order.count()).toBe(0);
  });
});
