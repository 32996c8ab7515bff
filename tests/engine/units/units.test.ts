import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  accept,
  cents,
  cmFromFeetInches,
  feetInchesFromCm,
  heightCm,
  isoDate,
  kgFromPounds,
  massKg,
  poundsFromKg,
  radians,
  refuse,
  roundForPeople,
  textForPeople,
} from "#engine/units";

describe("body measures", () => {
  it("follow the international yard and pound of 1959", () => {
    expect(cmFromFeetInches(6, 0)).toBeCloseTo(182.88, 10);
    expect(cmFromFeetInches(5, 7)).toBeCloseTo(170.18, 10);
    expect(kgFromPounds(1)).toBe(0.45359237);
    expect(kgFromPounds(180)).toBeCloseTo(81.6466266, 10);
  });

  it("survive the way there and back", () => {
    fc.assert(
      fc.property(fc.double({ min: 50, max: 250, noNaN: true }), (cm) => {
        const { feet, inches } = feetInchesFromCm(cm);
        expect(Number.isInteger(feet)).toBe(true);
        expect(inches).toBeGreaterThanOrEqual(0);
        expect(inches).toBeLessThan(12);
        expect(cmFromFeetInches(feet, inches)).toBeCloseTo(cm, 9);
        expect(kgFromPounds(poundsFromKg(cm))).toBeCloseTo(cm, 9);
      }),
    );
  });

  it("are read as they were typed", () => {
    expect(heightCm({ unit: "cm", cm: 182 })).toBe(182);
    expect(heightCm({ unit: "ft-in", feet: 5, inches: 7 })).toBeCloseTo(170.18, 10);
    expect(massKg({ unit: "lb", lb: 149 })).toBeCloseTo(67.58526, 4);
    expect(massKg({ unit: "kg", kg: 82 })).toBe(82);
  });
});

describe("brands", () => {
  it("take whole cents and real days only", () => {
    expect(cents(159_000)).toBe(159_000);
    expect(() => cents(0.5)).toThrow(/0.5 is not a whole number/);
    expect(isoDate("2024-02-29")).toBe("2024-02-29");
    for (const wrong of ["2023-02-29", "2024-2-9", "2024-13-01", "tomorrow"])
      expect(() => isoDate(wrong)).toThrow(RangeError);
    expect(radians(180)).toBe(Math.PI);
  });
});

describe("roundForPeople", () => {
  it("rounds half up on the decimal that people see", () => {
    expect(roundForPeople(188.85, 1)).toBe(188.9);
    expect(roundForPeople(1.005, 2)).toBe(1.01);
    expect(roundForPeople(-0.5)).toBe(-1);
    expect(roundForPeople(9.995, 2)).toBe(10);
    expect(roundForPeople(0.05, 1)).toBe(0.1);
    expect(textForPeople(3.4, 2)).toBe("3.40");
  });

  it("moves a number by half a unit at most and is settled after once", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.integer({ min: 0, max: 6 }),
        (value, decimals) => {
          const rounded = roundForPeople(value, decimals);
          expect(Math.abs(rounded - value)).toBeLessThanOrEqual(0.5 / 10 ** decimals + 1e-9);
          expect(roundForPeople(rounded, decimals)).toBe(rounded);
        },
      ),
    );
  });

  it("cannot round what is no number", () => {
    expect(() => roundForPeople(Number.NaN)).toThrow(/not finite/);
    expect(() => roundForPeople(1, 13)).toThrow(/decimals 13/);
  });
});

describe("outcomes", () => {
  it("carry a value or a refusal", () => {
    expect(accept(3)).toEqual({ ok: true, value: 3 });
    expect(refuse({ code: "gone", path: "slot" })).toEqual({ ok: false, refusal: { code: "gone", path: "slot" } });
  });
});
