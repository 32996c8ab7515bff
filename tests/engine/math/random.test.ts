import { describe, expect, it } from "vitest";
import { hashText, intBelow, keyedDraw, mix32, seededRandom, splitmix32, unitFromU32, xoshiro128 } from "#engine/math";

const take = (next: () => number, count: number) => Array.from({ length: count }, () => next());

describe("splitmix32", () => {
  it("gives the known answers for seed 0", () => {
    // Mixer constants: Wellons, hash-prospector (public); the seed-0 words equal those of a public xoshiro128 test suite.
    expect(take(splitmix32(0), 6)).toEqual([1684164658, 3653269916, 2939563536, 2141751570, 3295091513, 4057132772]);
  });
});

describe("xoshiro128", () => {
  it("gives the known answers for state 1, 2, 3, 4", () => {
    // Blackman & Vigna 2018, reference C v1.1; vector of the rand_xoshiro test suite.
    expect(take(xoshiro128([1, 2, 3, 4]), 10)).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });

  it("gives the known answers when four splitmix32 outputs seed it", () => {
    // Words 1684164658, 3653269916, 2939563536, 2141751570: vector of a public test suite.
    expect(take(seededRandom(0), 4)).toEqual([1789933344, 44971166, 2521387044, 3848737593]);
  });

  it("cannot start from a state of zeros", () => {
    expect(() => xoshiro128([0, 0, 0, 0])).toThrow(/0,0,0,0/);
  });
});

describe("unitFromU32", () => {
  it("stays inside the open interval at both ends", () => {
    // (u + ½)/2³²: own definition; values by hand.
    expect(unitFromU32(0)).toBe(0.5 / 2 ** 32);
    expect(unitFromU32(1)).toBe(1.5 / 2 ** 32);
    expect(unitFromU32(2147483648)).toBe(0.5 + 0.5 / 2 ** 32);
    expect(unitFromU32(4294967295)).toBe(1 - 0.5 / 2 ** 32);
  });
});

describe("keyedDraw", () => {
  it("depends on every word of the key and on their order", () => {
    const base = keyedDraw(1, 2, 3, 4, 5);
    const others = [
      keyedDraw(2, 2, 3, 4, 5),
      keyedDraw(1, 3, 3, 4, 5),
      keyedDraw(1, 2, 4, 4, 5),
      keyedDraw(1, 2, 3, 5, 5),
      keyedDraw(1, 2, 3, 4, 6),
      keyedDraw(1, 3, 2, 4, 5),
    ];
    expect(new Set([base, ...others]).size).toBe(7);
    expect(keyedDraw(1, 2, 3, 4, 5)).toBe(base);
  });

  it("spreads neighbouring keys evenly over sixteen cells", () => {
    // Chi-square with 15 degrees of freedom: 99.99 % quantile 44.3 (standard tables).
    for (const key of [
      (i: number) => keyedDraw(7, i, 0, 0, 0),
      (i: number) => keyedDraw(7, 0, i, 0, 0),
      (i: number) => keyedDraw(7, 0, 0, i, 0),
      (i: number) => keyedDraw(7, 0, 0, 0, i),
    ]) {
      const cells = new Array<number>(16).fill(0);
      for (let i = 0; i < 16_000; i++) {
        const cell = key(i) >>> 28;
        cells[cell] = (cells[cell] ?? 0) + 1;
      }
      expect(cells.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0)).toBeLessThan(44.3);
    }
  });

  it("shows no correlation between neighbouring replications", () => {
    let sum = 0;
    const count = 20_000;
    for (let i = 0; i < count; i++) {
      sum += (unitFromU32(keyedDraw(3, i, 9, 2, 0)) - 0.5) * (unitFromU32(keyedDraw(3, i + 1, 9, 2, 0)) - 0.5);
    }
    // Standard error of a correlation is 1/√n; four of them.
    expect(Math.abs((sum * 12) / count)).toBeLessThan(4 / Math.sqrt(count));
  });
});

describe("mix32, hashText and intBelow", () => {
  it("mixes without collisions among the first words", () => {
    expect(new Set(Array.from({ length: 10_000 }, (_, i) => mix32(i))).size).toBe(10_000);
  });

  it("tells similar texts apart and repeats itself", () => {
    expect(hashText("TY-0417")).toBe(hashText("TY-0417"));
    expect(new Set(["TY-0417", "TY-0471", "TY-041", "", "ty-0417"].map(hashText)).size).toBe(5);
  });

  it("reaches every value below the bound and none beyond", () => {
    const random = seededRandom(5);
    expect(new Set(take(() => intBelow(random, 7), 500))).toEqual(new Set([0, 1, 2, 3, 4, 5, 6]));
    expect(() => intBelow(random, 0)).toThrow(/intBelow: 0/);
  });
});
