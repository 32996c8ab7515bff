/** What a form says when something is wrong: the field, the value, the limit. */
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

describe("heightText and massText", () => {
  it("say again what was typed", () => {
    expect(heightText({ unit: "cm", cm: 182 })).toBe("182 cm");
    expect(heightText({ unit: "ft-in", feet: 5, inches: 7.5 })).toBe("5 ft 7.5 in");
    expect(heightText({ unit: "ft-in", feet: 6, inches: 0 })).toBe("6 ft 0 in");
    expect(massText({ unit: "kg", kg: 82.5 })).toBe("82.5 kg");
    expect(massText({ unit: "lb", lb: 149 })).toBe("149 lb");
  });

  it("name the measure that the schema keeps in SI: an inch is 25.4 mm, a pound 0.45359237 kg (international yard and pound, 1959)", () => {
    expect(heightCm({ unit: "ft-in", feet: 5, inches: 7 })).toBeCloseTo(67 * 2.54, 9);
    expect(massKg({ unit: "lb", lb: 149 })).toBeCloseTo(149 * 0.45359237, 9);
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
