/** Each flag of the fit: when it rises, when it does not. Limits are the shop's own, no source. */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import {
  type FitAnswers,
  type FitFlagCode,
  type FitSelection,
  findHealthWords,
  fitToModel,
  isAboutRanking,
} from "#engine/fit";

const { build, fit } = loadCatalog();
const plain: FitAnswers = { heightCm: 178, massKg: 78, ability: "confident" };

function codesOf(answers: Partial<FitAnswers>, selection: Partial<FitSelection> = {}): readonly FitFlagCode[] {
  const { flags } = fitToModel({ ...plain, ...answers }, { model: "midlow-84", ...selection }, build, fit);
  for (const flag of flags) {
    expect(flag.message).not.toMatch(/[{}]/);
    expect(flag.script).not.toMatch(/[{}]/);
  }
  return flags.map((flag) => flag.code);
}

interface Row {
  readonly code: FitFlagCode;
  readonly rises: readonly [Partial<FitAnswers>, Partial<FitSelection>?];
  readonly rests: readonly [Partial<FitAnswers>, Partial<FitSelection>?];
}

const cm182 = { unit: "cm", cm: 178 } as const;

const rows: readonly Row[] = [
  // Midlow 84 is built to 182 cm, 186 counts as built: L* of 80 kg, confident, is 186 at 201.67 cm.
  { code: "length-out-of-range", rises: [{ heightCm: 202, massKg: 80 }], rests: [{ heightCm: 201, massKg: 80 }] },
  { code: "long-for-height", rises: [{}, { lengthCm: 182 }], rests: [{ heightCm: 179 }, { lengthCm: 182 }] },
  // (87/84)^0.8·1.1·1.06 = 1.20; at 110 kg 1.53
  {
    code: "flex-out-of-range",
    rises: [{ massKg: 110, ability: "expert", temperament: "fast" }],
    rests: [{ ability: "expert", temperament: "fast" }],
  },
  // 0.8·(h − 175) − 0.8·(m − 75) > 16
  { code: "height-mass-disagree", rises: [{ heightCm: 196, massKg: 75 }], rests: [{ heightCm: 195, massKg: 75 }] },
  // BMI 38 at 178 cm is 120.4 kg
  { code: "body-mass-implausible", rises: [{ massKg: 121 }], rests: [{ massKg: 120 }] },
  {
    code: "mixed-units",
    rises: [{ typed: { height: cm182, mass: { unit: "lb", lb: 172 } } }],
    rests: [{ typed: { height: cm182, mass: { unit: "kg", kg: 78 } } }],
  },
  { code: "young-or-growing", rises: [{ ageYears: 15 }], rests: [{ ageYears: 16 }] },
  { code: "young-or-growing", rises: [{ ageYears: 17, stillGrowing: true }], rests: [{ stillGrowing: false }] },
  { code: "health-mentioned", rises: [{ healthAdviceGiven: true }], rests: [{ healthAdviceGiven: false }] },
  {
    code: "ability-unproven",
    rises: [{ ability: "expert", daysTotal: 19 }],
    rests: [{ ability: "expert", daysTotal: 20 }],
  },
  {
    code: "wide-for-piste",
    rises: [{ offPistePercent: 20 }, { model: "ridgefold-106" }],
    rests: [{ offPistePercent: 21 }, { model: "ridgefold-106" }],
  },
  {
    code: "narrow-for-off-piste",
    rises: [{ offPistePercent: 60 }, { model: "pathwick-75" }],
    rests: [{ offPistePercent: 59 }, { model: "pathwick-75" }],
  },
  {
    code: "wide-for-light-skier",
    rises: [{ heightCm: 165, massKg: 51.9 }, { model: "midlow-95" }],
    rests: [{ heightCm: 165, massKg: 52 }, { model: "midlow-95" }],
  },
  { code: "boot-sole-out-of-range", rises: [{ bootSoleMm: 352 }], rests: [{ bootSoleMm: 350 }] },
  { code: "boot-sole-out-of-range", rises: [{}, { bootSoleMm: 264 }], rests: [{}, { bootSoleMm: 265 }] },
  // (480 − 410)/2 = 35 ≥ 25; (480 − 431)/2 = 24.5 < 25
  { code: "binding-track-too-long", rises: [{ bindingTrackMm: 431 }], rests: [{ bindingTrackMm: 410 }] },
  { code: "mount-offset-unusual", rises: [{ mountOffsetMm: -35 }], rests: [{ mountOffsetMm: 30 }] },
  {
    code: "metal-for-light-touring",
    rises: [{ touringPercent: 50, priorities: ["light"] }, { addsMetal: true }],
    rests: [{ touringPercent: 50, priorities: ["light"] }],
  },
  { code: "buyer-not-skier", rises: [{ buyerIsSkier: false }], rests: [{ buyerIsSkier: true }] },
  { code: "release-setting-asked", rises: [{ asksReleaseSetting: true }], rests: [{ asksReleaseSetting: false }] },
  { code: "unusual-use", rises: [{ unusualUse: "monoski" }], rests: [{}] },
  { code: "earlier-date-asked", rises: [{ wantsEarlierDate: true }], rests: [{ wantsEarlierDate: false }] },
];

describe("flags", () => {
  it.each(rows)("$code rises at its limit and rests before it", ({ code, rises, rests }) => {
    expect(codesOf(...rises)).toContain(code);
    expect(codesOf(...rests)).not.toContain(code);
  });

  it("has a row here for every code of the catalogue", () => {
    const ofModels = Object.keys(fit.flags).filter((code) => !isAboutRanking({ code: code as FitFlagCode }));
    expect(new Set(rows.map((row) => row.code))).toEqual(new Set(ofModels));
  });

  it("answers a question about a release setting with the technician alone", () => {
    const { flags } = fitToModel({ ...plain, asksReleaseSetting: true }, { model: "midlow-84" }, build, fit);
    expect(flags[0]?.script).toContain("certified technician");
    expect(flags[0]?.script).toContain("ISO 11088");
  });
});

describe("findHealthWords", () => {
  it("finds whole words in any case and leaves other words alone", () => {
    expect(findHealthWords("Knee surgery in spring", fit.healthWords)).toEqual(["knee", "surgery"]);
    expect(findHealthWords("Kneeland Road, hipster graphic, skis broken snow", fit.healthWords)).toEqual([]);
    expect(findHealthWords("Old injuries", fit.healthWords)).toEqual(["injuries"]);
  });
});
