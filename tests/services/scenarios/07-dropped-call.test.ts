import { describe, expect, it } from "vitest";
import { createQuote, deskOverview, listDrafts, openSheet, readSheet, saveSheet, setCallBack } from "#services";
import { quotedSheet } from "../../support/builders/sale";
import { must, openShop, shopNow } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();

describe("scenario 7: dropped call", () => {
  it("keeps every answer, the reason and the number; goes on at another desk; burns no quote number", async () => {
    const shop = await openShop(db());
    const first = must(
      await openSheet(shop.as(shop.desk), { channel: "phone", phone: "(303) 555-0101", name: "Robin Alder" }),
    );
    const { sheetId } = first.sheet;
    const asked: Readonly<Record<string, unknown>> = {
      "typed.height": { unit: "cm", cm: 182 },
      "typed.mass": { unit: "kg", kg: 82 },
      "answers.daysTotal": 200,
      "answers.ability": "confident",
      "answers.offPistePercent": 40,
      "answers.homeSnow": "mixed",
      "answers.temperament": "steady",
    };
    for (const [path, value] of Object.entries(asked)) {
      must(await saveSheet(shop.as(shop.desk), { sheetId, patch: { [path]: value }, baseVersion: 1 }));
    }
    const at = new Date(shopNow.getTime() + 2 * 3_600_000);
    must(
      await setCallBack(shop.as(shop.desk), {
        sheetId,
        at,
        reason: "line dropped after question 7",
        phone: "303 555 0101",
      }),
    );

    const desk2 = shop.as(shop.secondDesk);
    const drafts = must(await listDrafts(desk2, {}));
    expect(drafts.rows[0]).toMatchObject({ sheetId, callBackReason: "line dropped after question 7" });
    expect(must(await deskOverview(desk2)).callBacks[0]).toMatchObject({ sheetId, phone: "303 555 0101" });
    const resumed = must(await readSheet(desk2, { sheetId }));
    expect(resumed.answers).toMatchObject({ heightCm: 182, massKg: 82, daysTotal: 200, temperament: "steady" });
    expect(resumed.answers.turnSize).toBeUndefined();
    must(await saveSheet(desk2, { sheetId, patch: { "answers.turnSize": "medium" }, baseVersion: resumed.version }));

    const other = await quotedSheet(shop, { phone: "303 555 0199", name: "Wren Sorrel" });
    const quoted = must(await createQuote(desk2, { sheetId }));
    const numberOf = (text: string) => Number(text.slice("Q-".length));
    expect(numberOf(quoted.quote.number)).toBe(numberOf(other.quote.number) + 1);
  });
});
