import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lognormalQuantile } from "#engine/handbook";
import {
  lognormalFromMoments,
  lognormalTable,
  normalQuantile,
  normalTable,
  orderStatistic,
  portableExp,
  portableLog,
  quantileRank,
  sampleTable,
} from "#engine/math";

describe("normalQuantile", () => {
  it("gives the tabulated percentage points", () => {
    // Standard normal tables.
    const table = [
      [0.5, 0],
      [0.8, 0.841621233573],
      [0.9, 1.28155156554],
      [0.95, 1.64485362695],
      [0.975, 1.95996398454],
      [0.99, 2.32634787404],
    ] as const;
    for (const [p, z] of table) expect(Math.abs(normalQuantile(p) - z)).toBeLessThan(1e-8);
    // Wichura, Applied Statistics 37 (1988), test values for p = 0.25, 0.001 and 1e-20, from memory.
    expect(normalQuantile(0.25)).toBeCloseTo(-0.6744897501960817, 14);
    expect(normalQuantile(0.001)).toBeCloseTo(-3.090232306167814, 13);
    expect(normalQuantile(1e-20)).toBeCloseTo(-9.26234008979841, 12);
  });

  it("is odd about one half and cannot take 0 or 1", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 0.5, noNaN: true }), (p) => {
        expect(normalQuantile(1 - p)).toBeCloseTo(-normalQuantile(p), 6);
      }),
    );
    expect(() => normalQuantile(0)).toThrow(/p 0/);
    expect(() => normalQuantile(1)).toThrow(/p 1/);
  });
});

describe("portableExp and portableLog", () => {
  it("agree with the mathematical library to 1 part in 1e14", () => {
    fc.assert(
      fc.property(fc.double({ min: -690, max: 690, noNaN: true }), (x) => {
        expect(Math.abs(portableExp(x) / Math.exp(x) - 1)).toBeLessThan(1e-14);
      }),
    );
    fc.assert(
      fc.property(fc.double({ min: 1e-300, max: 1e300, noNaN: true }), (x) => {
        expect(Math.abs(portableLog(x) - Math.log(x))).toBeLessThanOrEqual(1e-14 * Math.max(1, Math.abs(Math.log(x))));
      }),
    );
  });

  it("give e and its inverse", () => {
    expect(portableExp(1)).toBeCloseTo(Math.E, 15);
    expect(portableExp(0)).toBe(1);
    expect(portableLog(1)).toBe(0);
    expect(() => portableLog(0)).toThrow(/positive/);
    expect(() => portableExp(Number.NaN)).toThrow(/NaN/);
  });
});

describe("lognormal", () => {
  it("meets mean, spread and quantiles of the moment identities", () => {
    // Moment identities of the lognormal; [mean, cv, mu, sigma, median, P80, P95].
    const table = [
      [10, 0.3, 2.25949624487, 0.293560379209, 9.57826285221, 12.2627093038, 15.5235790854],
      [4, 0.5, 1.27472258546, 0.472380727077, 3.577708764, 5.32433720712, 7.78127135204],
      [2, 0.15, 0.682021876093, 0.149166380042, 1.97787270574, 2.24243755604, 2.52787426303],
      [1, 1, -0.34657359028, 0.832554611158, Math.SQRT1_2, 1.42492908644, 2.78112878071],
    ] as const;
    for (const [mean, cv, mu, sigma, p50, p80, p95] of table) {
      const law = lognormalFromMoments(mean, cv * mean);
      const found = [law.mu, law.sigma, ...[0.5, 0.8, 0.95].map((p) => lognormalQuantile(law, p))];
      [mu, sigma, p50, p80, p95].forEach((value, i) => {
        expect(Math.abs((found[i] ?? 0) / value - 1)).toBeLessThan(1e-9);
      });
    }
  });

  it("is sampled from a table with the exact mean and nearly the exact spread", () => {
    const table = lognormalTable(10, 3);
    const mean = table.reduce((sum, value) => sum + value, 0) / table.length;
    const deviation = Math.sqrt(table.reduce((sum, value) => sum + (value - mean) ** 2, 0) / table.length);
    expect(mean).toBeCloseTo(10, 10);
    expect(deviation).toBeGreaterThan(2.97);
    expect(deviation).toBeLessThan(3);
    expect(sampleTable(table, 0)).toBe(table[0]);
    expect(sampleTable(table, 4294967295)).toBe(table[4095]);
    expect(sampleTable(table, 2 ** 31)).toBe(table[2048]);
  });

  it("without spread is the mean itself", () => {
    expect(lognormalTable(42, 0).every((value) => Math.abs(value - 42) < 1e-12)).toBe(true);
    expect(() => lognormalTable(0, 1)).toThrow(/mean 0/);
  });

  it("shares one ascending normal table", () => {
    const table = normalTable();
    expect(table).toBe(normalTable());
    expect(table.every((z, i) => i === 0 || z > (table[i - 1] ?? 0))).toBe(true);
  });
});

describe("orderStatistic", () => {
  it("is the inverse of the empirical distribution", () => {
    // Hyndman & Fan 1996, American Statistician 50(4), type 1; data worked by hand.
    const data = [3, 1, 4, 1, 5, 9, 2, 6, 5, 3].sort((a, b) => a - b);
    expect([0.5, 0.8, 0.95].map((p) => orderStatistic(data, p))).toEqual([3, 5, 9]);
    expect(orderStatistic([7], 0)).toBe(7);
  });

  it("takes rank 190 of 200 for the P95 in spite of rounding", () => {
    expect(quantileRank(200, 0.95)).toBe(190);
    expect(quantileRank(1000, 0.8)).toBe(800);
    expect(() => quantileRank(0, 0.5)).toThrow(/count 0/);
  });

  it("commutes with a calendar", () => {
    const clock = (day: number) => 7 * Math.floor(day / 5) + (day % 5);
    // By hand: the middle of working days 2, 5, 7, 11, 14 is day 7, Wednesday of the second week.
    expect(clock(orderStatistic([2, 5, 7, 11, 14], 0.5))).toBe(9);
    expect(orderStatistic([2, 5, 7, 11, 14].map(clock), 0.5)).toBe(9);
    fc.assert(
      fc.property(
        fc.array(fc.nat(200), { minLength: 1, maxLength: 50 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (days, p) => {
          const sorted = days.sort((a, b) => a - b);
          expect(orderStatistic(sorted.map(clock), p)).toBe(clock(orderStatistic(sorted, p)));
        },
      ),
    );
  });
});
