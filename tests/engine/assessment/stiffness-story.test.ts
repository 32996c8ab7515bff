/**
 * "Why this stiff?" against arithmetic by hand, the published springs of the demo line-up and the solver itself.
 *
 * By hand, Midlow 95 at 178 cm for 82 kg, confident:
 *   weight with gear  (82 + 9) kg · 9.80665 m/s² = 892.405 N
 *   k                 (91/84)^0.8 = 1.0661
 *   spring            3.26 N/mm of the reference build (demo-flex.json, independent of this engine) · 1.0661 = 3.4755 N/mm
 *   span              1780 − 175 − 144 = 1461 mm, shoulder to heel
 *   deflection        892.405 / 3.4755 = 256.8 mm, 17.6 % of the span; under 10 kg 98.0665 / 3.4755 = 28.2 mm
 *   edge moment       892.405 N · 95 mm / 2 = 42.39 N·m
 *   GJ for the same twist as the 75 kg reference skier at the same length and width: 91/84 = 1.0833
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bandOf, stiffnessStory, type WhatIfChange } from "#engine/assessment";
import type { Ability, FitAnswers } from "#engine/fit";
import truth from "../../fixtures/truth/demo-flex.json";
import { catalog, solved, specOf } from "../demo-catalog";

const skier: FitAnswers = { heightCm: 170, massKg: 82, ability: "confident" };
const midlow = truth.models.find((each) => each.id === "midlow-95");

function storyOf(answers: FitAnswers, choices: Parameters<typeof specOf>[0] = {}) {
  const story = stiffnessStory(answers, specOf({ flexRatio: (91 / 84) ** 0.8, ...choices }), catalog);
  if (!story) throw new Error("no story");
  const row = (change: WhatIfChange) => story.whatIfs.find((each) => each.change === change);
  return { ...story, row };
}

describe("why this stiff", () => {
  it("says how far Midlow 95 at 178 bends under 82 kg and gear, as by hand", () => {
    const story = storyOf(skier);
    expect(story.riderKg).toBe(91);
    expect(story.spanMm).toBeCloseTo(1461, 6);
    const spring = (midlow?.springCentreNPerMm ?? Number.NaN) * 1.0661;
    // The published spring leaves out what later refinements of the laminate found: 2 %.
    expect(Math.abs(story.now.bendMm / (892.405 / spring) - 1)).toBeLessThan(0.02);
    expect(Math.abs(story.bendUnderTenKgMm / (98.0665 / spring) - 1)).toBeLessThan(0.02);
    expect(story.now.bendPercent).toBeCloseTo((100 * story.now.bendMm) / 1461, 9);
  });

  it("gives the edge moment F·b/2 and the torsion that the same twist would need", () => {
    const { twist } = storyOf(skier);
    expect(twist.edgeMomentNm).toBeCloseTo(42.389, 2);
    expect(twist.wantedTorsion).toBeCloseTo(91 / 84, 9);
    // θ ∝ m·b·L/GJ: own over reference is wanted over built.
    expect(twist.degrees / twist.referenceDegrees).toBeCloseTo(twist.wantedTorsion / twist.builtTorsion, 9);
  });

  it("stiffens for 5 kg more by (96/91)^0.8, and the ski bends relatively more by (96/91)^0.2, not by 96/91", () => {
    const story = storyOf(skier);
    const heavier = story.row("mass-up");
    expect(heavier?.flexRatio).toBeCloseTo(story.now.flexRatio * (96 / 91) ** 0.8, 9);
    expect((heavier?.bendPercent ?? 0) / story.now.bendPercent).toBeCloseTo((96 / 91) ** 0.2, 9);
  });

  it("for any skier, 5 kg more is stiffer and bends relatively more, but less than in proportion", () => {
    const abilities: readonly Ability[] = ["learning", "improving", "confident", "expert"];
    fc.assert(
      fc.property(fc.integer({ min: 45, max: 120 }), fc.constantFrom(...abilities), (massKg, ability) => {
        const { now, row, riderKg } = storyOf({ ...skier, massKg, ability });
        const heavier = row("mass-up");
        expect(heavier?.flexRatio).toBeGreaterThan(now.flexRatio);
        const growth = (heavier?.bendPercent ?? 0) / now.bendPercent;
        expect(growth).toBeGreaterThan(1);
        expect(growth).toBeLessThan((riderKg + 5) / riderKg);
      }),
      { numRuns: 20 },
    );
  });

  it("keeps the relative deflection from length to length, and comes within 1 % of the solved ski", () => {
    const story = storyOf(skier);
    for (const change of ["length-up", "length-down", "ability-up", "mass-down"] as const) {
      const row = story.row(change);
      const ski = solved(specOf({ lengthCm: row?.lengthCm ?? 0, flexRatio: row?.flexRatio ?? 0 }));
      expect(Math.abs((row?.springCentreNPerMm ?? 0) / ski.flex.springCentreNPerMm - 1), change).toBeLessThan(0.01);
    }
    expect(story.row("length-up")?.bendPercent).toBeCloseTo(story.now.bendPercent, 9);
    expect(story.row("length-up")?.lengthCm).toBe(186);
    expect(story.row("length-down")?.lengthCm).toBe(170);
  });

  it("steps ability by the shop's factors and never beyond the ends", () => {
    const expert = storyOf({ ...skier, ability: "expert" });
    expect(expert.row("ability-up")).toBeUndefined();
    expect(expert.row("ability-down")?.flexRatio).toBeCloseTo(expert.now.flexRatio / 1.1, 9);
    const learning = storyOf({ ...skier, ability: "learning" });
    expect(learning.row("ability-down")).toBeUndefined();
    expect(learning.row("ability-up")?.flexRatio).toBeCloseTo((learning.now.flexRatio * 0.94) / 0.88, 9);
    // Few days on skis count as learning, whatever is claimed: there is no step below.
    expect(storyOf({ ...skier, ability: "expert", daysTotal: 3 }).row("ability-down")).toBeUndefined();
    expect(storyOf({ ...skier, ability: "expert", daysTotal: 3 }).row("ability-up")).toBeDefined();
  });

  it("offers no length that the model is not built in", () => {
    const lengths = catalog.build.models.find((each) => each.id === "midlow-95")?.lengths.map((each) => each.lengthCm);
    expect(storyOf(skier, { lengthCm: Math.max(...(lengths ?? [])) }).row("length-up")).toBeUndefined();
    expect(storyOf(skier, { lengthCm: Math.min(...(lengths ?? [])) }).row("length-down")).toBeUndefined();
  });

  it("compares with the stated population: 11 masses by 4 abilities, softest under the heaviest learner", () => {
    const { band } = storyOf(skier);
    expect(band).toMatchObject({ from: "population", count: 44 });
    // By hand δ/L ∝ (m + 9)^0.2 / ability, 1 for 75 kg, confident; of 44 sorted, the 5th and the 40th (ranks ⌈44p⌉):
    // 5th: expert 70 kg, (79/84)^0.2/1.1 = 0.8980; 40th: learning 80 kg, (89/84)^0.2/0.88 = 1.1496.
    // The reference skier bends the reference ski 823.76 N / (3.26 N/mm · 1461 mm) = 17.30 %.
    expect(Math.abs((band?.lowPercent ?? 0) / (0.898 * 17.3) - 1)).toBeLessThan(0.02);
    expect(Math.abs((band?.highPercent ?? 0) / (1.1496 * 17.3) - 1)).toBeLessThan(0.02);
    // A recommended flex keeps 0.006 clear of the edges of its class, so either may stand that far from the formula.
    expect(Math.abs((band?.highPercent ?? 0) / (band?.lowPercent ?? 1) - 1.1496 / 0.898)).toBeLessThan(2 * 0.006);
  });

  it("takes the shop's own band where there is one and places the skier in it", () => {
    const spec = specOf({ flexRatio: 1 });
    // 82 kg in k = 1: 91/84 = 1.083 of the reference skier.
    const at = (lowRatio: number, highRatio: number) =>
      stiffnessStory(skier, spec, catalog, { from: "orders", count: 12, lowRatio, highRatio })?.place;
    expect([at(0.8, 1.05), at(1.05, 1.12), at(1.12, 1.4)]).toEqual(["more", "like", "less"]);
  });

  it("has no story before height, mass and ability are known", () => {
    expect(stiffnessStory({ heightCm: 170, massKg: 82 }, specOf(), catalog)).toBeNull();
  });
});

describe("a band", () => {
  it("lies between the 10th and the 90th of a hundred, by rank (Hyndman & Fan 1996, type 1)", () => {
    const shuffled = Array.from({ length: 100 }, (_, i) => ((i * 37) % 100) + 1);
    expect(bandOf(shuffled, "orders")).toEqual({ from: "orders", count: 100, lowRatio: 10, highRatio: 90 });
    expect(bandOf([], "orders")).toBeNull();
  });
});
