/**
 * Telephone numbers. What is possible follows the numbering plans themselves: North America (ITU-T E.164 country 1) has ten
 * digits after the country, the United Kingdom drops the 0 of 020 abroad, Italy keeps the 0 of Rome's 06. Numbers for
 * examples: 555-0100 to 555-0199 in North America, 020 7946 0000 to 0999 in London.
 */
import { describe, expect, it } from "vitest";
import { createQuote, findByPhone, openSheet, saveSheet, search } from "#services";
import { digitsToFind, normalisePhone, storedForms } from "#shop/names/phone";
import { quotedSheet } from "../support/builders/sale";
import { must, openShop, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const spellings = ["+1 303 555 0199", "(303) 555-0199", "303.555.0199"] as const;

describe("normalisePhone", () => {
  it.each([
    ["+1 303 555 0199", "+13035550199"],
    ["(303) 555-0199", "+13035550199"],
    ["303.555.0199", "+13035550199"],
    ["1-303-555-0199", "+13035550199"],
    ["001 303 555 0199", "+13035550199"],
    ["+44 20 7946 0958", "+442079460958"],
    ["+44 (0)20 7946 0958", "+442079460958"],
    ["011 44 20 7946 0958", "+442079460958"],
    ["0044 20 7946 0958", "+442079460958"],
    ["+39 06 6982 0000", "+390669820000"],
  ])("reads %s", (typed, e164) => {
    expect(must(normalisePhone(typed))).toBe(e164);
  });

  it("takes a number without a country as one of the shop's own", () => {
    expect(must(normalisePhone("044 668 18 00", "phone", "CH"))).toBe("+41446681800");
    expect(must(normalisePhone("020 7946 0958", "phone", "GB"))).toBe("+442079460958");
    // A country without a numbering plan has none: only what names its country counts.
    expect(normalisePhone("303 555 0199", "phone", "XX").ok).toBe(false);
    expect(must(normalisePhone("+1 303 555 0199", "phone", "XX"))).toBe("+13035550199");
  });

  it.each([
    ["no area code", "555 0199"],
    ["a digit short", "303 555 019"],
    ["a digit long", "303 555 01990"],
    ["a country there is not", "+999 303 555 0199"],
    ["no number", "call the club"],
    ["nothing", ""],
  ])("refuses %s and says where", (_what, typed) => {
    const refusal = { code: "invalid-phone", path: "contact.phone", value: typed };
    expect(normalisePhone(typed, "contact.phone")).toEqual({ ok: false, refusal });
  });
});

describe("storedForms", () => {
  it("names the form of today first, and those that earlier versions kept", () => {
    expect(storedForms("+44 (0)20 7946 0958")).toEqual(["+442079460958", "+4402079460958", "+1011442079460958"]);
    expect(storedForms("(303) 555-0199")).toEqual(["+13035550199"]);
    // Ten digits that were kept under +1, and are no number of that kind.
    expect(storedForms("555 0199")).toEqual(["+15550199"]);
    expect(storedForms("")).toEqual([]);
  });

  it("never takes an old form that is by itself somebody else's number", () => {
    // Typed at home in Italy, a mobile number of Italy; kept as +1 347 …, which is a number in New York.
    const forms = storedForms("347 555 0123", "IT");
    expect(forms[0]).toBe("+393475550123");
    expect(forms).not.toContain("+13475550123");
    // A Swiss number kept as +1 044 …, which is nobody's.
    expect(storedForms("044 668 18 00", "CH")).toContain("+10446681800");
  });
});

describe("a caller", () => {
  it.each(spellings)("is one customer and one draft however the number was typed at first: %s", async (first) => {
    const shop = await openShop(db());
    const { quote } = await quotedSheet(shop, { phone: first, name: "Robin Alder" });
    const draft = must(await openSheet(shop.as(shop.desk), { channel: "phone", phone: first }));
    for (const typed of spellings) {
      const found = must(await findByPhone(shop.as(shop.desk), { phone: typed }));
      expect(found.customer).toEqual({ customerId: quote.customer.customerId, name: "Robin Alder" });
      expect(found.drafts.map(({ sheetId }) => sheetId)).toEqual([draft.sheet.sheetId]);
      const again = must(await openSheet(shop.as(shop.secondDesk), { channel: "phone", phone: typed }));
      expect([again.wasOpen, again.sheet.sheetId]).toEqual([true, draft.sheet.sheetId]);
    }
    expect(await db().customer.count()).toBe(1);
  });
});

/** A customer and an open draft as a version before numbering plans kept them. */
async function keptBefore(shop: TestShop, phone: string, phoneNormalised: string) {
  const { quote } = await quotedSheet(shop, { name: "Robin Alder" });
  const { customerId } = quote.customer;
  await db().customer.update({ where: { id: customerId }, data: { phone, phoneNormalised } });
  const { sheet } = must(await openSheet(shop.as(shop.desk), { channel: "phone", name: "Robin Alder" }));
  await db().sheet.update({ where: { id: sheet.sheetId }, data: { phoneNormalised } });
  return { customerId, sheetId: sheet.sheetId };
}

describe("a number kept by an earlier version", () => {
  it.each([
    ["+44 (0)20 7946 0958", "+4402079460958", "+44 20 7946 0958"],
    ["011 44 20 7946 0958", "+1011442079460958", "0044 20 7946 0958"],
    ["303 555 0199", "+13035550199", "303.555.0199"],
    ["555 0199", "+15550199", "555-0199"],
  ])("%s, kept as %s, is found by %s", async (phone, kept, typed) => {
    const shop = await openShop(db());
    const { customerId, sheetId } = await keptBefore(shop, phone, kept);
    const found = must(await findByPhone(shop.as(shop.desk), { phone: typed }));
    expect(found.customer?.customerId).toBe(customerId);
    expect(found.drafts.map((row) => row.sheetId)).toEqual([sheetId]);
    expect(found.quotes).toHaveLength(1);
    const opened = must(await openSheet(shop.as(shop.secondDesk), { channel: "phone", phone: typed }));
    expect([opened.wasOpen, opened.sheet.sheetId]).toEqual([true, sheetId]);
    const hits = must(await search(shop.as(shop.desk), { text: typed }));
    expect(hits.map(({ id }) => id)).toEqual(expect.arrayContaining([customerId, sheetId]));
  });

  it("gets its E.164 with the next quote, and stays the same customer", async () => {
    const shop = await openShop(db());
    const { customerId, sheetId } = await keptBefore(shop, "+44 (0)20 7946 0958", "+4402079460958");
    const patch = {
      "contact.phone": "+44 20 7946 0958",
      "typed.height": { unit: "cm", cm: 175 },
      "typed.mass": { unit: "kg", kg: 75 },
      "answers.ability": "confident",
    };
    must(await saveSheet(shop.as(shop.desk), { sheetId, patch, baseVersion: 1 }));
    const { quote } = must(await createQuote(shop.as(shop.desk), { sheetId }));
    expect(quote.customer.customerId).toBe(customerId);
    const rows = await db().customer.findMany({ select: { id: true, phoneNormalised: true } });
    expect(rows).toEqual([{ id: customerId, phoneNormalised: "+442079460958" }]);
  });

  it("is not taken anew when it is no possible number", async () => {
    const shop = await openShop(db());
    const refusal = { code: "invalid-phone", path: "contact.phone", value: "555 0199" };
    expect(await openSheet(shop.as(shop.desk), { channel: "phone", phone: "555 0199" })).toEqual({
      ok: false,
      refusal,
    });
    expect(await db().sheet.count()).toBe(0);
    expect(await findByPhone(shop.as(shop.desk), { phone: "555 0199" })).toMatchObject({
      ok: false,
      refusal: { code: "invalid-phone", path: "phone" },
    });
  });

  it("is not shown to a visitor who types it", async () => {
    const shop = await openShop(db());
    const { sheetId } = await keptBefore(shop, "303 555 0199", "+13035550199");
    const opened = must(await openSheet(shop.visitor, { channel: "online", phone: "303 555 0199" }));
    expect(opened.sheet.sheetId).not.toBe(sheetId);
    expect([opened.wasOpen, opened.knownAs]).toEqual([false, null]);
  });
});

describe("digitsToFind", () => {
  it("looks for a part of a number as it was typed, and for a whole one in every form", () => {
    expect(digitsToFind("555-01")).toEqual(["55501"]);
    expect(digitsToFind("Robin 2")).toEqual([]);
    expect(digitsToFind("+44 (0)20 7946 0958")).toEqual(["4402079460958", "442079460958", "1011442079460958"]);
  });
});
