/** Whatever stands in a field of a sheet is told in the words of the page, never in ids of the catalogue. */
import { describe, expect, it } from "vitest";
import { fieldName, seenText, valueText } from "#app/_ui/sheet/field-words.ts";
import words from "#content/copy/sheet.json";
import { coreIdFor } from "#engine/configuration";
import { answerFields, choiceFields } from "#schemas";
import { catalog, specOf } from "../../engine/demo-catalog";

const known = { catalog, words };
const { build, priceBook } = catalog;

describe("a field", () => {
  const paths = [
    ...Object.keys(answerFields).map((key) => `answers.${key}`),
    ...Object.keys(choiceFields).map((key) => `choices.${key}`),
  ].filter((path) => !/asksRelease|unusualUse|wantsEarlier|answers\.typed/.test(path));

  it.each(paths)("%s has a name of its own", (path) => {
    expect(fieldName(path, words)).not.toBe(words.values.other);
  });

  it("shows no id of anything that is sold", () => {
    const spec = specOf();
    const own = build.blends[0];
    if (own === undefined) throw new Error("no blend");
    const values: readonly (readonly [string, unknown])[] = [
      ...build.models.map(({ id }) => ["choices.model", id] as const),
      ...build.blends.map(({ id }) => ["choices.core", id] as const),
      ["choices.core", coreIdFor({ strips: own.strips, isWindowGrade: false }, build)],
      ["choices.reinforcements", build.reinforcements.map(({ id }) => id)],
      ...(build.rules.plate.choices ?? []).map(({ id }) => ["choices.plate", id] as const),
      ...build.houseGraphics.map(
        ({ id }) => ["choices.graphic", { ...spec.graphic, kind: "house", house: id }] as const,
      ),
      ...build.baseColours.map(({ id }) => ["choices.base", { ...spec.base, left: id, right: id }] as const),
      ["choices.base", { ...spec.base, inlay: "counterchange" }],
      ...Object.keys(priceBook.shippingCents).map((to) => ["choices.destination", to] as const),
      ["choices.discounts", priceBook.discounts.map(({ code }) => ({ code }))],
      ["choices.mount", spec.mount],
      ["choices.finish", spec.finish],
    ];
    const ids = [build.models, build.blends, build.reinforcements, build.houseGraphics, build.baseColours]
      .flat()
      .map(({ id }) => id)
      .filter((id) => id.includes("-"));
    expect(ids.length).toBeGreaterThan(20);
    for (const [path, value] of values) {
      const text = valueText(path, value, known);
      expect([path, text, ids.filter((id) => text.includes(id))]).toEqual([path, text, []]);
      expect(text).not.toMatch(/[{}]|undefined|own:/);
    }
  });

  it("says answers as the page asks them", () => {
    const said = (path: string, value: unknown) => valueText(path, value, known);
    expect(said("answers.ability", "confident")).toBe("confident");
    expect(said("answers.priorities", ["quiet", "light"])).toBe("quiet and light");
    expect(said("answers.turnSize", "long")).toBe("long, 19 m and more");
    expect(said("answers.buyerIsSkier", false)).toBe("no");
    expect(said("answers.currentSki", { lengthCm: 176, flex: "too soft" })).toBe("176 cm, Their flex is too soft");
    expect(said("typed.height", { unit: "ft-in", feet: 5, inches: 10 })).toBe("5 ft 10 in");
    expect(said("said.mass", "20 stone x")).toBe("“20 stone x”");
    expect(said("contact.phone", null)).toBe("nothing");
    // 153,000 cents are 1,530 dollars.
    expect(seenText("price", 153_000, known)).toBe("$1,530.00");
    expect(seenText("date", { p50: "2026-12-10", p90: "2026-12-17" }, known)).toBe("10–17 December 2026");
    expect(seenText("date", null, known)).toBe("nothing");
  });
});
