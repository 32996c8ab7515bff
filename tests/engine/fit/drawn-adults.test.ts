/** What drawn adults are offered, against what is published of skiers and skis. */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { type FitChoice, type FitFlagCode, recommend } from "#engine/fit";
import truth from "../../fixtures/truth/fit.json";
import { isWhole, proofSeed } from "../../support/proof";
import { type Adult, drawnAdults } from "./skiers";

const { build, fit } = loadCatalog();
const ofBody: readonly FitFlagCode[] = ["body-mass-implausible", "height-mass-disagree", "young-or-growing"];

interface Offered extends Adult {
  readonly first: FitChoice;
  readonly use: string;
  readonly stops: readonly FitFlagCode[];
  readonly hasBodyFlag: boolean;
}

const adults: readonly Offered[] = drawnAdults(isWhole("fit") ? 48_000 : 3000, proofSeed).map((adult) => {
  const { choices, flags } = recommend(adult.answers, build, fit);
  const first = choices[0] ?? expect.fail("a choice for everybody");
  const own = flags.filter(({ model }) => model === undefined || model === first.model);
  return {
    ...adult,
    first,
    use: build.models.find(({ id }) => id === first.model)?.use ?? "",
    stops: own.filter(({ code, blocks }) => blocks !== "nothing" && !ofBody.includes(code)).map(({ code }) => code),
    hasBodyFlag: own.some(({ code }) => ofBody.includes(code)),
  };
});
const shareOf = (is: (adult: Offered) => boolean, among: readonly Offered[] = adults) =>
  among.filter(is).length / among.length;

describe("drawn adults", { timeout: 600_000 }, () => {
  it("are stopped by nothing but what is said of their body, ninety-nine of a hundred", () => {
    expect(shareOf(({ stops, hasBodyFlag }) => stops.length > 0 && !hasBodyFlag)).toBeLessThanOrEqual(0.01);
  });

  it("are never fitted into a length: who is not stopped gets one within half a step of what was asked for", () => {
    const free = adults.filter((each) => each.stops.length === 0);
    for (const { first, answers } of free) {
      const apartCm = first.lengthCm - first.wantedLengthCm;
      expect(apartCm, JSON.stringify(answers)).toBeLessThanOrEqual(4 + 1e-9);
      // The next longer one may be longer than is right beside the body.
      expect(apartCm, JSON.stringify(answers)).toBeGreaterThan(-8);
      expect(first.flexClass).not.toBeNull();
    }
    expect(shareOf(({ first }) => first.wantedLengthCm - first.lengthCm > 4 + 1e-9, free)).toBeLessThan(0.01);
  });

  it("stand beside a ski that is right for its kind (common practice, no source)", () => {
    for (const { first, use, answers, stops } of adults.filter((each) => each.stops.length === 0)) {
      const beyondCm = first.lengthCm - answers.heightCm;
      expect(beyondCm, JSON.stringify(answers)).toBeLessThanOrEqual(use === "powder" ? 12 : 8);
      if (use === "carving") expect(beyondCm).toBeLessThan(0);
      expect(stops).toEqual([]);
    }
  });

  it("who learn want a ski from chin to nose: 0.87 of body height is the chin, 0.936 the eyes", () => {
    // Drillis and Contini (1966), as reprinted in Winter, Biomechanics and Motor Control of Human Movement; from memory.
    const learners = adults.filter(({ answers }) => answers.ability === "learning");
    for (const { first, answers } of learners) {
      const share = first.wantedLengthCm / answers.heightCm;
      expect(share).toBeGreaterThan(0.87);
      expect(share).toBeLessThan((0.87 + 0.936) / 2 + 0.01);
    }
  });

  it("on the piste ride the share of their height that skiers were found to ride (Ruedl et al. 2017)", () => {
    const onPiste = adults.filter(({ use }) => use === "carving" || use === "frontside");
    for (const row of truth.skiLengths) {
      const own = onPiste.filter(({ isMan }) => isMan === (row.id === "FIT-RUEDL-M"));
      const shares = own.map(({ first, answers }) => (100 * first.lengthCm) / answers.heightCm);
      const mean = shares.reduce((sum, each) => sum + each, 0) / shares.length;
      const sd = Math.sqrt(shares.reduce((sum, each) => sum + (each - mean) ** 2, 0) / shares.length);
      // A mean of skiers of every ability, half a standard deviation to either side; no more spread than people have.
      expect(Math.abs(mean - row.ratioPercent), `${row.id} ${mean}`).toBeLessThan(row.ratioSdPercent / 2);
      expect(sd).toBeLessThan(row.ratioSdPercent);
    }
  });

  it("never want a racer's length: men's giant slalom skis are at least 193 cm (FIS, 2017/18)", () => {
    for (const { first, use } of adults.filter((each) => each.use === "carving" || each.use === "frontside"))
      expect(first.wantedLengthCm, use).toBeLessThan(193);
  });

  it("who learn or ski calmly do not get metal first", () => {
    const metal = new Set(build.models.filter(({ hasMetal }) => hasMetal).map(({ id }) => id));
    const careful = adults.filter(({ answers }) => answers.ability === "learning" || answers.temperament === "calm");
    expect(careful.length).toBeGreaterThan(adults.length / 5);
    expect(careful.filter(({ first }) => metal.has(first.model))).toEqual([]);
    const calm = adults.filter(({ answers }) => (answers.offPistePercent ?? 30) <= 20);
    for (const { answers } of calm.slice(0, 300)) {
      const { choices } = recommend({ ...answers, temperament: "calm" }, build, fit);
      expect(metal.has(choices[0]?.model ?? ""), JSON.stringify(answers)).toBe(false);
    }
  });

  it("get a model that is built in their length before any that is not", () => {
    for (const { answers } of adults.slice(0, 1000)) {
      const { choices } = recommend(answers, build, { ...fit, choicesShown: 10 });
      const isBuilt = choices.map((choice) => {
        const lengths = build.models.find(({ id }) => id === choice.model)?.lengths.map((each) => each.lengthCm) ?? [];
        const outsideCm = Math.max(
          Math.min(...lengths) - choice.wantedLengthCm,
          choice.wantedLengthCm - Math.max(...lengths),
        );
        return outsideCm <= 4 && choice.lengthCm <= answers.heightCm + 12;
      });
      const firstNot = isBuilt.indexOf(false);
      if (firstNot >= 0) expect(isBuilt.slice(firstNot), JSON.stringify(answers)).not.toContain(true);
    }
  });
});
