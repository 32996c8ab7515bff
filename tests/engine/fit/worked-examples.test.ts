/** The worked numbers of the fit: rows, arithmetic and sources in tests/fixtures/truth/fit.json. */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { type FitAnswers, fitToModel } from "#engine/fit";
import { roundForPeople } from "#engine/units";
import truth from "../../fixtures/truth/fit.json";

const { build, fit } = loadCatalog();

describe("fitToModel", () => {
  it.each(truth.worked)("$title", (row) => {
    const { choice } = fitToModel(row.answers as FitAnswers, { model: row.model }, build, fit);
    expect(roundForPeople(choice.wantedLengthCm, 1)).toBe(row.wantedLengthCm);
    expect(choice.lengthCm).toBe(row.lengthCm);
    expect(roundForPeople(choice.flexRatio, row.decimals)).toBe(row.flexRatio);
    expect(choice.flexClass).toBe(row.flexClass);
    expect(choice.nearClass).toBe(row.nearClass);
  });

  it("scales stiffness with mass and the square of length when exponent and gear are those of pure similarity", () => {
    const similar = { ...fit, massExponent: 1, gearKg: 0 };
    for (const { id, inputs, expected, relative } of truth.scaling) {
      const answers: FitAnswers = { heightCm: 175, massKg: inputs.mass1Kg, ability: "confident" };
      const ratio = fitToModel(answers, { model: "midlow-84" }, build, similar).choice.flexRatio;
      const lengths = inputs.length1Cm / inputs.length0Cm;
      if (id === "FIT-SCALE") {
        const got = (inputs.stiffness0Nm2 ?? Number.NaN) * ratio * lengths ** 2;
        expect(Math.abs(got / (expected.stiffness1Nm2 ?? Number.NaN) - 1)).toBeLessThan(relative);
      } else {
        // k = 48 EI / L³ with EI ∝ m L².
        const got = ((inputs.spring0 ?? Number.NaN) * ratio) / lengths;
        expect(Math.abs(got / (expected.spring1 ?? Number.NaN) - 1)).toBeLessThan(relative);
      }
    }
  });

  it.each(truth.skiLengths)("stays within two standard deviations of what skiers really use ($id)", (row) => {
    const heightCm = row.skiLengthCm / (row.ratioPercent / 100);
    const massKg = row.skiLengthCm / row.lengthOverMassCmPerKg;
    for (const model of ["kerfline-68", "pathwick-75", "midlow-84"]) {
      const answers: FitAnswers = { heightCm, massKg, ability: "improving" };
      const { choice } = fitToModel(answers, { model }, build, fit);
      const ratioPercent = (100 * choice.wantedLengthCm) / heightCm;
      expect(Math.abs(ratioPercent - row.ratioPercent)).toBeLessThan(2 * row.ratioSdPercent);
    }
  });
});
