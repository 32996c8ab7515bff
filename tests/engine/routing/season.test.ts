import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { binomialBand } from "#engine/math";
import { isWhole, proofSeed } from "../../support/proof";
import { demoSeason, season } from "../../support/season";

const seasons = isWhole("seasons") ? 20 : 3;

/**
 * How far a share may be from the shares that are meant by chance alone, 499 times of 500. Orders of one season share its
 * shocks, so that four of them tell no more than one would alone.
 */
function bandOf(orders: number, [least, most]: readonly [number, number]): readonly [number, number] {
  const told = Math.floor(orders / 4);
  return [binomialBand(told, least, 0.996).low / told, binomialBand(told, most, 0.996).high / told];
}

describe(`${seasons} seasons of the shop, seed ${proofSeed}`, () => {
  it("keep 85 to 95 of 100 promises made at the nine-of-ten day", { timeout: 600_000 }, () => {
    // A promise at P90 from n runs is kept with chance 0.9 n/(n + 1) at best when the engine is honest (order statistics,
    // David & Nagaraja); orders of one season share its shocks, so seasons are pooled. The band is the shop's own goal; a
    // few seasons are held to what so few can tell of it.
    const { floor } = loadCatalog();
    const first = (proofSeed - 1) * seasons + 1;
    const orders = Array.from(
      { length: seasons },
      (_, index) => season(demoSeason(floor, first + index)).orders,
    ).flat();
    const share = (isCounted: (order: (typeof orders)[number]) => boolean) =>
      orders.filter(isCounted).length / orders.length;
    const band = (goal: readonly [number, number]) => (isWhole("seasons") ? goal : bandOf(orders.length, goal));
    expect(orders.length).toBeGreaterThan(50 * seasons);
    const kept = share(({ isKept }) => isKept);
    const [least, most] = band([0.85, 0.95]);
    expect(kept).toBeGreaterThanOrEqual(least);
    expect(kept).toBeLessThanOrEqual(most);
    // The middle day is no promise, but neither may it be empty talk.
    const byP50 = share(({ isByP50 }) => isByP50);
    const [seldom, often] = band([0.35, 0.75]);
    expect(byP50).toBeGreaterThan(seldom);
    expect(byP50).toBeLessThan(often);
    expect(orders.every(({ cameOn, p50, promisedOn }) => cameOn < p50 && p50 <= promisedOn)).toBe(true);
  });
});
