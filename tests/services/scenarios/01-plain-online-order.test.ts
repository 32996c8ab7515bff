import { describe, expect, it } from "vitest";
import { guestByToken } from "#auth";
import { assess, openSheet, saveSheet } from "#services";
import { plainAnswers } from "../../support/builders/sale";
import { must, openShop, shopNow } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();

// Expected values: the shop's own fit and price rules (content/catalog), worked by hand.
describe("scenario 1: plain online order", () => {
  it("proposes Midlow 84 at 174 and Midlow 95 at 178 with k 1.07, a PB-3 price and a date range", async () => {
    const shop = await openShop(db());
    const opened = must(await openSheet(shop.visitor, { channel: "online" }));
    const guest = await guestByToken(opened.token ?? "", shopNow);
    if (guest === null) throw new Error("the link opens nothing");
    const skier = shop.as(guest.actor);
    const { sheetId, version } = opened.sheet;
    must(await saveSheet(skier, { sheetId, patch: plainAnswers, baseVersion: version }));

    const { assessment, dateRange, stoppedBy } = must(await assess(skier, { sheetId }));
    const choices = assessment.recommendation?.choices ?? [];
    expect(choices.map(({ model, lengthCm }) => ({ model, lengthCm }))).toEqual(
      expect.arrayContaining([
        { model: "midlow-84", lengthCm: 174 },
        { model: "midlow-95", lengthCm: 178 },
      ]),
    );
    const narrow = choices.find((choice) => choice.model === "midlow-84");
    // o = −7 − 0.2·7 + 0.2·(82 − 24.5·1.82²) = −8.231; L* = 182 − 9.5 + 12.5 tanh(1.269/12.5) = 173.8; k = (91/84)^0.8 = 1.066
    expect(narrow?.wantedLengthCm).toBeCloseTo(173.8, 1);
    expect(narrow?.flexRatio).toBeCloseTo(1.066, 2);
    expect(narrow).toMatchObject({ flexClass: 3, nearClass: 4 });
    expect(narrow?.reasons.length).toBeGreaterThan(3);
    expect(assessment.price).toMatchObject({ priceBook: "PB-3" });
    expect(dateRange).not.toBeNull();
    expect(stoppedBy).toEqual([]);
  });
});
