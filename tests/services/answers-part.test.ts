/** A link that opens the skier's answers on a sheet and nothing else of it. */
import { describe, expect, it } from "vitest";
import { guestByToken } from "#auth";
import {
  createQuote,
  readAnswers,
  readLinkStanding,
  readSheet,
  reissueLink,
  saveAnswers,
  saveSheet,
  turnDown,
} from "#services";
import { filledSheet } from "../support/builders/sale";
import { must, openShop, shopNow } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

async function lent() {
  const shop = await openShop(db());
  const desk = shop.as(shop.desk);
  const sheetId = await filledSheet(shop);
  must(await saveSheet(desk, { sheetId, patch: { notes: "asks for a discount" }, baseVersion: 99 }));
  const { token } = must(await reissueLink(desk, { kind: "answers", id: sheetId }));
  const found = await guestByToken(token, shopNow);
  if (found === null) throw new Error("the link opens nothing");
  expect(found.subject).toEqual({ kind: "answers", id: sheetId });
  return { shop, desk, sheetId, token, skier: shop.as(found.actor) };
}

describe("the link to the answers", () => {
  it("reads and changes answers, and the desk sees them at once", async () => {
    const { desk, sheetId, skier } = await lent();
    const before = must(await readAnswers(skier, { sheetId }));
    const patch = { "answers.ability": "expert", "typed.height": { unit: "ft-in", feet: 5, inches: 10 } };
    const saved = must(await saveAnswers(skier, { sheetId, patch, baseVersion: before.version }));
    expect(saved.conflicts).toEqual([]);
    // 70 in × 2.54
    expect(must(await readSheet(desk, { sheetId })).answers).toMatchObject({ ability: "expert", heightCm: 177.8 });
  });

  it("shows no choice, contact, note, number or desk, and takes none", async () => {
    const { sheetId, skier } = await lent();
    const view = must(await readAnswers(skier, { sheetId }));
    expect(view).toMatchObject({ choices: {}, contact: {}, notes: null, lease: null, quotes: [], customerId: null });
    expect(Object.keys(view.fields).filter((path) => !/^(answers|typed|said)\./.test(path))).toEqual([]);
    expect(JSON.stringify({ ...view, fields: {} })).not.toMatch(/Robin|303 555|discount/);
    for (const patch of [{ notes: "x" }, { "contact.phone": "303 555 0199" }, { "choices.lengthCm": 170 }]) {
      expect(await saveAnswers(skier, { sheetId, patch, baseVersion: 99 })).toMatchObject({
        ok: false,
        refusal: { code: "invalid-field" },
      });
    }
    expect(await readSheet(skier, { sheetId })).toMatchObject({ refusal: { code: "not-allowed" } });
    expect(await saveSheet(skier, { sheetId, patch: {}, baseVersion: 1 })).toMatchObject({
      refusal: { code: "not-allowed" },
    });
    expect(await createQuote(skier, { sheetId })).toMatchObject({ refusal: { code: "not-allowed" } });
  });

  it("ends with the quote", async () => {
    const quoted = await lent();
    must(await createQuote(quoted.desk, { sheetId: quoted.sheetId }));
    expect(await guestByToken(quoted.token, shopNow)).toBeNull();
    expect(await readAnswers(quoted.skier, { sheetId: quoted.sheetId })).toMatchObject({
      refusal: { code: "sheet-closed", state: "quoted" },
    });
  });

  it("ends when the sheet is turned down", async () => {
    const declined = await lent();
    must(await turnDown(declined.desk, { sheetId: declined.sheetId, reason: "wants a snowboard" }));
    expect(await guestByToken(declined.token, shopNow)).toBeNull();
    const standing = must(await readLinkStanding(declined.desk, { kind: "answers", id: declined.sheetId }));
    expect(standing.open).toBe(0);
  });
});
