import { describe, expect, it } from "vitest";
import { createQuote, findByPhone, openSheet, saveSheet, takeOverSheet } from "#services";
import { quotedSheet } from "../../support/builders/sale";
import { must, openShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();

describe("scenario 8: two desks, same caller", () => {
  it("shows the second desk the draft of Desk 1, lets it read or take over", async () => {
    const shop = await openShop(db());
    const first = must(await openSheet(shop.as(shop.desk), { channel: "phone", phone: "303-555-0101" }));
    const second = must(await openSheet(shop.as(shop.secondDesk), { channel: "phone", phone: "+1 (303) 555 0101" }));
    expect(second).toMatchObject({ wasOpen: true, token: null });
    expect(second.sheet.sheetId).toBe(first.sheet.sheetId);
    expect(second.sheet.lease).toMatchObject({ holder: "Desk 1", isMine: false });
    const taken = must(await takeOverSheet(shop.as(shop.secondDesk), { sheetId: first.sheet.sheetId }));
    expect(taken.lease).toMatchObject({ holder: "Desk 2", isMine: true });
  });

  it("opens one draft when both desks open the number in the same instant", async () => {
    const shop = await openShop(db());
    const opened = await Promise.all(
      [shop.desk, shop.secondDesk, shop.owner].map((actor) =>
        openSheet(shop.as(actor), { channel: "phone", phone: "303 555 0101" }),
      ),
    );
    expect(new Set(opened.map((outcome) => must(outcome).sheet.sheetId)).size).toBe(1);
  });

  it("makes no second customer for a number that is known", async () => {
    const shop = await openShop(db());
    const first = await quotedSheet(shop, { phone: "303 555 0101", name: "Robin Alder" });
    const again = must(await openSheet(shop.as(shop.secondDesk), { channel: "phone", phone: "1-303-555-0101" }));
    expect(again).toMatchObject({ wasOpen: false, knownAs: "Robin Alder" });
    const { sheetId, version } = again.sheet;
    const patch = {
      "typed.height": { unit: "cm", cm: 175 },
      "typed.mass": { unit: "kg", kg: 75 },
      "answers.ability": "confident",
    };
    must(await saveSheet(shop.as(shop.secondDesk), { sheetId, patch, baseVersion: version }));
    const second = must(await createQuote(shop.as(shop.secondDesk), { sheetId }));
    expect(second.quote.customer.customerId).toBe(first.quote.customer.customerId);
    expect(must(await findByPhone(shop.as(shop.desk), { phone: "3035550101" })).quotes).toHaveLength(2);
  });
});
