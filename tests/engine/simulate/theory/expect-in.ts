import { expect } from "vitest";

interface Interval {
  readonly mean: number;
  readonly halfWidth: number;
}

/** The expected value lies in the simulation's 99.9 % interval, and that is no wider than this share of it. */
export function expectIn(expected: number, found: Interval, narrow: number): void {
  expect(Math.abs(found.mean - expected), `${found.mean} ± ${found.halfWidth}, not ${expected}`).toBeLessThanOrEqual(
    found.halfWidth,
  );
  expect(found.halfWidth / expected).toBeLessThan(narrow);
}
