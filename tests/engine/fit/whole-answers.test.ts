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
    ["length-out-of-range", "midlow-84", { heightCm: 205, massKg: 85 }],
    ["flex-out-of-range", "midlow-84", { massKg: 150, heightCm: 200, ability: "expert" }],
    ["long-for-height", "midlow-84", { heightCm: 145, currentSki: { length: "right", lengthCm: 165 } }],
    ["wide-for-piste", "ridgefold-106", { offPistePercent: 0 }],
    ["narrow-for-off-piste", "kerfline-68", { offPistePercent: 100 }],
    ["wide-for-light-skier", "ridgefold-106", { massKg: 45, heightCm: 160 }],
    ["metal-for-light-touring", "kerfline-68", { touringPercent: 100, priorities: ["light"] }],
  ])("%s speaks of %s by its name and carries its id", (code, id, answers) => {
    const { flags } = fitToModel({ ...plain, ...answers }, { model: id }, build, fit);
    const found = flags.find((each) => each.code === code);
    expect(found?.model).toBe(id);
    const words = fit.flags[code as keyof typeof fit.flags] ?? expect.fail(code);
    expect(found?.blocks).toBe(words.blocks);
    const told = `${found?.message} ${found?.script}`;
    if (`${words.message} ${words.script}`.includes("{model}")) expect(told).toContain(model(id).name);
    expect(told).not.toContain(id);
  });
});

describe("flags in full", () => {
  const words = (code: keyof typeof fit.flags, text: string) => ({
    ...fit,
    flags: { ...fit.flags, [code]: { ...fit.flags[code], message: text } },
  });
  const message = (code: keyof typeof fit.flags, text: string, answers: Partial<FitAnswers>, id = "midlow-84") =>
    fitToModel({ ...plain, ...answers }, { model: id }, build, words(code, text)).flags.find(
      (each) => each.code === code,
    )?.message;

  it("know every fact that their words may ask for", () => {
    // (150 + 9)/84 to the power 0.8 is 1.666; classes run from 0.62 to 1.45.
    expect(
      message("flex-out-of-range", "{model}: {flexRatio}, {softest} to {stiffest}", { massKg: 150, heightCm: 200 }),
    ).toBe("Midlow 84: 1.666, 0.62 to 1.45");
    // o = −7 − 0.2·35 − 0.2·(24.5·2.1² − 75) = −20.609; 210 − 9.5 + 12.5·tanh((−20.609 + 9.5)/12.5) = 191.6.
    expect(message("length-out-of-range", "{model}: {wantedCm}, {shortestCm} to {longestCm}", { heightCm: 210 })).toBe(
      "Midlow 84: 191.6, 150 to 182",
    );
    // 0.8·25 − 0.8·0.
    expect(message("height-mass-disagree", "{apartCm}", { heightCm: 200 })).toBe("20.0");
    expect(message("body-mass-implausible", "{bmi} {massKg} {heightCm}", { massKg: 200, heightCm: 200 })).toBe(
      "50.0 200.0 200.0",
    );
    expect(message("ability-unproven", "{days}", { ability: "expert", daysTotal: 3 })).toBe("3");
    expect(message("unusual-use", "{use}", { unusualUse: "monoski" })).toBe("monoski");
    expect(message("boot-sole-out-of-range", "{soleMm}: {shortestMm} to {longestMm}", { bootSoleMm: 200 })).toBe(
      "200: 265 to 350",
    );
    // (480 − 460)/2 = 10 of 25.
    expect(
      message("binding-track-too-long", "{trackMm} on {plateMm}: {marginMm} of {minMm}", { bindingTrackMm: 460 }),
    ).toBe("460 on 480: 10.0 of 25");
    expect(message("mount-offset-unusual", "{offsetMm} of {limitMm}", { mountOffsetMm: -31 })).toBe("-31 of 30");
    expect(
      message(
        "wide-for-piste",
        "{model} {waistMm} {pistePercent} {offPistePercent}",
        { offPistePercent: 5 },
        "ridgefold-106",
      ),
    ).toBe("Ridgefold 106 106 95 5");
    expect(message("wide-for-light-skier", "{massKg}", { massKg: 45, heightCm: 160 }, "ridgefold-106")).toBe("45.0");
    expect(() => message("unusual-use", "{nothing}", { unusualUse: "monoski" })).toThrow(/need \{nothing\}/);
  });

  it("stand in one order: body, person, equipment, then the model's size, waist and metal", () => {
    const answers: FitAnswers = {
      heightCm: 200,
      massKg: 30,
      ability: "expert",
      daysTotal: 5,
      ageYears: 12,
      healthAdviceGiven: true,
      buyerIsSkier: false,
      asksReleaseSetting: true,
      unusualUse: "adaptive",
      wantsEarlierDate: true,
      bootSoleMm: 200,
      bindingTrackMm: 470,
      mountOffsetMm: 40,
      offPistePercent: 0,
      touringPercent: 90,
      priorities: ["light"],
      typed: { height: { unit: "cm", cm: 200 }, mass: { unit: "lb", lb: 66 } },
    };
    expect(
      fitToModel(answers, { model: "ridgefold-106", addsMetal: true }, build, fit).flags.map((each) => each.code),
    ).toEqual([
      "body-mass-implausible",
      "mixed-units",
      "height-mass-disagree",
      "young-or-growing",
      "health-mentioned",
      "ability-unproven",
      "buyer-not-skier",
      "release-setting-asked",
      "unusual-use",
      "earlier-date-asked",
      "boot-sole-out-of-range",
      "binding-track-too-long",
      "mount-offset-unusual",
      "flex-out-of-range",
      "wide-for-piste",
      "wide-for-light-skier",
      "metal-for-light-touring",
    ]);
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
      { currentSki: { length: "right", lengthCm: 150 } },
    ] satisfies Partial<FitAnswers>[])
      expect(wantedLength({ ...plain, ...answers }, single, fit)).toEqual(wantedLength(plain, single, fit));
    expect(nearestLength(175, single, fit)).toEqual({ lengthCm: 174 });
    expect(() => nearestLength(175, { ...single, lengths: [] }, fit)).toThrow(/no offered length/);
  });

  it("steps by the two shortest lengths, in whatever order they stand", () => {
    const mixed: FitModel = { ...single, lengths: [{ lengthCm: 190 }, { lengthCm: 160 }, { lengthCm: 165 }] };
    const move =
      wantedLength({ ...plain, currentSki: { length: "too long" } }, mixed, fit).wantedLengthCm -
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
