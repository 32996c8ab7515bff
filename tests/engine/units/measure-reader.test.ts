/**
 * Heights and masses as people write them. Expected values are worked out by hand from the exact definitions 1 in = 2.54 cm
 * (1 ft = 12 in) and 1 lb = 0.45359237 kg (international yard and pound agreement, 1959; NIST SP 811, appendix B.8); 1 st = 14 lb
 * (UK Weights and Measures Act 1985, schedule 1). How people write them: common practice, no source.
 */
import { describe, expect, it } from "vitest";
import { heightCm, massKg, readHeight, readMass } from "#engine/units";

const cm = (value: number) => ({ unit: "cm", cm: value }) as const;
const ft = (feet: number, inches: number) => ({ unit: "ft-in", feet, inches }) as const;
const kg = (value: number) => ({ unit: "kg", kg: value }) as const;
const lb = (value: number) => ({ unit: "lb", lb: value }) as const;

/** Text, what it is, and how many centimetres or kilograms that is. */
const heightsAnywhere = [
  ["178 cm", cm(178), 178],
  ["178cm", cm(178), 178],
  ["178 CM.", cm(178), 178],
  ["178,5 cm", cm(178.5), 178.5],
  ["178.25 centimetres", cm(178.25), 178.25],
  ["1.78 m", cm(178), 178],
  ["1,78 m", cm(178), 178],
  ["1,78m", cm(178), 178],
  ["1 m 78", cm(178), 178],
  ["1m78", cm(178), 178],
  ["1 m 78 cm", cm(178), 178],
  ["2 m", cm(200), 200],
  ["1780 mm", cm(178), 178],
  ["1.78", cm(178), 178],
  ["1,78", cm(178), 178],
  ["178", cm(178), 178],
  ["5'10\"", ft(5, 10), 177.8],
  ["5'10", ft(5, 10), 177.8],
  ["5’10”", ft(5, 10), 177.8],
  ["5′ 10″", ft(5, 10), 177.8],
  ["5' 10''", ft(5, 10), 177.8],
  ["5' 10½", ft(5, 10.5), 179.07],
  ["5'10 1/2\"", ft(5, 10.5), 179.07],
  ["5'10.5\"", ft(5, 10.5), 179.07],
  ["5'10,5", ft(5, 10.5), 179.07],
  ["5 ft 10", ft(5, 10), 177.8],
  ["5ft10in", ft(5, 10), 177.8],
  ["5 ft. 10 in.", ft(5, 10), 177.8],
  ["5 Feet, 10 Inches", ft(5, 10), 177.8],
  ["5 foot 7¼", ft(5, 7.25), 170.815],
  ["5 10", ft(5, 10), 177.8],
  ["5½ ft", ft(5, 6), 167.64],
  ["6 ft", ft(6, 0), 182.88],
  ["6'", ft(6, 0), 182.88],
  ["70 in", ft(5, 10), 177.8],
  ['70"', ft(5, 10), 177.8],
  ["70.5 inches", ft(5, 10.5), 179.07],
] as const;

const bareHeights = [
  ["178,0", "cm", cm(178)],
  ["95", "cm", cm(95)],
  ["2,0", "cm", cm(200)],
  ["1780", "cm", cm(178)],
  ["5", "ft-in", ft(5, 0)],
  ["70", "ft-in", ft(5, 10)],
  ["70,5", "ft-in", ft(5, 10.5)],
  ["2.01", "ft-in", cm(201)],
] as const;

const massesAnywhere = [
  ["74 kg", kg(74), 74],
  ["74kg", kg(74), 74],
  ["74,5 kg", kg(74.5), 74.5],
  ["74.5 Kilos", kg(74.5), 74.5],
  ["163 lb", lb(163), 73.93555631],
  ["163lbs.", lb(163), 73.93555631],
  ["163,5 pounds", lb(163.5), 74.162352495],
  ["12 st 3", lb(171), 77.56429527],
  ["12st3lb", lb(171), 77.56429527],
  ["12 stone 3 lbs", lb(171), 77.56429527],
  ["12 st 3½ lb", lb(171.5), 77.791091455],
  ["12 st", lb(168), 76.20351816],
  ["12.5 st", lb(175), 79.37866475],
  ["20 stone", lb(280), 127.0058636],
  ["9½ stone", lb(133), 60.32778521],
] as const;

const bareMasses = [
  ["74", "kg", kg(74)],
  ["74,5", "kg", kg(74.5)],
  ["163", "lb", lb(163)],
  ["163", "kg", kg(163)],
] as const;

/** Not to be guessed, in either box. */
const unclearHeights = [
  "tall",
  "-5",
  "178 cn",
  "178 kg",
  "12 st 3",
  "5.10 ft",
  "5 ft 13",
  "5 ft 10 cm",
  "5 ft 10 in 3",
  "1 m 178",
  "about 178",
  "170-175",
  "5 x 10",
  "1/0 m",
  "178 cm?",
];
const unclearMasses = ["20 stone x", "heavy", "12 st 14", "74 cm", "12 3", "5'10", "74 kg 500", "80-85", "1e2"];

describe("a height", () => {
  it.each(heightsAnywhere)("%s is read in any box", (text, value, expectedCm) => {
    for (const box of ["cm", "ft-in"] as const) {
      expect(readHeight(text, box)).toEqual({ kind: "read", value });
    }
    expect(heightCm(value)).toBeCloseTo(expectedCm, 9);
  });

  it.each(bareHeights)(
    "%s in a box of %s is read by the box's unit, or by the one that makes sense",
    (text, box, value) => {
      expect(readHeight(text, box)).toEqual({ kind: "read", value });
    },
  );

  it.each(unclearHeights)("%s is asked about", (text) => {
    for (const box of ["cm", "ft-in"] as const) expect(readHeight(text, box)).toEqual({ kind: "unclear" });
  });

  it("is asked about where the box leaves two meanings", () => {
    // Five ten, or five feet and a tenth.
    expect(readHeight("5.10", "ft-in")).toEqual({ kind: "unclear" });
    // 70 in would be a height, and 70 kg a weight in the wrong box.
    expect(readHeight("70", "cm")).toEqual({ kind: "outside" });
  });

  it("of nobody is told apart from no height", () => {
    for (const text of ["1", "2", "17 cm", "89.9 cm", "250.1 cm", "9000", "3 m", "9 ft", "30 in"]) {
      expect(readHeight(text, "cm")).toEqual({ kind: "outside" });
    }
    for (const text of ["90 cm", "250 cm", "8 ft"]) expect(readHeight(text, "cm").kind).toBe("read");
  });

  it("is empty when nothing stands there", () => {
    for (const text of ["", "  ", "\u00a0"]) expect(readHeight(text, "cm")).toEqual({ kind: "empty" });
  });
});

describe("a mass", () => {
  it.each(massesAnywhere)("%s is read in any box", (text, value, expectedKg) => {
    for (const box of ["kg", "lb"] as const) expect(readMass(text, box)).toEqual({ kind: "read", value });
    expect(massKg(value)).toBeCloseTo(expectedKg, 9);
  });

  it.each(bareMasses)("%s in a box of %s is read by the box's unit", (text, box, value) => {
    expect(readMass(text, box)).toEqual({ kind: "read", value });
  });

  it.each(unclearMasses)("%s is asked about", (text) => {
    for (const box of ["kg", "lb"] as const) expect(readMass(text, box)).toEqual({ kind: "unclear" });
  });

  it("of nobody is told apart from no mass", () => {
    for (const text of ["14.9 kg", "301 kg", "30 lb", "2 st"])
      expect(readMass(text, "kg")).toEqual({ kind: "outside" });
    for (const text of ["15 kg", "300 kg", "34 lb"]) expect(readMass(text, "kg").kind).toBe("read");
  });
});
