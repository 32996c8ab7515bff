/** What people type and what they are told: measures, fields, queries and words, by hand from the forms they are said in. */
import { describe, expect, it } from "vitest";
import {
  callBackSchema,
  heightText,
  listDraftsQuery,
  listOrdersQuery,
  listQuotesQuery,
  massText,
  wordsFor,
} from "#schemas";
import { catalogId, idListField, idsField, numberIn, oneOf, percent, textIn, yesOrNo } from "#schemas/fields";
import { answerPaths, checkSheetField, sheetPatchSchema } from "#schemas/sheet-fields";
import { copyFileSchema, refusalWordsSchema } from "#schemas/words";

const messageOf = (
  schema: {
    safeParse: (value: unknown) => { success: boolean; error?: { issues: readonly { message: string }[] } | undefined };
  },
  value: unknown,
) => schema.safeParse(value).error?.issues[0]?.message ?? "accepted";

describe("heights and masses as they are said", () => {
  it("are written as they were said, with two decimals at most", () => {
    expect(heightText({ unit: "cm", cm: 182.456 })).toBe("182.46 cm");
    expect(heightText({ unit: "cm", cm: 182 })).toBe("182 cm");
    expect(heightText({ unit: "ft-in", feet: 5, inches: 7.5 })).toBe("5 ft 7.5 in");
    expect(massText({ unit: "kg", kg: 82.1 })).toBe("82.1 kg");
    expect(massText({ unit: "lb", lb: 149.006 })).toBe("149.01 lb");
  });
});

describe("fields tell what was given and what is allowed", () => {
  const age = numberIn({ label: "Age", unit: "years", min: 3, max: 99, whole: true });
  const share = numberIn({ label: "Share", min: 0, max: 1 });

  it.each<[string, Parameters<typeof messageOf>[0], unknown, string]>([
    ["least", age, 3, "accepted"],
    ["most", age, 99, "accepted"],
    ["under", age, 2, "Age 2 years is below 3 years"],
    ["over", age, 100, "Age 100 years is above 99 years"],
    ["part", age, 3.5, "Age 3.5 must be a whole number"],
    ["no number", age, "x", 'Age must be a number from 3 to 99 years, not "x"'],
    ["nothing", age, undefined, "Age must be a number from 3 to 99 years, not nothing"],
    ["not finite", age, Number.NaN, "Age must be a number from 3 to 99 years, not null"],
    ["a part of a share", share, 0.5, "accepted"],
    ["no unit", share, 2, "Share 2 is above 1"],
    ["a percent", percent("Off"), 101, "Off 101 % is above 100 %"],
    ["no percent", percent("Off"), -1, "Off -1 % is below 0 %"],
    ["a word", oneOf("Colour", ["red", "blue"]), "green", 'Colour "green" is not one of red, blue'],
    ["a switch", yesOrNo("Metal"), "yes", 'Metal must be true or false, not "yes"'],
    ["an id", catalogId("Core"), "Aspen Ash", 'Core "Aspen Ash" must be lower-case letters, digits and single hyphens'],
    ["two hyphens", catalogId("Core"), "a--b", 'Core "a--b" must be lower-case letters, digits and single hyphens'],
    ["an id of 60", catalogId("Core"), "a".repeat(60), "accepted"],
    ["an id of 61", catalogId("Core"), "a".repeat(61), "Core is longer than 60 characters"],
    ["an empty line", textIn("Name", 1, 5), "  ", "Name is missing"],
    ["a short line", textIn("Name", 3, 5), "ab", "Name needs at least 3 characters"],
    ["a line that fits", textIn("Name", 3, 5), " abcde ", "accepted"],
    ["a long line", textIn("Name", 1, 5), "abcdef", "Name has 6 characters; at most 5 fit"],
    ["no text", textIn("Name", 1, 5), 7, "Name must be text, not 7"],
  ])("%s", (_what, schema, value, message) => {
    expect(messageOf(schema, value)).toBe(message);
  });

  it("what stands in a message is cut at 60 letters", () => {
    expect(messageOf(yesOrNo("Metal"), "x".repeat(80))).toBe(`Metal must be true or false, not "${"x".repeat(60)}"`);
  });

  it("ticked rows come as nothing, one or several; one hidden field holds them with commas", () => {
    expect([undefined, "a", ["a", "b"]].map((sent) => idsField.parse(sent))).toEqual([[], ["a"], ["a", "b"]]);
    expect(idsField.safeParse(Array.from({ length: 201 }, () => "a")).success).toBe(false);
    expect(idsField.safeParse(Array.from({ length: 200 }, () => "a".repeat(60))).success).toBe(true);
    expect(idsField.safeParse("a".repeat(61)).success).toBe(false);
    expect(idListField.parse("a,,b,")).toEqual(["a", "b"]);
    expect(idListField.parse("")).toEqual([]);
  });
});

describe("queries", () => {
  it("leave out what is empty and type the rest", () => {
    expect(listDraftsQuery.parse({ text: "", state: undefined, page: "" })).toEqual({});
    expect(listDraftsQuery.parse({ text: " fen ", state: "quoted", page: "12" })).toEqual({
      text: "fen",
      state: "quoted",
      page: 12,
    });
    expect(listQuotesQuery.parse({ onOldBook: "true" })).toEqual({ onOldBook: true });
    expect(listQuotesQuery.parse({ onOldBook: "false", state: "expired" })).toEqual({
      onOldBook: false,
      state: "expired",
    });
    expect(listOrdersQuery.parse({ state: "shipped", page: "999999" })).toEqual({ state: "shipped", page: 999_999 });
  });

  it.each([
    [listDraftsQuery, { page: "0" }],
    [listDraftsQuery, { page: "1000000" }],
    [listDraftsQuery, { page: "1.5" }],
    [listDraftsQuery, { state: "expired" }],
    [listDraftsQuery, { other: "1" }],
    [listDraftsQuery, { text: "x".repeat(121) }],
    [listDraftsQuery, "text"],
    [listDraftsQuery, null],
    [listQuotesQuery, { onOldBook: "yes" }],
    [listQuotesQuery, { state: "quoted" }],
    [listOrdersQuery, { waitingFor: "rain" }],
  ])("refuse what is wrong (%#)", (schema, input) => {
    expect(schema.safeParse(input).success).toBe(false);
  });
});

describe("words of refusals", () => {
  const words = { unknown: "Something is wrong ({code})", "too-long": "{given} is more than {most}: {list}" };

  it("put parameters in their places: whole numbers whole, others to a tenth, lists with commas, nothing as a dash", () => {
    expect(wordsFor({ code: "too-long", given: 3, most: 2.25, list: ["a", 1.26, null] }, words)).toBe(
      "3 is more than 2.3: a, 1.3, –",
    );
    expect(wordsFor({ code: "too-long", given: true, most: { a: 1 } }, words)).toBe('true is more than {"a":1}: –');
  });

  it("fall back on the refusal's own message, then on its code", () => {
    expect(wordsFor({ code: "other", message: "Own words" }, words)).toBe("Own words");
    expect(wordsFor({ code: "other", message: 5 }, words)).toBe("Something is wrong (other)");
    expect(wordsFor({ code: "other" }, { "too-long": "x" } as never)).toBe("other");
    expect(wordsFor({ code: "too-long", message: "no", given: "g", most: "m", list: [] }, words)).toBe(
      "g is more than m: ",
    );
  });

  it("a file of words has whole places, no empty word, and words for what is unknown", () => {
    expect(copyFileSchema.safeParse({ a: ["x {y}", { b: "z" }] }).success).toBe(true);
    for (const wrong of ["", "a {b", "a }", "{a b}", { a: 5 }])
      expect(copyFileSchema.safeParse(wrong).success).toBe(false);
    expect(refusalWordsSchema.safeParse({ unknown: "?" }).success).toBe(true);
    expect(refusalWordsSchema.safeParse({ "a-b": "?" }).success).toBe(false);
    expect(refusalWordsSchema.safeParse({ unknown: "?", "A B": "x" }).success).toBe(false);
  });
});

describe("fields of a sheet", () => {
  it("are known by their path, cleared by null, and refused by name", () => {
    expect(checkSheetField("answers.heightCm", 182)).toEqual({ ok: true, value: 182 });
    expect(checkSheetField("answers.heightCm", null)).toEqual({ ok: true, value: null });
    expect(checkSheetField("asked.heightCm", "refused")).toEqual({ ok: true, value: "refused" });
    expect(checkSheetField("notes", "")).toEqual({ ok: true, value: "" });
    expect(checkSheetField("answers.shoe", 1)).toEqual({
      ok: false,
      refusal: { code: "invalid-field", path: "answers.shoe", value: 1, message: 'there is no field "answers.shoe"' },
    });
    expect(checkSheetField("answers.heightCm", "x")).toMatchObject({
      ok: false,
      refusal: { path: "answers.heightCm", value: "x" },
    });
    // A field inside a field is named to its end.
    expect(checkSheetField("contact.address", { lines: [""], town: "T", postcode: "1", country: "XX" })).toMatchObject({
      ok: false,
      refusal: { path: "contact.address.lines.0", message: "Address line is missing" },
    });
    expect(answerPaths).toContain("answers.massKg");
    expect(answerPaths.every((path) => path.startsWith("answers.") && path !== "answers.typed")).toBe(true);
  });

  it("are checked all before any is kept", () => {
    const sent = (patch: Record<string, unknown>, baseVersion: unknown = 0) =>
      sheetPatchSchema.safeParse({ patch, baseVersion });
    expect(sent({ "answers.massKg": 80, notes: null }).success).toBe(true);
    expect(sent({ "answers.massKg": 80, "answers.shoe": 1 }).error?.issues).toMatchObject([
      { path: ["patch", "answers.shoe"] },
    ]);
    expect(sent({}, 1.5).success).toBe(false);
    expect(sent({}, -1).success).toBe(false);
    expect(sent({ ["x".repeat(61)]: 1 }).success).toBe(false);
  });
});

describe("a call back", () => {
  const sent = (at: string) =>
    callBackSchema.safeParse({ at, reason: "to ask about the boots", phone: "01234 567" }).success;

  it("is asked for at an instant, with the zone it is meant in", () => {
    expect([
      sent("2026-11-30T09:00:00Z"),
      sent("2026-11-30T09:00:00+01:00"),
      sent("2026-11-30T09:00:00"),
      sent("2026-11-30"),
      sent("tomorrow"),
    ]).toEqual([true, true, false, false, false]);
  });
});
