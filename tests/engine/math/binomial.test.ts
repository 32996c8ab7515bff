import { describe, expect, it } from "vitest";
import { binomialBand } from "#engine/math";

describe("binomialBand", () => {
  // Binomial acceptance regions of 200 orders at 95 % (computed apart from this code).
  it.for([
    [200, 0.5, 86, 114],
    [200, 0.8, 149, 171],
    [200, 0.95, 184, 196],
  ] as const)("of %d at %d is %d to %d", ([n, p, low, high]) => {
    expect(binomialBand(n, p, 0.95)).toEqual({ low, high });
  });

  // Distribution-free 95 % intervals of a P95 (David & Nagaraja, Order Statistics; own computation): order statistics 184 and
  // 197 of 200, the band and one more above.
  it.for([
    [100, 90, 100],
    [200, 184, 197],
    [400, 371, 389],
    [1000, 936, 964],
    [2000, 1880, 1920],
  ] as const)("leads to the order statistics around the P95 of %d", ([n, lower, upper]) => {
    const { low, high } = binomialBand(n, 0.95, 0.95);
    expect([low, high + 1]).toEqual([lower, upper]);
  });

  it("knows certain and empty cases", () => {
    expect(binomialBand(0, 0.9, 0.95)).toEqual({ low: 0, high: 0 });
    expect(binomialBand(12, 1, 0.95)).toEqual({ low: 12, high: 12 });
    expect(() => binomialBand(1.5, 0.9, 0.95)).toThrow(/1.5/);
  });
});
