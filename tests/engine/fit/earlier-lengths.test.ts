/**
 * A release of the first kind finds lengths as it always did: L* = Lref + 0.45 (h − 175) + 0.35 (m − 75) + ability +
 * temperament, cm, by hand beside each row; and knows nothing of pack, age, or flags that came after it.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { gunzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { catalogFromRelease } from "#catalog";
import { type FitAnswers, fitToModel, recommend } from "#engine/fit";

const file = path.resolve(import.meta.dirname, "../../fixtures/stored/releases/1a830b9f560e.json.gz");
const stored: { readonly catalogue: unknown } = JSON.parse(gunzipSync(readFileSync(file)).toString("utf8"));
const { build, fit } = catalogFromRelease(stored.catalogue);

const at = (answers: Partial<FitAnswers>, model = "midlow-84", more: object = {}) =>
  fitToModel({ heightCm: 175, massKg: 75, ability: "confident", ...answers }, { model, ...more }, build, fit);

describe("a stored release", () => {
  it.each<[string, Partial<FitAnswers>, string, number]>([
    ["174", {}, "midlow-84", 174],
    ["174 + 0.45·7 + 0.35·7", { heightCm: 182, massKg: 82 }, "midlow-84", 179.6],
    [
      "170 − 10.35 − 10.85 − 5 − 3",
      { heightCm: 152, massKg: 44, ability: "improving", temperament: "calm" },
      "pathwick-75",
      140.8,
    ],
    [
      "184 + 5.85 + 18.55 + 4 + 3",
      { heightCm: 188, massKg: 128, ability: "expert", temperament: "fast" },
      "ridgefold-106",
      215.4,
    ],
    ["178 + 12.6 − 1.75", { heightCm: 203, massKg: 70 }, "midlow-95", 188.85],
    ["174 − 8 for bumps", { terrain: ["bumps"] }, "midlow-84", 166],
    ["174 − 10, learning by days", { ability: "expert", daysTotal: 14 }, "midlow-84", 164],
    ["174 + 8, too short at 180", { currentSki: { length: "too short", lengthCm: 180 } }, "midlow-84", 182],
    ["174, right at 190", { currentSki: { length: "right", lengthCm: 190 } }, "midlow-84", 174],
  ])("wants %s cm", (_sum, answers, model, wantedCm) => {
    const { choice } = at(answers, model);
    expect(choice.wantedLengthCm).toBeCloseTo(wantedCm, 9);
    const reasons = choice.reasons.filter((reason) => reason.about === "length");
    expect(reasons.reduce((sum, { amount }) => sum + amount, 0)).toBeCloseTo(wantedCm, 9);
  });

  it("stops what it stopped, by the words it had", () => {
    const { flags } = at({ heightCm: 188, massKg: 128, ability: "expert", temperament: "fast" }, "ridgefold-106");
    expect(flags.filter(({ blocks }) => blocks === "sale").map(({ code }) => code)).toEqual([
      "length-out-of-range",
      "flex-out-of-range",
    ]);
    expect(flags[1]?.message).toBe("The measures want 215.4 cm; Ridgefold 106 is built from 168 to 192 cm.");
  });

  it("knows no pack, no years, no length beside the body", () => {
    const [plain, more] = [at({}), at({ packKg: 20, ageYears: 80 }, "midlow-84", { lengthCm: 182 })];
    expect(more.choice).toEqual(plain.choice);
    expect(more.flags).toEqual([]);
    expect(at({ heightCm: 150, massKg: 60 }, "midlow-84", { lengthCm: 182 }).flags).toEqual([]);
  });

  it("still ranks: first the nearest in waist and length", () => {
    const answers: FitAnswers = { heightCm: 182, massKg: 82, ability: "confident", offPistePercent: 40 };
    const { choices, flags } = recommend(answers, build, fit);
    expect(choices.slice(0, 2).map(({ model, lengthCm }) => [model, lengthCm])).toEqual([
      ["midlow-84", 182],
      ["midlow-95", 186],
    ]);
    expect(flags).toEqual([]);
  });
});
