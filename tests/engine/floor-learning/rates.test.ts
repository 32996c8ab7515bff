import { describe, expect, it } from "vitest";
import { learnFloor } from "#engine/floor-learning";
import { betaQuantiles } from "#engine/math";
import { learnRate } from "#lib/engine/floor-learning/rates";
import { at, floor, history, settings, visit } from "./small-floor";

describe("quantiles of the beta distribution", () => {
  const shares = [0.05, 0.5, 0.95];

  it("are those of the closed forms", () => {
    // Beta(1, 1) is uniform; Beta(2, 1) has F = x², Beta(1, n) F = 1 − (1 − x)ⁿ; Beta(½, ½) is the arcsine law.
    const forms: readonly (readonly [number, number, (share: number) => number])[] = [
      [1, 1, (p) => p],
      [2, 1, Math.sqrt],
      [1, 20, (p) => 1 - (1 - p) ** (1 / 20)],
      [0.5, 0.5, (p) => Math.sin((Math.PI * p) / 2) ** 2],
    ];
    for (const [a, b, quantile] of forms) {
      betaQuantiles(a, b, shares).forEach((found, i) => {
        expect(found / quantile(shares[i] ?? 0)).toBeCloseTo(1, 3);
      });
    }
  });

  it("stand where the polynomial of whole exponents reaches the share", () => {
    // F of Beta(2, 3): 6x² − 8x³ + 3x⁴ (integral of 12·x·(1 − x)²).
    for (const [i, x] of betaQuantiles(2, 3, shares).entries())
      expect(6 * x ** 2 - 8 * x ** 3 + 3 * x ** 4).toBeCloseTo(shares[i] ?? 0, 4);
  });

  it("refuse what is no distribution and shares that do not ascend", () => {
    expect(() => betaQuantiles(0, 1, shares)).toThrow("a 0 and b 1");
    expect(() => betaQuantiles(1, 1, [0.5, 0.5])).toThrow("0.5, 0.5");
    expect(() => betaQuantiles(1, 1, [1])).toThrow("1");
  });
});

describe("a chance learnt from counts", () => {
  it("counts the setting as so many trials", () => {
    // (3 + 0.05·20)/(20 + 20) = 0.1.
    const rate = learnRate(20, 3, 0.05, 20);
    expect(rate.learnt).toBeCloseTo(0.1, 12);
    expect(rate.interval.low).toBeLessThan(0.1);
    expect(rate.interval.high).toBeGreaterThan(0.1);
    expect(learnRate(0, 0, 0.05, 20).learnt).toBeCloseTo(0.05, 12);
  });

  it("that nothing speaks for stays nought, with a bound of its own", () => {
    const rate = learnRate(100, 0, 0, 60);
    expect(rate.learnt).toBe(0);
    expect(rate.interval.low).toBe(0);
    expect(rate.interval.high).toBeGreaterThan(0.005);
    expect(rate.interval.high).toBeLessThan(0.02);
  });
});

describe("rework", () => {
  it("belongs to the loop with its first station, and a pass is a redo or an end that stood", () => {
    const trimmed = (pair: string, day: string) => visit("trim", `${day} 08:00`, `${day} 09:00`, { pair });
    const checked = (pair: string, day: string) => visit("check", `${day} 13:00`, `${day} 14:00`, { pair });
    const learnt = learnFloor(
      floor,
      history(
        [
          ...["a", "b", "c"].flatMap((pair) => [trimmed(pair, "2027-06-08"), checked(pair, "2027-06-10")]),
          trimmed("a", "2027-06-22"),
          checked("a", "2027-06-24"),
          // Checked again after its second finish: the first check is a pass that failed.
          checked("b", "2027-06-18"),
        ],
        {
          redos: [
            { pair: "a", from: "core-glue", atMinute: at("2027-06-11 09:00") },
            { pair: "b", from: "finish", atMinute: at("2027-06-11 10:00") },
            { pair: "c", from: "release", atMinute: at("2027-06-11 11:00") },
          ],
        },
      ),
      settings,
      "FB-1",
    );
    expect(learnt.rework.map(({ loop, failures, trials }) => [loop, failures, trials])).toEqual([
      ["re-press", 1, 4],
      ["qc", 1, 4],
    ]);
    const { passes } = settings.prior;
    expect(learnt.proposal.rework[0]?.probability).toBeCloseTo((1 + 0.05 * passes) / (4 + passes), 3);
    expect(learnt.pairs).toBe(3);
    expect(learnt.enoughPairs).toBe(false);
  });
});
