import { describe, expect, it } from "vitest";
import { assess, createQuote, type SheetId, saveSheet } from "#services";
import { filledSheet } from "../../support/builders/sale";
import { must, openShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();

describe("scenario 15: clear window and a carbon ply on top", () => {
  it("tells the clash, offers ways out with their effect, and sells once one is taken", async () => {
    const shop = await openShop(db());
    const desk = shop.as(shop.desk);
    const sheetId: SheetId = await filledSheet(shop, {
      choices: {
        "choices.model": "midlow-95",
        "choices.core": "aspen-ash-window",
        "choices.reinforcements": ["carbon-biax"],
        "choices.graphic": {
          kind: "house",
          house: "plain",
          layout: "same",
          windows: [{ fromXMm: 300, toXMm: 500, halfWidthMm: 25 }],
        },
      },
    });
    const { assessment } = must(await assess(desk, { sheetId }));
    const codes = assessment.conflicts.map((conflict) => conflict.code);
    expect(codes).toContain("window-under-opaque-ply");
    const clash = assessment.conflicts.find((conflict) => conflict.ways.length > 1);
    expect(clash).toBeDefined();
    expect(clash?.ways.every((way) => way.effect !== undefined)).toBe(true);
    expect(await createQuote(desk, { sheetId })).toMatchObject({ ok: false, refusal: { code: "sale-blocked" } });

    const way = clash?.ways.find((candidate) => candidate.choices.reinforcements !== undefined) ?? clash?.ways[0];
    const patch = Object.fromEntries(
      Object.entries(way?.choices ?? {}).map(([key, value]) => [`choices.${key}`, value]),
    );
    must(await saveSheet(desk, { sheetId, patch, baseVersion: 99 }));
    expect(must(await assess(desk, { sheetId })).stoppedBy).toEqual([]);
    must(await createQuote(desk, { sheetId }));
  });
});
