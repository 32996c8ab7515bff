import { expect } from "vitest";
import type { MatchedStrips, Strip, StripProblem } from "#engine/matching";

/** Checks a result against its problem from nothing but the strips themselves; shares no code with the matching. */
export function expectValidMatch(problem: StripProblem, result: MatchedStrips): void {
  const { need, limits } = problem;
  const stock = new Map(problem.strips.map((strip) => [strip.id, strip]));
  const used = new Set<string>();
  const take = (id: string): Strip => {
    expect(used.has(id), `${id} is used twice`).toBe(false);
    used.add(id);
    const strip = stock.get(id);
    if (!strip) throw new Error(`${id} is not in stock`);
    return strip;
  };
  expect(result.pairs.length + result.unmet).toBe(need.pairs);
  expect(result.unmet === 0).toBe(result.why.length === 0);
  for (const pair of result.pairs) {
    const sums = { left: { e: 0, d: 0, moment: 0, total: 0 }, right: { e: 0, d: 0, moment: 0, total: 0 } };
    let weight = 0;
    for (const [i, position] of need.positions.entries()) {
      const moduli: number[] = [];
      for (const side of ["left", "right"] as const) {
        const ids = pair[side][position.name] ?? [];
        expect(ids).toHaveLength(position.perSki);
        const strips = ids.map(take);
        for (const strip of strips) {
          expect(position.species).toContain(strip.species);
          if (position.grades) expect(position.grades).toContain(strip.grade);
          moduli.push(strip.modulusMpa);
          sums[side].e += (position.weight ?? 1) * strip.modulusMpa;
          sums[side].d += (position.weight ?? 1) * strip.densityKgM3;
        }
        const [first, second] = strips;
        if (first && second) {
          const lever = (position.weight ?? 1) * (position.offset ?? i);
          sums[side].moment += lever * (second.modulusMpa - first.modulusMpa);
          sums[side].total += lever * (second.modulusMpa + first.modulusMpa);
        }
      }
      weight += 2 * position.perSki * (position.weight ?? 1);
      const mean = moduli.reduce((a, b) => a + b, 0) / moduli.length;
      const spread = (100 * (Math.max(...moduli) - Math.min(...moduli))) / mean;
      expect(spread).toBeLessThanOrEqual((limits.groupSpreadPercent ?? Number.POSITIVE_INFINITY) + 1e-6);
      expect(pair.groupSpreadPercent[position.name]).toBeCloseTo(spread, 6);
    }
    const apart = (a: number, b: number) => (100 * Math.abs(a - b)) / ((a + b) / 2);
    expect(apart(sums.left.e, sums.right.e)).toBeLessThanOrEqual(
      (limits.twinPercent ?? Number.POSITIVE_INFINITY) + 1e-6,
    );
    expect(pair.twinDifferencePercent).toBeCloseTo(apart(sums.left.e, sums.right.e), 6);
    expect(apart(sums.left.d, sums.right.d)).toBeLessThanOrEqual(
      (limits.densityPercent ?? Number.POSITIVE_INFINITY) + 1e-6,
    );
    for (const side of ["left", "right"] as const) {
      const { moment, total } = sums[side];
      const imbalance = total === 0 ? 0 : (100 * Math.abs(moment)) / total;
      expect(imbalance).toBeLessThanOrEqual((limits.imbalancePercent ?? Number.POSITIVE_INFINITY) + 1e-6);
    }
    const modulus = (sums.left.e + sums.right.e) / weight;
    expect(pair.modulusMpa).toBeCloseTo(modulus, 4);
    if (need.targetModulusMpa !== undefined && limits.targetPercent !== undefined) {
      expect(100 * Math.abs(modulus / need.targetModulusMpa - 1)).toBeLessThanOrEqual(limits.targetPercent + 1e-6);
    }
  }
}
