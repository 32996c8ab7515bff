/** Where the numerical tools end: bounds, refusals and closed forms, each worked by hand or from the textbook named. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { integrate, integratePiecewiseLinear } from "#engine/handbook";
import {
  binomialBand,
  evenlySpaced,
  findRoot,
  hashText,
  intBelow,
  interpolate,
  invert,
  jacobiEigenvalues,
  keyedDraw,
  lognormalFromMoments,
  mix32,
  normalQuantile,
  normalTable,
  orderStatistic,
  pieceIndex,
  portableExp,
  portableLog,
  quantileRank,
  solveLinear,
  sortedDistinct,
  TABLE_SIZE,
  xoshiro128,
} from "#engine/math";

describe("pieceIndex", () => {
  it.each([
    [[0, 10], -5, 0],
    [[0, 10], 10, 0],
    [[0, 10, 20], 9.9, 0],
    [[0, 10, 20], 10, 1],
    [[0, 10, 20], 20, 1],
    [[0, 10, 20], 99, 1],
    // A step: the later piece.
    [[0, 10, 10, 20], 10, 2],
    [[0, 1, 2, 3, 4, 5], 3.5, 3],
    [[0, 1, 2, 3, 4, 5], 0.5, 0],
    [[0, 1, 2, 3, 4, 5], 4.5, 4],
  ])("of %j holds %d in piece %d", (xs, x, piece) => {
    expect(pieceIndex(xs, x)).toBe(piece);
  });

  it("agrees with a search from the left, for any knots", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 2, maxLength: 9 }),
        fc.integer({ min: -1, max: 13 }),
        (knots, x) => {
          const xs = knots.toSorted((a, b) => a - b);
          const last = xs.slice(0, -1).findLastIndex((knot) => knot <= x);
          expect(pieceIndex(xs, x)).toBe(Math.max(0, last));
        },
      ),
    );
  });

  it("a single knot holds everywhere", () => {
    expect([-1, 3, 9].map((x) => interpolate([3], [7], x))).toEqual([7, 7, 7]);
    expect(() => interpolate([0], [0, 1], 0)).toThrow(/1 knots and 2 values/);
  });
});

describe("sortedDistinct and evenlySpaced", () => {
  it("keep the first of near neighbours, and what lies further apart than asked", () => {
    expect(sortedDistinct([2, 1, 2, 1])).toEqual([1, 2]);
    // 1.5 is exactly 0.5 from 1 and goes; 2 is one from 1, the last that was kept, and stays.
    expect(sortedDistinct([1, 1.5, 2], 0.5)).toEqual([1, 2]);
    expect(sortedDistinct([])).toEqual([]);
  });

  it("end exactly where told", () => {
    expect(evenlySpaced(0.1, 0.7, 1)).toEqual([0.1, 0.7]);
    expect(evenlySpaced(0.1, 0.7, 3).at(-1)).toBe(0.7);
    expect(evenlySpaced(5, 2, 3)).toEqual([5, 4, 3, 2]);
    for (const pieces of [0, -1, 1.5]) expect(() => evenlySpaced(0, 1, pieces)).toThrow(`pieces ${pieces}`);
  });
});

describe("integrals", () => {
  it("a polygon's area: 0–1–3 through 0, 2, −4 is 1 − 2", () => {
    expect(integratePiecewiseLinear([0, 1, 3], [0, 2, -4])).toBe(-1);
    expect(integratePiecewiseLinear([5], [3])).toBe(0);
  });

  it("pieces do not change what is exact in each: ∫x³ from 1 to 3 is 20", () => {
    for (const pieces of [1, 2, 7]) expect(integrate((x) => x ** 3, 1, 3, pieces)).toBeCloseTo(20, 11);
    expect(integrate((x) => x ** 3, 3, 1)).toBeCloseTo(-20, 11);
    // A break on the boundary of two pieces: |x − 1| from 0 to 2 has the area 1.
    expect(integrate((x) => Math.abs(x - 1), 0, 2, 2)).toBeCloseTo(1, 12);
    for (const pieces of [0, 0.5]) expect(() => integrate(() => 1, 0, 1, pieces)).toThrow(`pieces ${pieces}`);
  });
});

describe("findRoot", () => {
  it("takes a root that lies on an end of the bracket", () => {
    expect(findRoot((x) => x, 0, 1)).toBe(0);
    expect(findRoot((x) => x - 1, 0, 1)).toBe(1);
  });

  it("comes within the tolerance asked for, and no further than it must", () => {
    for (const tolerance of [0.1, 1e-3, 1e-9]) {
      let calls = 0;
      const root = findRoot(
        (x) => {
          calls++;
          return Math.exp(x) - 5;
        },
        0,
        4,
        tolerance,
      );
      expect(Math.abs(root - Math.log(5))).toBeLessThanOrEqual(tolerance);
      // Superlinear: a smooth function needs far fewer steps than halving 4 down to 1e-9 (32).
      expect(calls).toBeLessThan(13);
    }
  });

  it("halves where the function has no slope to go by: sign(x − 0.3) in about log₂(1/1e-6) = 20 steps", () => {
    let calls = 0;
    const root = findRoot(
      (x) => {
        calls++;
        return x < 0.3 ? -1 : 1;
      },
      0,
      1,
      1e-6,
    );
    expect(root).toBeCloseTo(0.3, 6);
    expect(calls).toBeLessThan(45);
  });

  it("cannot work with what is not finite", () => {
    expect(() => findRoot((x) => 1 / x, 0, 1)).toThrow(/must be finite/);
    expect(() => findRoot((x) => (x === 1 ? Number.NaN : -1), 0, 1)).toThrow(/must be finite/);
  });
});

describe("dense systems", () => {
  it("x + 2y + z = 8, 2x + y − z = 1, x − y + z = 2 has the solution 1, 2, 3 (by hand), for all right sides at once", () => {
    const a = [
      [1, 2, 1],
      [2, 1, -1],
      [1, -1, 1],
    ];
    const solved = solveLinear(a, [
      [8, 0],
      [1, 0],
      [2, 0],
    ]);
    expect(solved.map((row) => row[0])).toEqual([1, 2, 3].map((x) => expect.closeTo(x, 12)));
    expect(solved.map((row) => Math.abs(row[1] ?? 1))).toEqual([0, 0, 0]);
  });

  it("takes the largest entry of a column as pivot: 1e-20·x + y = 1, x + y = 2 is 1, 1 (Golub & Van Loan, § 3.4)", () => {
    const [x, y] = solveLinear(
      [
        [1e-20, 1],
        [1, 1],
      ],
      [[1], [2]],
    );
    expect(x?.[0]).toBeCloseTo(1, 12);
    expect(y?.[0]).toBeCloseTo(1, 12);
  });

  it("cannot solve what is not square, empty, or has another number of right sides", () => {
    expect(() => solveLinear([], [])).toThrow(/square/);
    expect(() => solveLinear([[1]], [[1], [2]])).toThrow(/got 1 and 2/);
    expect(() =>
      solveLinear(
        [
          [1, 2],
          [3, 4, 5],
        ],
        [[1], [2]],
      ),
    ).toThrow(/square/);
    expect(() => invert([[0]])).toThrow(/singular/);
    expect(invert([[1e-200]])[0]?.[0]).toBeCloseTo(1e200, -190);
  });
});

describe("jacobiEigenvalues", () => {
  const ascending = (values: readonly number[]) => values.toSorted((a, b) => a - b);

  it("2, 1 / 1, 2 has 1 and 3; a diagonal matrix its diagonal; equal diagonals turn by 45°", () => {
    const sorted = (m: number[][]) => ascending(jacobiEigenvalues(m));
    expect(
      sorted([
        [2, 1],
        [1, 2],
      ]),
    ).toEqual([1, 3].map((x) => expect.closeTo(x, 12)));
    expect(
      sorted([
        [5, 0],
        [0, -3],
      ]),
    ).toEqual([-3, 5]);
    expect(
      sorted([
        [0, -4],
        [-4, 0],
      ]),
    ).toEqual([-4, 4].map((x) => expect.closeTo(x, 12)));
  });

  it("the chain of n springs has 2 − 2·cos(kπ/(n + 1)) (closed form of the second-difference matrix)", () => {
    for (const n of [3, 8, 25]) {
      const chain = Array.from({ length: n }, (_, i) =>
        Array.from({ length: n }, (__, j) => (i === j ? 2 : Math.abs(i - j) === 1 ? -1 : 0)),
      );
      const found = ascending(jacobiEigenvalues(chain));
      found.forEach((value, i) => {
        expect(value).toBeCloseTo(2 - 2 * Math.cos(((i + 1) * Math.PI) / (n + 1)), 12);
      });
    }
  });

  it("keeps trace and sum of squares of any symmetric matrix, and does not touch it", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { minLength: 15, maxLength: 15 }), (values) => {
        const at = (i: number, j: number) => values[(Math.max(i, j) * (Math.max(i, j) + 1)) / 2 + Math.min(i, j)] ?? 0;
        const matrix = Array.from({ length: 5 }, (_, i) => Array.from({ length: 5 }, (__, j) => at(i, j)));
        const before = structuredClone(matrix);
        const found = jacobiEigenvalues(matrix);
        const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);
        expect(sum(found)).toBeCloseTo(sum(matrix.map((row, i) => row[i] ?? 0)), 9);
        expect(sum(found.map((x) => x * x))).toBeCloseTo(sum(matrix.flat().map((x) => x * x)), 7);
        expect(matrix).toEqual(before);
      }),
    );
  });
});

describe("exp and log at the ends of what they take", () => {
  it("take ±700 and refuse beyond", () => {
    expect(portableExp(700) / Math.exp(700)).toBeCloseTo(1, 13);
    expect(portableExp(-700) / Math.exp(-700)).toBeCloseTo(1, 13);
    for (const x of [700.1, -700.1]) expect(() => portableExp(x)).toThrow(`${x} is not within`);
  });

  it("take the smallest and the largest normal number and refuse beyond", () => {
    // ln of 2⁻¹⁰²² and of nearly 2¹⁰²⁴.
    expect(portableLog(2 ** -1022)).toBeCloseTo(-1022 * Math.LN2, 10);
    expect(portableLog(Number.MAX_VALUE)).toBeCloseTo(1024 * Math.LN2, 10);
    for (const x of [2 ** -1023, Number.POSITIVE_INFINITY, -1]) expect(() => portableLog(x)).toThrow(/positive normal/);
  });
});

describe("quantiles at their ends", () => {
  it("a far tail is where the tail formula says: z(1e-300) = −37.0471 (asymptotic series of the normal tail, by hand)", () => {
    const z = normalQuantile(1e-300);
    // Φ(z) ≈ φ(z)/|z|·(1 − 1/z² + 3/z⁴ − 15/z⁶); its logarithm gives p back.
    const tail = Math.log(1 - 1 / z ** 2 + 3 / z ** 4 - 15 / z ** 6);
    expect(-(z * z) / 2 - Math.log(-z * Math.sqrt(2 * Math.PI)) + tail).toBeCloseTo(-300 * Math.LN10, 6);
    for (const p of [-0.1, 1.1, Number.NaN]) expect(() => normalQuantile(p)).toThrow(`p ${p}`);
  });

  it("joins its three formulas without a step (at |p − ½| = 0.425 and at r = 5)", () => {
    for (const p of [0.075, 0.925, Math.exp(-25)]) {
      const z = normalQuantile(p);
      const eps = p * 1e-9;
      const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
      const slope = (normalQuantile(p + eps) - normalQuantile(p - eps)) / (2 * eps);
      expect(slope * density).toBeCloseTo(1, 4);
    }
  });

  it("stands at the middles of 4096 cells", () => {
    expect(TABLE_SIZE).toBe(4096);
    expect(normalTable()).toHaveLength(4096);
    expect(normalTable()[0]).toBe(normalQuantile(0.5 / 4096));
    expect(normalTable()[2047]).toBeCloseTo(-(normalTable()[2048] ?? 0), 14);
  });

  it("takes no spread and no negative spread", () => {
    expect(lognormalFromMoments(2, 0)).toEqual({ mu: expect.closeTo(Math.log(2), 14), sigma: 0 });
    expect(() => lognormalFromMoments(2, -0.1)).toThrow(/standardDeviation -0.1/);
    expect(() => lognormalFromMoments(-2, 1)).toThrow(/mean -2/);
  });

  it("ranks from 1 to n: ceil(n·p)", () => {
    const ranks = [0, 0.1, 0.2, 0.21, 0.999, 1].map((p) => quantileRank(5, p));
    expect(ranks).toEqual([1, 1, 1, 2, 5, 5]);
    expect(quantileRank(1, 0.5)).toBe(1);
    for (const p of [-0.01, 1.01]) expect(() => quantileRank(5, p)).toThrow(`p ${p}`);
    expect(() => orderStatistic([], 0.5)).toThrow(/count 0/);
  });
});

describe("binomialBand by hand", () => {
  it("of two fair coins is 0 to 2 at 95 % and 1 alone at 40 %", () => {
    // Chances 1/4, 1/2, 1/4: the cumulative 0.25 reaches 0.025 at 0 and 1 reaches 0.975 at 2; 0.75 reaches 0.3 and 0.7 at 1.
    expect(binomialBand(2, 0.5, 0.95)).toEqual({ low: 0, high: 2 });
    expect(binomialBand(2, 0.5, 0.4)).toEqual({ low: 1, high: 1 });
    expect(binomialBand(3, 0, 0.9)).toEqual({ low: 0, high: 0 });
    expect(binomialBand(1, 0.9, 0.9)).toEqual({ low: 0, high: 1 });
  });

  it("cannot count a share outside 0 to 1 or fewer trials than none", () => {
    expect(() => binomialBand(-1, 0.5, 0.9)).toThrow(/n -1/);
    for (const p of [-0.1, 1.1, Number.NaN]) expect(() => binomialBand(5, p, 0.9)).toThrow(`p ${p}`);
  });
});

describe("draws against the same arithmetic in whole numbers without end", () => {
  const word = (x: bigint) => x & 0xffffffffn;
  /** Mixer of the hash-prospector search: shift 16, 21f0aaad, shift 15, 735a2d97, shift 15. */
  const mix = (x: bigint) => {
    let z = word(x);
    z = word((z ^ (z >> 16n)) * 0x21f0aaadn);
    z = word((z ^ (z >> 15n)) * 0x735a2d97n);
    return z ^ (z >> 15n);
  };
  const golden = 0x9e3779b9n;
  const anyWord = fc.integer({ min: 0, max: 0xffffffff });

  it("mixes, and keys seed, replication, order, operation and visit in turn", () => {
    fc.assert(
      fc.property(fc.tuple(anyWord, anyWord, anyWord, anyWord, anyWord), (key) => {
        expect(mix32(key[0])).toBe(Number(mix(BigInt(key[0]))));
        const drawn = key.reduce((hash, part) => mix((hash ^ BigInt(part)) + golden), 0n);
        expect(keyedDraw(...key)).toBe(Number(drawn));
      }),
    );
  });

  it("hashes texts by FNV-1a (offset 811c9dc5, prime 01000193), low byte of each letter first", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 8 }), (text) => {
        let hash = 0x811c9dc5n;
        for (let i = 0; i < text.length; i++) {
          const unit = BigInt(text.charCodeAt(i));
          for (const byte of [unit & 0xffn, unit >> 8n]) hash = word((hash ^ byte) * 0x01000193n);
        }
        expect(hashText(text)).toBe(Number(mix(hash)));
      }),
    );
  });

  it("takes whole numbers below a bound by their share of 2³²", () => {
    const drawn = (u32: number, below: number) => intBelow(() => u32, below);
    expect([0, 2 ** 31 - 1, 2 ** 31, 2 ** 32 - 1].map((u) => drawn(u, 2))).toEqual([0, 0, 1, 1]);
    expect(drawn(2 ** 32 - 1, 1)).toBe(0);
    for (const below of [0, -1, 1.5]) expect(() => drawn(0, below)).toThrow(`intBelow: ${below}`);
  });

  it("a generator runs from any state but zero", () => {
    for (const state of [
      [1, 0, 0, 0],
      [0, 0, 0, 1],
      [0, -1, 0, 0],
    ] as const)
      expect(new Set(Array.from({ length: 20 }, xoshiro128([...state]))).size).toBeGreaterThan(5);
  });
});
