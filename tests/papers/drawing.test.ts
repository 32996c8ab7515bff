import { describe, expect, it } from "vitest";
import { composeBuildSheet } from "#papers";
import { pageBox } from "#papers/parts/theme";
import { axisScale, hatch, mirroredOutline } from "../../lib/papers/parts/drawing";
import { facts } from "./sample";

const points = (path: string) =>
  [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((m) => ({ x: Number(m[1]), y: Number(m[2]) }));

describe("axisScale", () => {
  it("draws the ski true to scale: paper millimetres times the denominator are ski millimetres", () => {
    const { drawing } = composeBuildSheet(facts);
    const { innerPt } = pageBox("A4", "landscape");
    const scale = axisScale(drawing.lengthMm, 22, innerPt - 44);
    const xs = points(mirroredOutline(drawing.outline, scale, 100)).map((p) => p.x);
    const ys = points(mirroredOutline(drawing.outline, scale, 100)).map((p) => p.y);
    const skiMm = (pt: number) => (pt / 72) * 25.4 * scale.denominator;
    expect(skiMm(Math.max(...xs) - Math.min(...xs))).toBeCloseTo(1780, 0);
    expect(skiMm(Math.max(...ys) - Math.min(...ys))).toBeCloseTo(132, 0);
  });

  it.each(["A4", "LETTER"] as const)("finds a scale for every length from 146 to 200 cm on %s", (paper) => {
    for (const orientation of ["portrait", "landscape"] as const) {
      const { innerPt } = pageBox(paper, orientation);
      for (let cm = 146; cm <= 200; cm += 2) {
        const scale = axisScale(cm * 10, 22, innerPt - 44);
        expect(scale.x(0)).toBeGreaterThanOrEqual(22);
        expect(scale.x(cm * 10)).toBeLessThanOrEqual(innerPt - 22 + 1e-6);
      }
    }
  });

  it("cannot draw what fits at no scale", () => {
    expect(() => axisScale(100_000, 0, 500)).toThrow(/lengthMm/);
  });
});

describe("hatch", () => {
  it("stays inside its rectangle either way it leans", () => {
    for (const lean of [1, -1] as const) {
      for (const p of points(hatch(10, 20, 55, 13, 4, lean))) {
        expect(p.x).toBeGreaterThanOrEqual(10);
        expect(p.x).toBeLessThanOrEqual(65);
        expect(p.y).toBeGreaterThanOrEqual(20);
        expect(p.y).toBeLessThanOrEqual(33);
      }
    }
  });
});
