import { describe, expect, it } from "vitest";
import { assess, readSheet, saveSheet } from "#services";
import { filledSheet } from "../../support/builders/sale";
import { must, openShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();

describe("scenario 6: unit slip", () => {
  it("asks whether 180 kg was meant as 180 lb, and one tap puts it right with nothing lost", async () => {
    const shop = await openShop(db());
    const desk = shop.as(shop.desk);
    const sheetId = await filledSheet(shop, {
      answers: { "typed.height": { unit: "cm", cm: 180 }, "typed.mass": { unit: "kg", kg: 180 } },
    });
    const { assessment, stoppedBy } = must(await assess(desk, { sheetId }));
    // BMI = 180 / 1.8² = 55.6
    const suggestion = assessment.recommendation?.flags.find((flag) => flag.suggestion !== undefined)?.suggestion;
    expect(suggestion).toMatchObject({ path: "massKg", typed: { mass: { unit: "lb", lb: 180 } } });
    expect(Number(suggestion?.value)).toBeCloseTo(81.6, 1);
    expect(stoppedBy.length).toBeGreaterThan(0);

    const before = must(await readSheet(desk, { sheetId }));
    const patch = { "typed.mass": suggestion?.typed?.mass };
    const { sheet } = must(await saveSheet(desk, { sheetId, patch, baseVersion: before.version }));
    expect(sheet.answers.massKg).toBeCloseTo(81.65, 2);
    expect(sheet.answers).toMatchObject({ heightCm: 180, ability: "confident", offPistePercent: 40 });
    const after = must(await assess(desk, { sheetId }));
    expect(after.stoppedBy).toEqual([]);
  });
});
