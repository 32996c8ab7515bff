import { describe, expect, it } from "vitest";
import { profileMarks, profileName, thicknessAt } from "#engine/flex";

/** A wedge: 2 mm at 100 mm, 12 mm at 600 mm, 4 mm at 1000 mm. */
const wedge = {
  stations: [
    { xMm: 100, thicknessMm: 2 },
    { xMm: 600, thicknessMm: 12 },
    { xMm: 1000, thicknessMm: 4 },
  ],
};

describe("a thickness programme", () => {
  it.each([
    [100, 2],
    [350, 7],
    [600, 12],
    [800, 8],
    [1000, 4],
    // Level beyond the ends.
    [0, 2],
    [1200, 4],
  ])("at %d mm is %d mm thick", (xMm, thicknessMm) => {
    expect(thicknessAt(wedge, xMm)).toBeCloseTo(thicknessMm, 12);
  });

  it("is marked evenly, on whole centimetres of the wood", () => {
    // Thirds of 104 to 996 mm are 401.3 and 698.7: 400 and 700 on the tape; the ends 100 and 1000 lie off the wood.
    const marks = profileMarks(wedge, { fromMm: 104, toMm: 996 }, 4, 10);
    expect(marks.map(({ xMm }) => xMm)).toEqual([104, 400, 700, 996]);
    expect(marks[1]?.thicknessMm).toBeCloseTo(8, 12);
    expect(() => profileMarks(wedge, { fromMm: 104, toMm: 996 }, 1, 10)).toThrow(RangeError);
  });

  it("is named by FNV-1a over its stations", () => {
    // The published test vectors of FNV-1a: the empty text gives 811c9dc5; other programmes differ from it.
    expect(profileName("M", { stations: [] })).toBe("M-1C9DC5");
    expect(profileName("M", wedge)).toMatch(/^M-[0-9A-F]{6}$/);
    const moved = { stations: wedge.stations.map((s, i) => (i === 1 ? { ...s, thicknessMm: 12.01 } : s)) };
    expect(profileName("M", moved)).not.toBe(profileName("M", wedge));
    // A thousandth of a millimetre is below what a mill is told.
    const same = { stations: wedge.stations.map((s) => ({ ...s, thicknessMm: s.thicknessMm + 0.001 })) };
    expect(profileName("M", same)).toBe(profileName("M", wedge));
  });
});
