/**
 * The fit's rules one by one, at their edges. Coefficients are those of content/catalog/fit.json (the shop's own, no source);
 * every expected value is worked by hand from the formula that stands beside it.
 */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { abilityThatCounts, bodyMassIndex } from "#lib/engine/fit/answers";
import { classOf, gearKg, wantedFlex } from "#lib/engine/fit/flex-ratio";
import { nearestLength, wantedLength } from "#lib/engine/fit/length";
import { outsideOfferedCm } from "#lib/engine/fit/model-lengths";
import { scoreModel } from "#lib/engine/fit/score";
import type { Ability, FitAnswers, FitModel, Temperament } from "#lib/engine/fit/types";
import { wantedWaist } from "#lib/engine/fit/waist";

const { build, fit } = loadCatalog();
const plain: FitAnswers = { heightCm: 175, massKg: 75, ability: "confident" };

function model(id: string): FitModel {
  const found = build.models.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no model ${id}`);
  return found;
}
/** Built from 150 to 182 cm in steps of 8, reference 174. */
const midlow84 = model("midlow-84");
const upleigh = model("upleigh-92");

const flexOf = (answers: Partial<FitAnswers>, of: FitModel = midlow84) =>
  wantedFlex({ ...plain, ...answers }, of, build.flexClasses, fit);

describe("the ability that counts", () => {
  it.each<[Ability, number | undefined, Ability]>([
    ["expert", undefined, "expert"],
    ["expert", 14, "learning"],
    ["expert", 15, "expert"],
    ["confident", 0, "learning"],
    ["improving", 15, "improving"],
  ])("%s with %s days is %s: fewer than 15 days are learning", (ability, daysTotal, counts) => {
    expect(abilityThatCounts({ ...plain, ability, ...(daysTotal === undefined ? {} : { daysTotal }) }, fit)).toBe(
      counts,
    );
  });
});

describe("flex ratio k = ((m + gear)/(75 + gear))^0.8 · ability · temperament", () => {
  // At 75 kg the first factor is 1.
  it.each<[Ability, Temperament | undefined, number]>([
    ["learning", "calm", 0.836],
    ["learning", "steady", 0.88],
    ["learning", "fast", 0.9328],
    ["improving", "calm", 0.893],
    ["improving", undefined, 0.94],
    ["improving", "fast", 0.9964],
    ["confident", "calm", 0.95],
    ["confident", undefined, 1],
    ["confident", "fast", 1.06],
    ["expert", "calm", 1.045],
    ["expert", "steady", 1.1],
    ["expert", "fast", 1.166],
  ])("%s, %s: %d", (ability, temperament, k) => {
    const flex = flexOf({ ability, ...(temperament === undefined ? {} : { temperament }) });
    expect(flex.flexRatio).toBeCloseTo(k, 9);
  });

  // Gear of 9 kg, 14 kg when touring: half or twice the carried mass is 2^∓0.8 = 0.574349, 1.741101 (0.8·ln 2 = 0.554518).
  it.each<[string, number, number]>([
    ["midlow-84", 33, 0.574349],
    ["midlow-84", 159, 1.741101],
    ["midlow-84", 75, 1],
    ["upleigh-92", 30.5, 0.574349],
    ["upleigh-92", 164, 1.741101],
    ["upleigh-92", 75, 1],
  ])("%s at %d kg: %d", (id, massKg, k) => {
    expect(flexOf({ massKg }, model(id)).flexRatio).toBeCloseTo(k, 6);
  });

  it("carries more gear on a touring ski alone", () => {
    expect(build.models.filter(({ use }) => gearKg(use, fit) === 14).map(({ id }) => id)).toEqual([upleigh.id]);
    expect(build.models.filter(({ use }) => gearKg(use, fit) === 9)).toHaveLength(build.models.length - 1);
  });
});

describe("flex classes are half-open", () => {
  it.each([
    [0.619_999, null],
    [0.62, 1],
    [0.779_999, 1],
    [0.78, 2],
    [0.919_999, 2],
    [0.92, 3],
    [1, 3],
    [1.079_999, 3],
    [1.08, 4],
    [1.249_999, 4],
    [1.25, 5],
    [1.449_999, 5],
    [1.45, null],
    [9, null],
  ])("%d is class %s", (ratio, number) => {
    expect(classOf(ratio, build.flexClasses)).toBe(number);
  });

  // Another class counts as near up to 0.02 from its edge. The plain skier's k is exactly 1.
  it.each([
    [{ number: 4, from: 1.02, below: 1.2 }, 4],
    [{ number: 4, from: 1.021, below: 1.2 }, null],
    [{ number: 2, from: 0.8, below: 0.98 }, 2],
    [{ number: 2, from: 0.8, below: 0.979 }, null],
  ] as const)("k 1 beside %o is near %s", (other, near) => {
    const own = {
      number: 3,
      from: other.number === 2 ? other.below : 0.9,
      below: other.number === 4 ? other.from : 1.1,
    };
    const flex = wantedFlex(plain, midlow84, [own as { number: 3; from: number; below: number }, other], fit);
    expect([flex.flexClass, flex.nearClass]).toEqual([3, near]);
  });
});

describe("a recommended flex near the edge of a class", () => {
  // Mass whose carried share to the power 0.8 is k. Two told digits name the class: 1.244 reads 1.24, 1.256 reads 1.26.
  const at = (k: number, coefficients = fit) =>
    wantedFlex({ ...plain, massKg: 84 * k ** 1.25 - 9 }, midlow84, build.flexClasses, coefficients);
  it.each([
    [1.243, 1.243, 4],
    [1.2449, 1.244, 4],
    [1.249_999, 1.244, 4],
    [1.250_001, 1.256, 5],
    [1.2559, 1.256, 5],
    [1.257, 1.257, 5],
    // Outside every class nothing moves: the flag tells the flex that the answers ask for.
    [0.6199, 0.6199, null],
    [1.4501, 1.4501, null],
  ])("k %d becomes %d, of class %s as before", (k, clear, number) => {
    const flex = at(k);
    expect(flex.flexRatio).toBeCloseTo(clear, 9);
    expect(flex.flexClass).toBe(number);
    const moved = flex.reasons.find(({ factor }) => factor === "class-edge");
    expect(moved?.amount ?? 1).toBeCloseTo(clear / k, 9);
  });

  it("stays where it was by a release that says nothing of edges", () => {
    const { clearOfClassEdge: _gone, ...older } = fit;
    expect(at(1.249_999, older).flexRatio).toBeCloseTo(1.249_999, 9);
  });
});

describe("what is said of the current ski's flex", () => {
  // k 1 stands half way in class 3 [0.92, 1.08): half way in class 4 [1.08, 1.25) is 1.165, in class 2 [0.78, 0.92) 0.85.
  // Beyond the last class in its own proportion: k 1.35 half way in class 5 goes to half way in [1.45, 1.45·1.45/1.25).
  it.each<[NonNullable<NonNullable<FitAnswers["currentSki"]>["flex"]> | undefined, number]>([
    ["too soft", 1.165],
    ["right", 1],
    ["too stiff", 0.85],
    [undefined, 1],
  ])("%s: k 1 becomes %d", (flex, k) => {
    expect(flexOf({ currentSki: flex === undefined ? {} : { flex } }).flexRatio).toBeCloseTo(k, 9);
  });

  it.each([
    // 1.45 + (1.682 − 1.45)/2 = 1.566
    ["too soft", 1.25, 1.45, 1.566],
    // From [0.9, 1.1) down to [0.9/1.2222, 0.9): 0.9·0.9/1.1 = 0.736364, half way 0.818182.
    ["too stiff", 0.9, 1.1, 0.818_182],
  ] as const)("%s beyond the last class [%d, %d) goes to %d", (flex, from, below, k) => {
    const middle = (from + below) / 2;
    // Mass whose carried share to the power 0.8 is the middle of the class.
    const massKg = 84 * middle ** 1.25 - 9;
    const answers = { ...plain, massKg, currentSki: { flex } };
    expect(wantedFlex(answers, midlow84, [{ number: 1, from, below }], fit).flexRatio).toBeCloseTo(k, 6);
  });

  it("goes on outside every class in the proportion of the last: no jump at its edge", () => {
    // 1.741101 · 1.45/1.25; 0.574349 · 0.62/0.78.
    const heavy = { massKg: 159, currentSki: { flex: "too soft" } } as const;
    expect(flexOf(heavy).flexRatio).toBeCloseTo(2.019_677, 5);
    const light = { massKg: 33, currentSki: { flex: "too stiff" } } as const;
    expect(flexOf(light).flexRatio).toBeCloseTo(0.456_534, 5);
  });

  it.each([
    // 159 kg asks for k 1.741: a pair of class 3 that is right keeps it within class 4, [1.08, 1.25), 0.006 clear of its edge.
    [159, 3, "right", 1.244],
    [159, 5, "right", 1.444],
    // 33 kg asks for 0.574: within class 2 of class 3, within class 1 of class 1 or 2.
    [33, 3, "right", 0.786],
    [33, 2, "right", 0.626],
    [75, 3, "right", 1],
    [75, 3, undefined, 1],
  ] as const)("%d kg on a pair of class %d that is %s: %d", (massKg, flexClass, flex, k) => {
    const currentSki = { flexClass, ...(flex === undefined ? {} : { flex }) };
    expect(flexOf({ massKg, currentSki }).flexRatio).toBeCloseTo(k, 5);
    const elsewhere = { ...currentSki, newPairFor: "something else" } as const;
    expect(flexOf({ massKg, currentSki: elsewhere }).flexRatio).toBeCloseTo(flexOf({ massKg }).flexRatio, 9);
  });
});

describe("what else moves the flex", () => {
  it.each<[string, Partial<FitAnswers>, number]>([
    // ((75 + 12 + 9)/84)^0.8 = e^(0.8·0.133531) = 1.11274
    ["a pack of 12 kg", { packKg: 12 }, 1.112_74],
    ["bumps", { terrain: ["bumps"] }, 0.96],
    ["trees", { terrain: ["trees"] }, 0.98],
    ["bumps and trees: the softer of the two", { terrain: ["trees", "bumps"] }, 0.96],
    ["park", { terrain: ["park", "switch"] }, 1],
    ["55 years", { ageYears: 55 }, 1],
    // 1 − 0.004·13
    ["68 years", { ageYears: 68 }, 0.948],
  ])("%s: %d", (_what, answers, k) => {
    expect(flexOf(answers).flexRatio).toBeCloseTo(k, 5);
  });
});

/**
 * Midlow 84 (all-mountain narrow): o = −7 − 0.2(h − 175) + 0.2(m + pack − 24.5 h²) + ability + temperament + turns + terrain + age,
 * L* = h − 9.5 + 12.5 tanh((o + 9.5)/12.5); somebody who learns: L* = 0.89 h + 0.02 h tanh((o + 0.11 h)/(0.02 h)).
 * For 175 cm and 75 kg o is −7 + 0.2(75 − 75.03125) = −7.00625.
 */
describe("wanted length", () => {
  it.each<[string, Partial<FitAnswers>, number]>([
    ["the reference skier", {}, 167.961],
    ["10 cm taller", { heightCm: 185 }, 174.234],
    ["10 kg lighter", { massKg: 65 }, 165.994],
    ["a pack of 10 kg", { packKg: 10 }, 169.81],
    ["learning", { ability: "learning" }, 158.917],
    ["improving", { ability: "improving" }, 164.994],
    ["expert", { ability: "expert" }, 171.466],
    ["expert by claim alone", { ability: "expert", daysTotal: 14 }, 158.917],
    ["calm", { temperament: "calm" }, 165.994],
    ["steady", { temperament: "steady" }, 167.961],
    ["fast", { temperament: "fast" }, 169.81],
    ["short turns", { turnSize: "short" }, 164.994],
    ["medium turns", { turnSize: "medium" }, 167.961],
    ["long turns", { turnSize: "long" }, 170.665],
    ["bumps", { terrain: ["bumps"] }, 164.001],
    ["trees", { terrain: ["trees"] }, 164.001],
    ["bumps and trees once", { terrain: ["bumps", "trees"] }, 164.001],
    ["park", { terrain: ["switch", "park"] }, 164.994],
    ["switch", { terrain: ["switch"] }, 165.994],
    ["55 years", { ageYears: 55 }, 167.961],
    ["75 years", { ageYears: 75 }, 165.994],
    ["too long, no length told", { currentSki: { length: "too long" } }, 159.961],
    ["too short, no length told", { currentSki: { length: "too short" } }, 175.961],
    ["right, no length told", { currentSki: { length: "right" } }, 167.961],
    // Right: 190 + 4 tanh((167.961 − 190)/8) and 166 + 4 tanh((167.961 − 166)/8).
    ["right at 190", { currentSki: { length: "right", lengthCm: 190 } }, 186.032],
    ["right at 166", { currentSki: { length: "right", lengthCm: 166 } }, 166.961],
    [
      "right at 190, for something else",
      { currentSki: { length: "right", lengthCm: 190, newPairFor: "something else" } },
      167.961,
    ],
    ["right at 190, for the same", { currentSki: { length: "right", lengthCm: 190, newPairFor: "the same" } }, 186.032],
    // Wrong: at least half a step of 8 away from it, and what the formula wants where that is farther.
    ["too long at 175", { currentSki: { length: "too long", lengthCm: 175 } }, 167.961],
    ["too long at 170", { currentSki: { length: "too long", lengthCm: 170 } }, 166],
    ["too short at 160", { currentSki: { length: "too short", lengthCm: 160 } }, 167.961],
    ["too short at 166", { currentSki: { length: "too short", lengthCm: 166 } }, 170.1],
    ["too short at 180", { currentSki: { length: "too short", lengthCm: 180 } }, 184.1],
  ])("%s", (_who, answers, wantedCm) => {
    const wanted = wantedLength({ ...plain, ...answers }, midlow84, fit);
    expect(wanted.wantedLengthCm).toBeCloseTo(wantedCm, 2);
    expect(wanted.reasons.every((reason) => reason.amount !== 0)).toBe(true);
  });
});

describe("the nearest offered length", () => {
  // Two are neighbours when their distances differ by at most 1.5 cm; of two equally near the shorter.
  it.each([
    [174, 174, undefined],
    [178, 174, 182],
    [178.01, 182, 174],
    [177.25, 174, 182],
    [177.24, 174, undefined],
    [178.75, 182, 174],
    [178.76, 182, undefined],
    [120, 150, undefined],
    [220, 182, undefined],
  ])("to %d cm is %d, with the neighbour %s", (wantedCm, lengthCm, neighbourLengthCm) => {
    const nearest = nearestLength(wantedCm, midlow84, fit);
    expect([nearest.lengthCm, nearest.neighbourLengthCm]).toEqual([lengthCm, neighbourLengthCm]);
  });

  it.each([
    [179, 182, 182],
    [179, 181.9, 174],
    [160, 140, 150],
  ])("to %d cm, and no longer than %d cm, is %d", (wantedCm, longestCm, lengthCm) => {
    expect(nearestLength(wantedCm, midlow84, fit, longestCm)).toEqual({ lengthCm });
  });

  it.each([
    [150, 0],
    [149, 1],
    [182, 0],
    [185, 3],
    [166, 0],
  ])("%d cm lies %d cm outside", (wantedCm, outsideCm) => {
    expect(outsideOfferedCm(wantedCm, midlow84)).toBe(outsideCm);
  });
});

describe("wanted waist = 70 + 0.45 · off-piste + snow + mass, within what ability, park and a pair that is right say", () => {
  it.each<[string, Partial<FitAnswers>, number]>([
    // Unanswered counts as 30 %.
    ["nothing said", {}, 83.5],
    ["0 %", { offPistePercent: 0 }, 70],
    ["40 %", { offPistePercent: 40 }, 88],
    ["100 %", { offPistePercent: 100 }, 115],
    ["icy", { offPistePercent: 0, homeSnow: "icy" }, 65],
    ["firm", { offPistePercent: 0, homeSnow: "firm" }, 67.5],
    ["mixed", { offPistePercent: 0, homeSnow: "mixed" }, 70],
    ["soft", { offPistePercent: 0, homeSnow: "soft" }, 72.5],
    ["deep", { offPistePercent: 0, homeSnow: "deep" }, 75],
    // 3 tanh((m + pack − 75)/20): tanh 1 = 0.761594.
    ["95 kg", { offPistePercent: 0, massKg: 95 }, 72.284_782],
    ["55 kg", { offPistePercent: 0, massKg: 55 }, 67.715_218],
    ["75 kg and a pack of 20", { offPistePercent: 0, packKg: 20 }, 72.284_782],
    ["learning, 100 %", { offPistePercent: 100, ability: "learning" }, 88],
    ["improving, 100 %", { offPistePercent: 100, ability: "improving" }, 100],
    ["improving, 60 %", { offPistePercent: 60, ability: "improving" }, 97],
    ["park, 10 %", { offPistePercent: 10, terrain: ["park"] }, 86],
    ["park, 50 %", { offPistePercent: 50, terrain: ["switch"] }, 92.5],
    // A pair that is right: 100 + 5 tanh((88 − 100)/10) = 100 − 5·0.833655.
    ["40 %, right at 100 mm", { offPistePercent: 40, currentSki: { length: "right", waistMm: 100 } }, 95.831_727],
    ["40 %, its flex right", { offPistePercent: 40, currentSki: { flex: "right", waistMm: 100 } }, 95.831_727],
    ["40 %, too long", { offPistePercent: 40, currentSki: { length: "too long", flex: "right", waistMm: 100 } }, 88],
    [
      "40 %, for something else",
      { offPistePercent: 40, currentSki: { length: "right", waistMm: 100, newPairFor: "something else" } },
      88,
    ],
  ])("%s", (_who, answers, wantedMm) => {
    expect(wantedWaist({ ...plain, ...answers }, fit).wantedWaistMm).toBeCloseTo(wantedMm, 5);
  });

  it("says whether the share off the piste was answered", () => {
    const factors = (answers: Partial<FitAnswers>) =>
      wantedWaist({ ...plain, ...answers }, fit).reasons.map(({ factor }) => factor);
    expect(factors({ offPistePercent: 30 })).toEqual(["base", "off-piste"]);
    expect(factors({})).toEqual(["base", "off-piste-unanswered"]);
  });
});

describe("score = |waist − wanted|/8 + max(0, |L* − L| − 2)/4 + |R − band|/4 + 0.5 for unwanted metal, and what the skier says against or for it", () => {
  const fitting = { wantedWaistMm: 84, wantedLengthCm: 174, lengthCm: 174, beyondBuiltCm: null };
  const kerfline = model("kerfline-68");

  it.each<[string, FitModel, Partial<FitAnswers>, Partial<typeof fitting>, number]>([
    ["nothing apart", midlow84, {}, {}, 0],
    ["8 mm too narrow", midlow84, {}, { wantedWaistMm: 92 }, 1],
    ["8 mm too wide", midlow84, {}, { wantedWaistMm: 76 }, 1],
    ["2 cm are free", midlow84, {}, { wantedLengthCm: 176 }, 0],
    ["4 cm long", midlow84, {}, { wantedLengthCm: 178 }, 0.5],
    ["6 cm short", midlow84, {}, { wantedLengthCm: 168 }, 1],
    ["metal unasked", kerfline, {}, { wantedWaistMm: 68 }, 0],
    ["metal against light", kerfline, { priorities: ["light"] }, { wantedWaistMm: 68 }, 0.5],
    ["metal against forgiving", kerfline, { priorities: ["precise", "forgiving"] }, { wantedWaistMm: 68 }, 0.5],
    ["metal for precise", kerfline, { priorities: ["precise", "planted"] }, { wantedWaistMm: 68 }, 0],
    ["metal against lively", kerfline, { priorities: ["lively"] }, { wantedWaistMm: 68 }, 0.5],
    ["no metal, light", midlow84, { priorities: ["light"] }, {}, 0],
    ["no metal, quiet", midlow84, { priorities: ["quiet"] }, {}, 0.25],
    ["metal, learning", kerfline, { ability: "learning" }, { wantedWaistMm: 68 }, 2],
    ["metal, improving", kerfline, { ability: "improving" }, { wantedWaistMm: 68 }, 1],
    ["metal, calm", kerfline, { temperament: "calm" }, { wantedWaistMm: 68 }, 2],
    ["metal, fast", kerfline, { temperament: "fast" }, { wantedWaistMm: 68 }, 0],
    // 0.03·13
    ["metal, 68 years", kerfline, { ageYears: 68 }, { wantedWaistMm: 68 }, 0.39],
    // A tail that rises over 3 % of the length, where 10 % are wanted.
    ["a flat tail in the park", midlow84, { terrain: ["park"] }, {}, 0.7],
  ])("%s", (_what, of, answers, changed, score) => {
    expect(scoreModel({ ...plain, ...answers }, of, { ...fitting, ...changed }, fit).score).toBeCloseTo(score, 9);
  });

  // Midlow 95 at 178: R = 17.71 m (circle tangent at the waist, see geometry). Bands: short to 14, medium 15–18, long from 19.
  it.each([
    ["short", (17.71 - 14) / 4],
    ["medium", 0],
    ["long", (19 - 17.71) / 4],
  ] as const)("%s turns on a radius of 17.71 m", (turnSize, score) => {
    const at = { wantedWaistMm: 95, wantedLengthCm: 178, lengthCm: 178, beyondBuiltCm: null };
    expect(scoreModel({ ...plain, turnSize }, model("midlow-95"), at, fit).score).toBeCloseTo(score, 2);
  });
});

describe("a model that is not built in the wanted length", () => {
  it("costs a hundred and a hundred more for each centimetre that it misses by", () => {
    const at = { wantedWaistMm: 84, wantedLengthCm: 188, lengthCm: 182, beyondBuiltCm: 2 };
    // 300, and (6 − 2)/4 for the length.
    expect(scoreModel(plain, midlow84, at, fit).score).toBeCloseTo(301, 9);
  });
});

describe("body-mass index", () => {
  it.each([
    [200, 152, 38],
    [200, 64, 16],
    [180, 81, 25],
  ])("%d cm and %d kg: %d", (heightCm, massKg, index) => {
    expect(bodyMassIndex(heightCm, massKg)).toBeCloseTo(index, 12);
  });
});
