/** What the fit hands on: who is named in a flag, what a body needs, models with one length; by hand from the rule named. */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import {
  type FitAnswers,
  type FitModel,
  fitToModel,
  recommend,
  recommendFinish,
  relativeDeflection,
  STANDARD_GRAVITY,
  springForSameFeel,
} from "#engine/fit";
import { sumOf, withoutIdle } from "#lib/engine/fit/answers";
import { nearestLength, wantedLength } from "#lib/engine/fit/length";

const { build, fit, finish } = loadCatalog();
const plain: FitAnswers = { heightCm: 175, massKg: 75, ability: "confident" };
const model = (id: string): FitModel => build.models.find((each) => each.id === id) ?? expect.fail(id);

describe("flags of a model", () => {
  // One skier and one model for each flag of a model.
  it.each<[string, string, Partial<FitAnswers>]>([
    ["length-out-of-range", "midlow-84", { heightCm: 230 }],
    ["flex-out-of-range", "midlow-84", { massKg: 150, heightCm: 200, ability: "expert" }],
    ["wide-for-piste", "ridgefold-106", { offPistePercent: 0 }],
    ["narrow-for-off-piste", "kerfline-68", { offPistePercent: 100 }],
    ["wide-for-light-skier", "ridgefold-106", { massKg: 45, heightCm: 160 }],
    ["metal-for-light-touring", "kerfline-68", { touringPercent: 100, priorities: ["light"] }],
  ])("%s speaks of %s by its name and carries its id", (code, id, answers) => {
    const { flags } = fitToModel({ ...plain, ...answers }, { model: id }, build, fit);
    const found = flags.find((each) => each.code === code);
    expect(found?.model).toBe(id);
    const words = fit.flags[code as keyof typeof fit.flags];
    expect(found?.blocks).toBe(words.blocks);
    const told = `${found?.message} ${found?.script}`;
    if (`${words.message} ${words.script}`.includes("{model}")) expect(told).toContain(model(id).name);
    expect(told).not.toContain(id);
  });
});

describe("a body", () => {
  it.each([
    ["heightCm", 0],
    ["heightCm", Number.POSITIVE_INFINITY],
    ["massKg", 0],
    ["massKg", -1],
    ["massKg", Number.NaN],
  ])("needs a %s, not %d, for a ranking as for one model", (name, value) => {
    const answers = { ...plain, [name]: value };
    expect(() => recommend(answers, build, fit)).toThrow(`${name} ${value}`);
    expect(() => fitToModel(answers, { model: "midlow-84" }, build, fit)).toThrow(`${name} ${value}`);
  });

  it("is fitted to a model of this shop alone", () => {
    expect(() => fitToModel(plain, { model: "x" }, build, fit)).toThrow(/model "x"/);
  });
});

describe("a model of one length", () => {
  const single: FitModel = { ...model("midlow-84"), lengths: [{ lengthCm: 174 }] };

  it("has no step to move by, and no neighbour", () => {
    for (const answers of [
      { currentSki: { length: "too long" } },
      { terrain: ["bumps"] },
    ] satisfies Partial<FitAnswers>[])
      expect(wantedLength({ ...plain, ...answers }, single, fit)).toEqual(wantedLength(plain, single, fit));
    expect(nearestLength(175, single, fit)).toEqual({ lengthCm: 174 });
    expect(() => nearestLength(175, { ...single, lengths: [] }, fit)).toThrow(/no offered length/);
  });

  it("steps by the two shortest lengths, in whatever order they stand", () => {
    const mixed: FitModel = { ...single, lengths: [{ lengthCm: 190 }, { lengthCm: 160 }, { lengthCm: 165 }] };
    const move =
      wantedLength({ ...plain, terrain: ["trees"] }, mixed, fit).wantedLengthCm -
      wantedLength(plain, mixed, fit).wantedLengthCm;
    expect(move).toBeCloseTo(-5, 9);
  });
});

describe("the ranking", () => {
  it("shows as many as the catalogue says, best first, and flags of those alone", () => {
    const { choices, flags } = recommend({ ...plain, offPistePercent: 100 }, build, { ...fit, choicesShown: 2 });
    expect(choices).toHaveLength(2);
    const shown = new Set(choices.map((each) => each.model));
    for (const flag of flags) if (flag.model !== undefined) expect(shown.has(flag.model)).toBe(true);
  });

  it("takes what was chosen beside a model before the answers", () => {
    const codes = (selection: object, answers: Partial<FitAnswers> = {}) =>
      fitToModel({ ...plain, ...answers }, { model: "midlow-84", ...selection }, build, fit).flags.map(
        (each) => each.code,
      );
    const said = { mountOffsetMm: 40, bootSoleMm: 200, bindingTrackMm: 470 };
    expect(codes({}, said)).toEqual(["boot-sole-out-of-range", "binding-track-too-long", "mount-offset-unusual"]);
    expect(codes({ mountOffsetMm: 0 }, said)).toEqual(["boot-sole-out-of-range", "binding-track-too-long"]);
    expect(codes({ bootSoleMm: 300 }, said)).toEqual(["binding-track-too-long", "mount-offset-unusual"]);
    expect(codes({ bindingTrackMm: 400 }, said)).toEqual(["boot-sole-out-of-range", "mount-offset-unusual"]);
  });
});

describe("the finish table", () => {
  const row = (id: string, more: object) => ({
    id,
    label: id,
    baseBevelDeg: 1,
    sideAngleDeg: 2,
    detuneTipMm: 3,
    detuneTailMm: 4,
    ...more,
  });

  it("gives the first row that holds for use and ability, and says when none does", () => {
    const table = {
      ...finish,
      bevels: [
        row("a", { uses: ["park"] }),
        row("b", { uses: ["piste"], abilities: ["expert" as const] }),
        row("c", { abilities: ["confident" as const] }),
      ],
    };
    const at = (use: string, answers: Partial<FitAnswers> = {}) =>
      recommendFinish({ ...plain, ...answers }, use, table, fit);
    expect([at("park").row, at("piste").row, at("piste", { ability: "expert" }).row]).toEqual(["a", "c", "b"]);
    expect(() => at("tour", { ability: "expert" })).toThrow(/use "tour" and ability "expert"/);
    expect(at("park").finish).toEqual({
      baseBevelDeg: 1,
      sideAngleDeg: 2,
      detuneTipMm: 3,
      detuneTailMm: 4,
      structure: finish.structureUnanswered,
    });
    expect(at("park", { homeSnow: "deep" }).finish.structure).toBe(finish.structureBySnow.deep);
  });
});

describe("reasons", () => {
  const reason = (effect: "adds" | "multiplies" | "costs", amount: number) => ({
    factor: "f",
    effect,
    unit: "cm" as const,
    amount,
    about: "length" as const,
  });

  it("that do nothing are none: 0 added, 1 multiplied", () => {
    const all = [
      reason("adds", 0),
      reason("adds", 1),
      reason("multiplies", 1),
      reason("multiplies", 0),
      reason("costs", 0),
      reason("costs", 1),
    ];
    expect(withoutIdle(all)).toEqual([all[1], all[3], all[5]]);
    // 0.1 + 0.2 has binary noise that nobody should read.
    expect(sumOf([reason("adds", 0.1), reason("adds", 0.2)])).toBe(0.3);
  });
});

describe("similarity", () => {
  it("spring ∝ m/L, deflection F/(kL), standard gravity 9.80665 (3rd CGPM 1901)", () => {
    expect(springForSameFeel({ massKg: 90, lengthMm: 2000 }, { massKg: 60, lengthMm: 1000 })).toBeCloseTo(0.75, 12);
    expect(relativeDeflection(800, 4, 1000)).toBe(0.2);
    expect(STANDARD_GRAVITY).toBe(9.80665);
  });
});
