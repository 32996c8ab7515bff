import { describe, expect, it } from "vitest";
import finish from "#content/catalog/finish.json";
import { runVerb } from "./run-verb";

describe("flex", () => {
  it("says how sure stiffness and mass are, what from, and what twins may differ by", () => {
    const spec = { model: "midlow-95", lengthCm: 178, core: "aspen-ash", reinforcements: [], flexRatio: 1 };
    const { exitCode, json } = runVerb(["flex"], spec);
    expect(exitCode).toBe(0);
    const { springCentre, massG, twins, bySource } = json.spread;
    const squares = (key: string) =>
      bySource.reduce((sum: number, source: Record<string, number>) => sum + (source[key] ?? 0) ** 2, 0);
    expect(Math.sqrt(squares("springCentre"))).toBeCloseTo(springCentre, 9);
    expect(Math.sqrt(squares("massG"))).toBeCloseTo(massG, 6);
    // The shop's own rules (assumed, no source): centre springs of twins within 3 %, masses within 25 g. A shop that
    // could not keep them in nine pairs of ten would have other limits.
    const limit = finish.qcLimits.find(({ measure }) => measure === "springCentre")?.twins;
    expect(limit).toBe("≤ 3 %");
    expect(1.645 * twins.springCentre).toBeLessThan(0.03);
    expect(1.645 * twins.massG).toBeLessThan(25);
  });
});
