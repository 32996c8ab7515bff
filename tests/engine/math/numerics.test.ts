import fc from "fast-check";
import { Matrix as Dense } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { integrate, integratePiecewiseLinear } from "#engine/handbook";
import { evenlySpaced, findRoot, interpolate, invert, solveLinear, sortedDistinct } from "#engine/math";

const coefficient = fc.double({ min: -10, max: 10, noNaN: true });

describe("interpolate", () => {
  it("follows straight lines and holds the end values", () => {
    expect([-1, 0, 5, 15, 99].map((x) => interpolate([0, 10, 20], [1, 3, 7], x))).toEqual([1, 1, 2, 5, 7]);
  });

  it("takes the later value at a step", () => {
    expect(interpolate([0, 10, 10, 20], [1, 1, 5, 5], 10)).toBe(5);
    expect(interpolate([0, 10, 10, 20], [1, 1, 5, 5], 9.999)).toBe(1);
  });

  it("meets every knot and stays between neighbours", () => {
    fc.assert(
      fc.property(
        fc.array(coefficient, { minLength: 2, maxLength: 20 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (ys, u) => {
          const xs = ys.map((_, i) => i * 3);
          ys.forEach((y, i) => {
            expect(interpolate(xs, ys, i * 3) === y).toBe(true);
          });
          const value = interpolate(xs, ys, u * 3);
          expect(value).toBeGreaterThanOrEqual(Math.min(ys[0] ?? 0, ys[1] ?? 0) - 1e-12);
          expect(value).toBeLessThanOrEqual(Math.max(ys[0] ?? 0, ys[1] ?? 0) + 1e-12);
        },
      ),
    );
  });

  it("cannot work without knots or with lists of different length", () => {
    expect(() => interpolate([], [], 0)).toThrow(/0 knots/);
    expect(() => interpolate([0, 1], [0], 0)).toThrow(/2 knots and 1 values/);
  });
});

describe("evenlySpaced and sortedDistinct", () => {
  it("include both ends and drop near repeats", () => {
    expect(evenlySpaced(0, 1, 4)).toEqual([0, 0.25, 0.5, 0.75, 1]);
    expect(sortedDistinct([3, 1, 1.0005, 2], 0.001)).toEqual([1, 2, 3]);
    expect(() => evenlySpaced(0, 1, 0)).toThrow(/pieces 0/);
  });
});

describe("integrate", () => {
  it("is exact for polynomials of degree nine", () => {
    fc.assert(
      fc.property(fc.array(coefficient, { minLength: 10, maxLength: 10 }), (c) => {
        const f = (x: number) => c.reduce((sum, k) => sum * x + k, 0);
        const exact = c.reduce((sum, k, i) => sum + (k * 2 ** (10 - i)) / (10 - i), 0);
        const size = c.reduce((sum, k) => sum + Math.abs(k) * 200, 1);
        expect(Math.abs(integrate(f, 0, 2) - exact)).toBeLessThan(1e-13 * size);
      }),
    );
  });

  it("closes in on the area of a quarter circle", () => {
    expect(integrate((x) => Math.sqrt(1 - x * x), 0, 1, 400)).toBeCloseTo(Math.PI / 4, 5);
    expect(integratePiecewiseLinear([0, 1, 3], [0, 2, 4])).toBe(7);
  });
});

describe("findRoot", () => {
  it("finds the real root of x³ − 2x − 5 (Wallis 1685: 2.0945514815)", () => {
    expect(findRoot((x) => x ** 3 - 2 * x - 5, 2, 3)).toBeCloseTo(2.0945514815423265, 10);
  });

  it("finds a root anywhere in the bracket, from either side, in few steps", () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 5, noNaN: true }), fc.boolean(), (root, falling) => {
        let calls = 0;
        const f = (x: number) => {
          calls++;
          return (falling ? -1 : 1) * ((x - root) ** 3 + 0.1 * (x - root));
        };
        expect(findRoot(f, -6, 7)).toBeCloseTo(root, 8);
        expect(calls).toBeLessThan(80);
      }),
    );
  });

  it("cannot start without a change of sign", () => {
    expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow(/opposite sign/);
  });
});

describe("solveLinear and invert", () => {
  it("invert random well-conditioned matrices of 3 and 6 rows", () => {
    for (const size of [3, 6]) {
      fc.assert(
        fc.property(
          fc.array(fc.array(coefficient, { minLength: size, maxLength: size }), { minLength: size, maxLength: size }),
          (rows) => {
            const matrix = rows.map((row, i) =>
              row.map((value, j) => (i === j ? value + Math.sign(value || 1) * 60 : value)),
            );
            new Dense(matrix)
              .mmul(new Dense(invert(matrix)))
              .to2DArray()
              .forEach((row, i) => {
                row.forEach((value, j) => {
                  expect(value).toBeCloseTo(i === j ? 1 : 0, 10);
                });
              });
          },
        ),
      );
    }
  });

  it("pivot past a zero on the diagonal", () => {
    expect(
      solveLinear(
        [
          [0, 2],
          [4, 0],
        ],
        [[6], [8]],
      ),
    ).toEqual([[2], [3]]);
  });

  it("cannot solve a singular system", () => {
    expect(() =>
      invert([
        [1, 2],
        [2, 4],
      ]),
    ).toThrow(/singular/);
    expect(() => invert([[1, 2]])).toThrow(/square/);
  });
});
