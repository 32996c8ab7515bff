/** What a ski will feel like: half-open limits, each word from its own number alone. Limits: common practice, no source. */
import { describe, expect, it } from "vitest";
import words from "#content/copy/sheet.json";
import { type FeelAbout, feelOf, feelRules } from "#engine/assessment";
import { shapeAtLength } from "#engine/geometry";
import { catalog } from "../demo-catalog";

const model = catalog.build.models.find(({ id }) => id === "midlow-95");
if (!model) throw new Error("no midlow-95");
const shape = shapeAtLength(model.shape, 178);

/** R 16 m, 90 mm, 178 cm of the skier's own stiffness, 9.5 g/cm: the middle word everywhere. */
interface Numbers {
  readonly radiusM?: number;
  readonly waistMm?: number;
  readonly flexRatio?: number;
  readonly ownRatio?: number;
  readonly gramsPerCm?: number;
}
function wordOf(about: FeelAbout, { radiusM = 16, waistMm = 90, flexRatio = 1, ownRatio, gramsPerCm = 9.5 }: Numbers) {
  const seen = feelOf(
    { flexRatio, lengthCm: 200 },
    { ...shape, sidecutRadiusMm: radiusM * 1000, waistWidthMm: waistMm },
    { massKg: (gramsPerCm * 200) / 1000 },
    ownRatio,
  );
  return seen.find((each) => each.about === about)?.word;
}

describe("what a ski feels like", () => {
  it.each([
    ["turns", { radiusM: 14.499 }, "short"],
    ["turns", { radiusM: 14.5 }, "medium"],
    ["turns", { radiusM: 18.499 }, "medium"],
    ["turns", { radiusM: 18.5 }, "long"],
    ["snow", { waistMm: 79.9 }, "hard"],
    ["snow", { waistMm: 80 }, "mixed"],
    ["snow", { waistMm: 99.9 }, "mixed"],
    ["snow", { waistMm: 100 }, "soft"],
    ["flex", { flexRatio: 0.929 }, "softer"],
    ["flex", { flexRatio: 0.93 }, "yours"],
    ["flex", { flexRatio: 1.069 }, "yours"],
    ["flex", { flexRatio: 1.07 }, "stiffer"],
    // Against what the skier's own answers ask for, not against the model.
    ["flex", { flexRatio: 1.2, ownRatio: 1.2 }, "yours"],
    ["flex", { flexRatio: 1, ownRatio: 1.2 }, "softer"],
    ["swing", { gramsPerCm: 8.49 }, "light"],
    ["swing", { gramsPerCm: 8.5 }, "middling"],
    ["swing", { gramsPerCm: 10.39 }, "middling"],
    ["swing", { gramsPerCm: 10.4 }, "solid"],
  ] as const)("%s of %o: %s", (about, given, word) => {
    expect(wordOf(about, given)).toBe(word);
  });

  it("says one word of each, in one order, from its own number alone", () => {
    expect(feelOf({ flexRatio: 1.1, lengthCm: 178 }, shape, { massKg: 1.78 })).toEqual([
      { about: "turns", value: shape.sidecutRadiusMm / 1000, word: expect.any(String) },
      { about: "snow", value: 95, word: "mixed" },
      { about: "flex", value: 1.1, word: "stiffer" },
      { about: "swing", value: 10, word: "middling" },
    ]);
    for (const about of ["turns", "snow", "flex", "swing"] as const)
      expect(wordOf(about, {})).toBe(feelRules.find((rule) => rule.about === about)?.words[1]);
  });

  it("has words for all of it", () => {
    for (const { about, words: kinds } of feelRules) expect(Object.keys(words.feel[about])).toEqual([...kinds]);
    expect(words.feel.sentence.match(/\{(\w+)\}/g)?.toSorted()).toEqual(["{flex}", "{snow}", "{swing}", "{turns}"]);
  });
});
