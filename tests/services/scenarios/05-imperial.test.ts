import { describe, expect, it } from "vitest";
import { assess, readSheet } from "#services";
import { filledSheet } from "../../support/builders/sale";
import { must, openShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();

describe("scenario 5: imperial", () => {
  it("keeps 5 ft 7 in and 149 lb as typed beside 170.18 cm and 67.585 kg", async () => {
    const shop = await openShop(db());
    const height = { unit: "ft-in", feet: 5, inches: 7 };
    const mass = { unit: "lb", lb: 149 };
    const sheetId = await filledSheet(shop, {
      answers: {
        "typed.height": height,
        "typed.mass": mass,
        "answers.ability": "improving",
        "choices.model": "midlow-84",
      },
    });
    const sheet = must(await readSheet(shop.as(shop.secondDesk), { sheetId }));
    // 67 in · 2.54 = 170.18 cm; 149 lb · 0.45359237 = 67.585 kg (international yard and pound agreement, 1959)
    expect(sheet.answers.heightCm).toBeCloseTo(170.18, 6);
    expect(sheet.answers.massKg).toBeCloseTo(67.585, 3);
    expect(sheet.typed).toEqual({ height, mass });
    const { assessment } = must(await assess(shop.as(shop.desk), { sheetId }));
    // L* = 170.18 − 9.5 + 12.5 tanh((−9.710 + 9.5)/12.5) = 160.5 → 158
    expect(assessment.spec).toMatchObject({ model: "midlow-84", lengthCm: 158 });
  });
});
