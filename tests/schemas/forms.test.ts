/** What a form says when something is wrong: the field, the value, the limit. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { z } from "zod";
import { heightCm, massKg } from "#engine/units";
import {
  acceptQuoteSchema,
  answersSchema,
  checkSheetField,
  heightText,
  listDraftsQuery,
  massText,
  pairSpecSchema,
  partialAnswersSchema,
  readHeight,
  readMass,
  sheetPatchSchema,
  wordsFor,
} from "#schemas";
import { plainSpec } from "../engine/pricing/plain-spec";

function messagesOf(schema: z.ZodType, value: unknown): readonly string[] {
  const result = schema.safeParse(value);
  return result.success
    ? []
    : result.error.issues.map((issue) => `${issue.path.map(String).join(".")}: ${issue.message}`);
}

const complete = { heightCm: 182, massKg: 82, ability: "confident" };

describe("answersSchema", () => {
  it("takes the three answers that a recommendation needs, and everything else as an addition", () => {
    expect(messagesOf(answersSchema, complete)).toEqual([]);
    expect(messagesOf(answersSchema, { ...complete, offPistePercent: 40, currentSki: { flex: "too soft" } })).toEqual(
      [],
    );
    expect(messagesOf(answersSchema, { heightCm: 182, ability: "confident" })).toEqual([
      "massKg: Mass must be a number from 15 to 300 kg, not nothing",
    ]);
    expect(messagesOf(partialAnswersSchema, {})).toEqual([]);
  });

  it("names field, value and limit", () => {
    expect(messagesOf(answersSchema, { ...complete, heightCm: 1820 })).toEqual([
      "heightCm: Height 1820 cm is above 250 cm",
    ]);
    expect(messagesOf(answersSchema, { ...complete, massKg: "82" })).toEqual([
      'massKg: Mass must be a number from 15 to 300 kg, not "82"',
    ]);
    expect(messagesOf(answersSchema, { ...complete, ability: "good" })).toEqual([
      'ability: Ability "good" is not one of learning, improving, confident, expert',
    ]);
  });

  it("cannot take a field that nobody asked for", () => {
    expect(messagesOf(answersSchema, { ...complete, releaseValue: 8 })[0]).toContain("releaseValue");
  });

  it("cannot take a measure that differs from what was typed", () => {
    const typed = { mass: { unit: "lb", lb: 180 } };
    expect(messagesOf(answersSchema, { ...complete, massKg: massKg({ unit: "lb", lb: 180 }), typed })).toEqual([]);
    expect(messagesOf(answersSchema, { ...complete, massKg: 180, typed })[0]).toContain("differs from what was typed");
  });

  it("lets an unlikely body pass: that is a flag, not a slip of the form (scenario 6)", () => {
    expect(messagesOf(answersSchema, { ...complete, heightCm: 180, massKg: 180 })).toEqual([]);
  });
});

describe("readHeight and readMass", () => {
  it.each([
    ["182", "182 cm", 182],
    ["182 cm", "182 cm", 182],
    ["1.82 m", "182 cm", 182],
    ["1,82 m", "182 cm", 182],
    ["5 ft 7", "5 ft 7 in", 170.18],
    ["5'7\"", "5 ft 7 in", 170.18],
    ["5’ 7.5”", "5 ft 7.5 in", 171.45],
    ["6 ft", "6 ft 0 in", 182.88],
  ])("reads %s and says it again as %s", (said, shown, cm) => {
    const read = readHeight(said);
    if (!read.ok) throw new Error(said);
    expect(heightText(read.value)).toBe(shown);
    expect(heightCm(read.value)).toBeCloseTo(cm, 9);
  });

  it.each([
    ["82", "82 kg", 82],
    ["82,5 kg", "82.5 kg", 82.5],
    ["149 lb", "149 lb", 67.585_263_13],
    ["149lbs", "149 lb", 67.585_263_13],
  ])("reads %s and says it again as %s", (said, shown, kg) => {
    const read = readMass(said);
    if (!read.ok) throw new Error(said);
    expect(massText(read.value)).toBe(shown);
    expect(massKg(read.value)).toBeCloseTo(kg, 6);
  });

  it("says again what was typed, for every half inch and pound (scenario 5)", () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 7 }), fc.integer({ min: 0, max: 23 }), (feet, halves) => {
        const said = `${feet} ft ${halves / 2} in`;
        const read = readHeight(said);
        expect(read.ok && heightText(read.value)).toBe(said);
      }),
    );
    fc.assert(
      fc.property(fc.integer({ min: 40, max: 600 }), (pounds) => {
        const read = readMass(`${pounds} lb`);
        expect(read.ok && massText(read.value)).toBe(`${pounds} lb`);
      }),
    );
  });

  it("cannot read a guess", () => {
    expect(readHeight("tall")).toMatchObject({ ok: false, refusal: { code: "measure-not-understood", value: "tall" } });
    expect(readMass("heavy")).toMatchObject({ ok: false, refusal: { path: "massKg" } });
  });
});

describe("checkSheetField", () => {
  it("checks one field and clears it by null", () => {
    expect(checkSheetField("answers.offPistePercent", 40)).toEqual({ ok: true, value: 40 });
    expect(checkSheetField("answers.offPistePercent", null)).toEqual({ ok: true, value: null });
    expect(checkSheetField("answers.offPistePercent", 140)).toMatchObject({
      ok: false,
      refusal: {
        code: "invalid-field",
        path: "answers.offPistePercent",
        value: 140,
        message: "Share off the piste 140 % is above 100 %",
      },
    });
  });

  it("points into a field that has parts", () => {
    expect(checkSheetField("choices.mount", { offsetMm: 400 })).toMatchObject({
      refusal: { path: "choices.mount.offsetMm" },
    });
    expect(checkSheetField("answers.pin", 1)).toMatchObject({ refusal: { path: "answers.pin" } });
  });

  it("checks a whole patch before any of it counts", () => {
    const patch = { "answers.heightCm": 182, "contact.email": "nobody", "choices.model": "Midlow 95" };
    expect(messagesOf(sheetPatchSchema, { patch, baseVersion: 3 }).map((message) => message.split(":")[0])).toEqual([
      "patch.contact.email",
      "patch.choices.model",
    ]);
  });

  it("cannot let the browser say who approved a discount", () => {
    const discount = { code: "pro-deal", reason: "guide" };
    expect(checkSheetField("choices.discounts", [discount])).toMatchObject({ ok: true });
    expect(checkSheetField("choices.discounts", [{ ...discount, approvedBy: "owner" }])).toMatchObject({ ok: false });
  });
});

describe("pairSpecSchema", () => {
  it("takes a complete pair and names what a counterchange lacks", () => {
    expect(messagesOf(pairSpecSchema, plainSpec)).toEqual([]);
    const counterchange = { left: "black", right: "black", inlay: "counterchange" };
    expect(messagesOf(pairSpecSchema, { ...plainSpec, base: counterchange })).toEqual([
      "base.inlayText: Letters in the base are missing",
      "base.right: A counterchange needs two colours: left and right base have the same one",
    ]);
  });
});

describe("forms and queries", () => {
  it("cannot accept a quote without both ticks", () => {
    expect(messagesOf(acceptQuoteSchema, { name: "Ada", acceptsTerms: true, sawWithdrawalNotice: false })).toEqual([
      "sawWithdrawalNotice: Withdrawal notice: please tick",
    ]);
  });

  it("reads an empty search form as no search", () => {
    expect(listDraftsQuery.parse({ text: "", page: "" })).toEqual({});
    expect(listDraftsQuery.parse({ text: " Moor ", page: "2" })).toEqual({ text: "Moor", page: 2 });
    expect(messagesOf(listDraftsQuery, { page: "-1" })).toEqual(['page: Page "-1" must be a whole number from 1']);
  });
});

describe("wordsFor", () => {
  const words = { "no-price": "{item} has no price in {priceBook}.", unknown: "Not possible ({code})." };

  it("puts the parameters into the words of the code", () => {
    expect(wordsFor({ code: "no-price", item: "flax", priceBook: "PB-3" }, words)).toBe("flax has no price in PB-3.");
  });

  it("lets a flag speak by its own message and names a code without words", () => {
    expect(wordsFor({ code: "flex-out-of-range", message: "Too stiff." }, words)).toBe("Too stiff.");
    expect(wordsFor({ code: "odd" }, words)).toBe("Not possible (odd).");
  });
});
