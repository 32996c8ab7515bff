import { describe, expect, it } from "vitest";
import words from "#content/copy/dates.json";
import { toldShare } from "#engine/units";

describe("a share in words", () => {
  it.each([
    [0.5, "half"],
    [0.524, "half"],
    [0.525, "eleven of twenty"],
    [0.74, "three of four"],
    [0.875, "nine of ten"],
    [0.9, "nine of ten"],
    [0.974, "19 of 20"],
    [0.975, "nearly all"],
    [1, "nearly all"],
    [0, "none"],
  ])("%d is %s", (share, told) => {
    expect(toldShare(share, words.shares)).toBe(told);
  });

  it("that has no name is told in per cent, a twentieth at a time", () => {
    expect(toldShare(0.62, {})).toBe("60 %");
  });

  it("has a name for every twentieth, and each says what it is", () => {
    const numbers: Readonly<Record<string, number>> = {
      one: 1,
      two: 2,
      three: 3,
      four: 4,
      five: 5,
      seven: 7,
      nine: 9,
      ten: 10,
      eleven: 11,
      twenty: 20,
    };
    const number = (text = "") => numbers[text] ?? Number(text);
    const plain: Readonly<Record<string, number>> = { none: 0, half: 50, "nearly all": 100 };
    expect(Object.keys(words.shares).map(Number)).toEqual(Array.from({ length: 21 }, (_, i) => 5 * i));
    for (const [percent, told] of Object.entries(words.shares)) {
      const [part, whole] = told.split(" of ");
      expect(plain[told] ?? (100 * number(part)) / number(whole), told).toBe(Number(percent));
    }
  });
});
