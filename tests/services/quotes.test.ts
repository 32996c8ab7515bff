import { describe, expect, it } from "vitest";
import { guestByToken } from "#auth";
import { assessSheet } from "#engine/assessment";
import {
  acceptQuote,
  catalogOfRelease,
  copySheet,
  createQuote,
  orderLinkOfQuote,
  quoteDocument,
  readQuote,
  requestChange,
  saveSheet,
  withdrawQuote,
} from "#services";
import { pdfPages } from "../papers/pdf-text";
import { filledSheet, quotedSheet } from "../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

describe("createQuote", () => {
  it("freezes enough to compute the same cents and millimetres again from the stored release", async () => {
    const shop = await openShop(db());
    const { quote } = await quotedSheet(shop);
    const release = must(
      await catalogOfRelease(shop.as(shop.desk), { hash: quote.releaseHash, priceBook: quote.price.priceBook }),
    );
    const again = assessSheet({ answers: quote.answers, choices: { ...quote.choices, ...quote.spec } }, release.engine);
    expect(again.spec).toEqual(quote.spec);
    expect(again.price).toEqual(quote.price);
    expect(again.finishedFlex?.massKg).toBe(quote.fit.massKg);
  });

  it("cannot be done without a name and a way to reach the skier, and says which is missing", async () => {
    const shop = await openShop(db());
    const sheetId = await filledSheet(shop);
    const patch = { "contact.name": null, "contact.phone": null };
    must(await saveSheet(shop.as(shop.desk), { sheetId, patch, baseVersion: 99 }));
    expect(await createQuote(shop.as(shop.desk), { sheetId })).toMatchObject({
      ok: false,
      refusal: { code: "contact-missing", missing: ["contact.name", "contact.phone"] },
    });
  });

  it("makes one quote of one sheet when two desks ask in the same instant", async () => {
    const shop = await openShop(db());
    const sheetId = await filledSheet(shop);
    const both = await Promise.all(
      [shop.desk, shop.secondDesk].map((actor) => createQuote(shop.as(actor), { sheetId })),
    );
    expect(both.filter((outcome) => outcome.ok)).toHaveLength(1);
    expect(both.find((outcome) => !outcome.ok)).toMatchObject({ refusal: { code: "sheet-closed", state: "quoted" } });
    expect(await db().quote.count()).toBe(1);
  });
});

describe("an open quote", () => {
  it("keeps a skier's wish, and a change is made on a copy of its sheet", async () => {
    const shop = await openShop(db());
    const { quote } = await quotedSheet(shop);
    const desk = shop.as(shop.desk);
    must(await requestChange(desk, { quoteId: quote.quoteId, note: "one size shorter, please" }));
    expect(must(await readQuote(desk, { quoteId: quote.quoteId })).changeRequest).toBe("one size shorter, please");
    const copy = must(await copySheet(desk, { sheetId: quote.sheetId }));
    expect(copy.sheet).toMatchObject({ state: "open", answers: quote.answers });
    must(await saveSheet(desk, { sheetId: copy.sheet.sheetId, patch: { "choices.lengthCm": 174 }, baseVersion: 1 }));
    const second = must(await createQuote(desk, { sheetId: copy.sheet.sheetId }));
    expect(second.quote.spec.lengthCm).toBe(174);
    expect(must(await readQuote(desk, { quoteId: quote.quoteId })).spec).toEqual(quote.spec);
  });

  it("cannot be accepted once it is withdrawn", async () => {
    const shop = await openShop(db());
    const { quote } = await quotedSheet(shop);
    const desk = shop.as(shop.desk);
    must(await withdrawQuote(desk, { quoteId: quote.quoteId, reason: "bought elsewhere" }));
    expect(await acceptQuote(desk, { quoteId: quote.quoteId, how: "phone", name: "Robin" })).toMatchObject({
      ok: false,
      refusal: { code: "quote-not-open", state: "withdrawn" },
    });
  });

  it("opens the order it became to whoever holds its link", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { quote } = await quotedSheet(shop);
    const desk = shop.as(shop.desk);
    expect(await orderLinkOfQuote(desk, { quoteId: quote.quoteId })).toMatchObject({
      refusal: { code: "not-accepted" },
    });
    const order = must(await acceptQuote(desk, { quoteId: quote.quoteId, how: "phone", name: "Robin" }));
    expect(must(await orderLinkOfQuote(desk, { quoteId: quote.quoteId })).orderId).toBe(order.orderId);
  });

  it("prints the same paper later as on the day it was made", async () => {
    const shop = await openShop(db());
    const { quote, token } = await quotedSheet(shop);
    const print = (days: number) =>
      quoteDocument(shop.as(shop.desk, daysAfter(shopNow, days)), { quoteId: quote.quoteId, paper: "A4", token });
    const [first, later] = [must(await print(0)), must(await print(9))];
    expect(new TextDecoder().decode(first.bytes.slice(0, 5))).toBe("%PDF-");
    expect(Buffer.from(later.bytes).equals(Buffer.from(first.bytes))).toBe(true);
  });

  it("names the skier's own page on every paper: by their link, or by one of the paper's own when the desk prints it", async () => {
    const shop = await openShop(db());
    const { quote, token } = await quotedSheet(shop);
    const desk = shop.as(shop.desk);
    const [own, counter] = await Promise.all(
      [{ token }, {}].map(async (link) =>
        pdfPages(must(await quoteDocument(desk, { quoteId: quote.quoteId, paper: "A4", ...link })).bytes).join(" "),
      ),
    );
    expect(own?.replace(/\s/g, "")).toContain(`/quote/${token}`);
    const printed = /\/quote\/([\w-]{43})/.exec(counter?.replace(/\s/g, "") ?? "")?.[1] ?? "";
    expect(printed).not.toBe(token);
    expect((await guestByToken(printed, shopNow))?.subject).toEqual({ kind: "quote", id: quote.quoteId });
    expect(counter).not.toContain("shop/quotes");
  });
});
