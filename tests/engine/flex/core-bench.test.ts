/** The bench's rules on a core, worked by hand on a few knots. Common practice, no source. */
import { describe, expect, it } from "vitest";
import { type CoreBench, keepsFloors } from "#engine/flex";
import { floorsAt, type Knot, withEndSheets, withoutRise } from "#lib/engine/flex/core-bench";

const bench: CoreBench = {
  bootZone: { fromMm: 400, toMm: 600 },
  floors: [
    { fromMm: 400, toMm: 600, leastMm: 9 },
    { fromMm: 350, toMm: 650, leastMm: 8 },
  ],
  endSheetsMm: [1.8, 2, 2.5],
  reliefShare: 0,
};
const xs = [0, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000];
const knots = (...thicknesses: number[]): Knot[] =>
  thicknesses.map((thicknessMm, i) => ({ xMm: xs[i] ?? 0, thicknessMm, leastMm: 1.5 }));
const mm = (list: readonly Knot[]) => list.map(({ thicknessMm }) => thicknessMm);

describe("floorsAt", () => {
  it("holds at every knot beside a stretch, and falls from there as the mill follows", () => {
    // The pieces 300–400 and 600–700 touch both stretches at their ends: 300 and 700 keep the pocket's 8 mm.
    expect(floorsAt(xs, { minMm: 1.5, maxSlope: 0.04, bench }, 0)).toEqual([1.5, 1.5, 4, 8, 9, 9, 9, 8, 4, 1.5, 1.5]);
    expect(floorsAt(xs, { minMm: 1.5, maxSlope: 0.02, bench }, 0)).toEqual([2, 4, 6, 8, 9, 9, 9, 8, 6, 4, 2]);
  });

  it("is of the built core: what the mill leaves too much need not be programmed", () => {
    expect(floorsAt([500], { minMm: 1.5, maxSlope: 0.04, bench }, 0.2)).toEqual([8.8]);
    expect(floorsAt([0], { minMm: 1.5, maxSlope: 0.04, bench }, 0.2)).toEqual([1.5]);
  });

  it("is the mill's least where there is no bench", () => {
    expect(floorsAt(xs, { minMm: 1.5, maxSlope: 0.04 }, 0)).toEqual(xs.map(() => 1.5));
  });
});

describe("withoutRise", () => {
  it("lowers what rises towards either end, and leaves the boot alone", () => {
    const rising = knots(2.8, 2.5, 2.8, 7, 9, 8.8, 9.4, 7, 2.8, 2.5, 2.8);
    expect(mm(withoutRise(rising, bench.bootZone))).toEqual([2.5, 2.5, 2.8, 7, 9, 8.8, 9.4, 7, 2.8, 2.5, 2.5]);
  });

  it("changes nothing that falls", () => {
    const falling = knots(2, 3, 4, 5, 6, 7, 6, 5, 4, 3, 2);
    expect(withoutRise(falling, bench.bootZone)).toEqual(falling);
  });
});

describe("withEndSheets", () => {
  it("ends in the nearest sheet of its own side, and nothing between it and the boot is thinner", () => {
    const ended = withEndSheets(knots(2.3, 2.4, 4, 7, 9, 9, 9, 7, 3, 1.7, 1.6), bench);
    expect(mm(ended)).toEqual([2.5, 2.5, 4, 7, 9, 9, 9, 7, 3, 1.8, 1.8]);
    expect(ended[1]?.leastMm).toBe(2.5);
    expect(ended[9]?.leastMm).toBe(1.8);
  });

  it("needs a sheet", () => {
    expect(() => withEndSheets(knots(2, 2), { ...bench, endSheetsMm: [] })).toThrow(/endSheetsMm/);
  });
});

describe("keepsFloors", () => {
  const core = (...thicknesses: number[]) => ({ stations: knots(...thicknesses) });

  it("looks between the knots too", () => {
    expect(keepsFloors(core(2, 3, 4, 8, 9, 9, 9, 8, 4, 3, 2), bench)).toBe(true);
    expect(keepsFloors(core(2, 3, 4, 8, 9, 8.9, 9, 8, 4, 3, 2), bench)).toBe(false);
    // At 350, half way from 6.9 to 9, there are 7.95 mm.
    expect(keepsFloors(core(2, 3, 4, 6.9, 9, 9, 9, 8, 4, 3, 2), bench)).toBe(false);
    expect(keepsFloors(core(2, 3, 4, 6.9, 9, 9, 9, 8, 4, 3, 2), bench, 0.1)).toBe(true);
  });
});
