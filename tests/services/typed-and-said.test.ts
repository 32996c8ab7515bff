/** What was typed on a sheet is there, also where nobody could read it or a choice is not finished; and two desks are told apart. */
import { describe, expect, it } from "vitest";
import { callBackSchema } from "#schemas";
import { assess, openSheet, readSheet, saveSheet, setCallBack } from "#services";
import { filledSheet } from "../support/builders/sale";
import { must, openShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

describe("a measure in its own words", () => {
  it("stays beside the value that was there, and goes when the value comes from elsewhere", async () => {
    const shop = await openShop(db());
    const desk = shop.as(shop.desk);
    const { sheet } = must(await openSheet(desk, { channel: "phone" }));
    const save = async (patch: Readonly<Record<string, unknown>>) =>
      must(await saveSheet(desk, { sheetId: sheet.sheetId, patch, baseVersion: 99 })).sheet;
    // 12 × 14 + 3 = 171 lb, and 171 × 0.45359237 = 77.56429527 kg.
    const good = await save({ "typed.mass": { unit: "lb", lb: 171 }, "said.mass": "12 st 3" });
    expect(good.said).toEqual({ mass: "12 st 3" });
    expect(good.answers.massKg).toBeCloseTo(77.56429527, 9);
    const unread = await save({ "said.mass": "20 stone x" });
    expect(unread.said).toEqual({ mass: "20 stone x" });
    expect(unread.typed).toEqual({ mass: { unit: "lb", lb: 171 } });
    expect(must(await readSheet(desk, { sheetId: sheet.sheetId })).said).toEqual({ mass: "20 stone x" });
    // A correction by one tap says the value and no words.
    const put = await save({ "typed.mass": { unit: "kg", kg: 80 } });
    expect([put.said, put.answers.massKg]).toEqual([{}, 80]);
    const long = await saveSheet(desk, {
      sheetId: sheet.sheetId,
      patch: { "said.mass": "x".repeat(61) },
      baseVersion: 99,
    });
    expect(long).toMatchObject({ ok: false, refusal: { code: "invalid-field", path: "said.mass" } });
  });

  it("is told once when two desks changed it, by what was typed", async () => {
    const shop = await openShop(db());
    const { sheet } = must(await openSheet(shop.as(shop.desk), { channel: "phone" }));
    const { sheetId, version: baseVersion } = sheet;
    const kg = (value: number) => ({ "typed.mass": { unit: "kg", kg: value }, "said.mass": `${value}` });
    must(await saveSheet(shop.as(shop.desk), { sheetId, patch: kg(80), baseVersion }));
    const other = must(await saveSheet(shop.as(shop.secondDesk), { sheetId, patch: kg(82), baseVersion }));
    expect(other.conflicts.map(({ path, by }) => [path, by])).toEqual([["typed.mass", "Desk 1"]]);
    expect(other.savedPaths).toEqual([]);
    // The same measure in other words is no question.
    const words = { "typed.mass": { unit: "kg", kg: 80 }, "said.mass": "80 kg" };
    expect(must(await saveSheet(shop.as(shop.secondDesk), { sheetId, patch: words, baseVersion })).conflicts).toEqual(
      [],
    );
    // Words that nobody can read, over words that came meanwhile, are one.
    const unread = { "said.mass": "heavy" };
    const told = must(await saveSheet(shop.as(shop.secondDesk), { sheetId, patch: unread, baseVersion })).conflicts;
    expect(told.map(({ path }) => path)).toEqual(["said.mass"]);
  });
});

describe("a call that goes on later", () => {
  it("may be a letter: the address is kept, and the number by which the sheet is found stays", async () => {
    const shop = await openShop(db());
    const desk = shop.as(shop.desk);
    const { sheet } = must(await openSheet(desk, { channel: "phone", phone: "303 555 0144" }));
    const at = new Date("2026-11-12T17:00:00.000Z");
    const back = { sheetId: sheet.sheetId, at, reason: "rather by mail", phone: "robin@alder.example" };
    expect(must(await setCallBack(desk, back)).callBack?.phone).toBe("robin@alder.example");
    const found = must(await openSheet(desk, { channel: "phone", phone: "303 555 0144" }));
    expect(found.sheet.sheetId).toBe(sheet.sheetId);
    const reach = (phone: string) => callBackSchema.safeParse({ at: at.toISOString(), reason: "later", phone }).success;
    expect(["303 555 0144", "robin@alder.example"].map(reach)).toEqual([true, true]);
    expect(["robin@", "12", "call me"].map(reach)).toEqual([false, false, false]);
  });
});

describe("a choice that is not finished", () => {
  it("is kept, costs what it will cost, and holds up the sale on every device", async () => {
    const shop = await openShop(db());
    const desk = shop.as(shop.desk);
    const sheetId = await filledSheet(shop);
    const plain = must(await assess(desk, { sheetId })).assessment;
    const left = plain.spec?.base.left ?? "";
    // Graphite black and bone white are two of the demo's colours.
    const base = { left, right: left === "black" ? "bone" : "black", inlay: "counterchange" };
    const saved = await saveSheet(desk, {
      sheetId,
      patch: { "choices.base": base },
      baseVersion: 99,
    });
    expect(must(saved).sheet.choices.base?.inlay).toBe("counterchange");
    const unfinished = must(await assess(shop.as(shop.secondDesk), { sheetId }));
    const letters = unfinished.assessment.price?.lines.filter(({ code }) => code === "inlay-counterchange");
    expect(letters).toHaveLength(1);
    expect(unfinished.stoppedBy.map(({ code }) => code)).toContain("inlay-needs-text");
    const finished = { ...must(saved).sheet.choices.base, inlayText: "ROBIN" };
    must(await saveSheet(desk, { sheetId, patch: { "choices.base": finished }, baseVersion: 99 }));
    const whole = must(await assess(desk, { sheetId }));
    expect(whole.assessment.price?.totalCents).toBe(unfinished.assessment.price?.totalCents);
    expect(whole.stoppedBy).toEqual([]);
  });
});
