import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  halfOutline,
  halfWidthAt,
  machineOutline,
  type OutlinePoint,
  offsetOutline,
  outlineAreaMm2,
  outlineDxf,
  outlineSvgPath,
  shapeAtLength,
} from "#engine/geometry";
import { everyModelLength, modelShape } from "./truth";

const midlow = shapeAtLength(modelShape("midlow-95"), 178);
const anyShape = fc
  .constantFrom(...everyModelLength)
  .map(({ shape, printed }) => shapeAtLength(shape, printed.lengthCm));

/** Whole length around a half outline and its mirror image. */
function perimeterMm(outline: readonly OutlinePoint[]): number {
  const chords = outline.slice(1).map((b, i) => {
    const a = outline[i] ?? b;
    return Math.hypot(b.xMm - a.xMm, b.halfWidthMm - a.halfWidthMm);
  });
  const ends = (outline[0]?.halfWidthMm ?? 0) + (outline.at(-1)?.halfWidthMm ?? 0);
  return 2 * (chords.reduce((sum, each) => sum + each, 0) + ends);
}

/** Fails when a half outline turns back along the ski or crosses the centre line: then its mirror image would cross it. */
function expectSimple(outline: readonly OutlinePoint[]): void {
  const mostMm = Math.max(...outline.map((p) => p.halfWidthMm));
  const widest = outline.findIndex((p) => p.halfWidthMm === mostMm);
  expect(widest).toBeGreaterThan(0);
  for (const [i, point] of outline.entries()) {
    expect(point.halfWidthMm).toBeGreaterThanOrEqual(0);
    const before = outline[i - 1];
    if (before) expect(point.xMm).toBeGreaterThanOrEqual(before.xMm - 1e-6);
  }
}

/** Shortest distance from a point to a polygon's chords, brute force and independent of the offset's own. */
function distanceTo(outline: readonly OutlinePoint[], { xMm, halfWidthMm }: OutlinePoint): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const [i, b] of outline.entries()) {
    const a = outline[i - 1];
    if (!a) continue;
    const [dx, dy] = [b.xMm - a.xMm, b.halfWidthMm - a.halfWidthMm];
    const along = ((xMm - a.xMm) * dx + (halfWidthMm - a.halfWidthMm) * dy) / (dx * dx + dy * dy);
    const t = Math.max(0, Math.min(1, along));
    nearest = Math.min(nearest, Math.hypot(a.xMm + t * dx - xMm, a.halfWidthMm + t * dy - halfWidthMm));
  }
  return nearest;
}

describe("machineOutline", () => {
  it("takes at most 0.1 mm off a side and leaves the rest as drawn, on every model-length", () => {
    for (const { shape: model, printed } of everyModelLength) {
      const shape = shapeAtLength(model, printed.lengthCm);
      const removed = machineOutline(shape).map((p) => halfWidthAt(shape, p.xMm) - p.halfWidthMm);
      expect(Math.max(...removed)).toBeLessThanOrEqual(0.1);
      expect(Math.max(...removed)).toBeGreaterThan(0.01);
      expect(Math.min(...removed)).toBeGreaterThan(-1e-3);
    }
  });

  it("turns no sharper than the end curves do: no corner is left at shoulder and heel", () => {
    const turn = (outline: readonly OutlinePoint[], nearMm: number) => {
      const near = outline.filter((p) => Math.abs(p.xMm - nearMm) < 40);
      const turns = near.slice(1, -1).map((p, i) => {
        const [a, b] = [near[i], near[i + 2]];
        if (!a || !b) return 0;
        const before = Math.atan2(p.halfWidthMm - a.halfWidthMm, p.xMm - a.xMm);
        return Math.abs(Math.atan2(b.halfWidthMm - p.halfWidthMm, b.xMm - p.xMm) - before);
      });
      return (Math.max(...turns) * 180) / Math.PI;
    };
    for (const corner of [175, 1780 - 144]) {
      expect(turn(halfOutline(midlow), corner)).toBeGreaterThan(1.5);
      expect(turn(machineOutline(midlow), corner)).toBeLessThan(0.6);
    }
  });

  it("cannot round with a circle wider than the end", () => {
    expect(() => machineOutline(midlow, 3000)).toThrow(/cornerRadiusMm/);
  });
});

describe("offsetOutline", () => {
  it("obeys Steiner's formula, area + perimeter·d + πd², inwards and outwards (Steiner 1840, from memory)", () => {
    fc.assert(
      fc.property(anyShape, fc.double({ min: -10, max: 20, noNaN: true }), (shape, d) => {
        const outline = machineOutline(shape);
        const expected = outlineAreaMm2(outline) + perimeterMm(outline) * d + Math.PI * d * d;
        expect(Math.abs(outlineAreaMm2(offsetOutline(outline, d)) - expected)).toBeLessThan(0.5);
      }),
      { numRuns: 25 },
    );
  });

  it("shrinks inwards, grows outwards, and crosses itself nowhere", () => {
    fc.assert(
      fc.property(anyShape, fc.double({ min: 0.5, max: 30, noNaN: true }), (shape, d) => {
        const outline = machineOutline(shape);
        const inner = offsetOutline(outline, -d);
        const outer = offsetOutline(outline, d);
        expect(outlineAreaMm2(inner)).toBeLessThan(outlineAreaMm2(outline));
        expect(outlineAreaMm2(outer)).toBeGreaterThan(outlineAreaMm2(outline));
        expectSimple(inner);
        expectSimple(outer);
      }),
      { numRuns: 25 },
    );
  });

  it("keeps its distance from the source within 0.02 mm, even where the ends turn tighter than it", () => {
    for (const d of [-2, -7, -30, 12]) {
      const outline = machineOutline(midlow);
      for (const point of offsetOutline(outline, d)) {
        expect(distanceTo(outline, point)).toBeGreaterThan(Math.abs(d) - 0.02);
        expect(distanceTo(outline, point)).toBeLessThan(Math.abs(d) + 0.02);
      }
    }
  });

  it("cuts away a notch too narrow for the distance", () => {
    // A 100 × 100 square with a 4 mm slit 20 mm deep in its upper side: 5 mm outwards closes the slit.
    const notched: OutlinePoint[] = [
      { xMm: 0, halfWidthMm: 0 },
      { xMm: 0, halfWidthMm: 50 },
      { xMm: 48, halfWidthMm: 50 },
      { xMm: 50, halfWidthMm: 30 },
      { xMm: 52, halfWidthMm: 50 },
      { xMm: 100, halfWidthMm: 50 },
      { xMm: 100, halfWidthMm: 0 },
    ];
    const grown = offsetOutline(notched, 5);
    expectSimple(grown);
    for (const point of grown) expect(distanceTo(notched, point)).toBeGreaterThan(5 - 1e-6);
  });

  it("cannot shrink a ski to nothing", () => {
    expect(() => offsetOutline(machineOutline(midlow), -70)).toThrow(/distanceMm: -70 leaves nothing/);
  });
});

describe("drawing files", () => {
  const drawing = {
    title: "Midlow 95 178",
    outlines: [{ layer: "ski", outline: machineOutline(midlow) }],
    marks: [{ layer: "mount line", xMm: 965, halfWidthMm: 48 }],
  };

  it("write DXF in code-value pairs that read back to the same closed outline", () => {
    const lines = outlineDxf(drawing).split("\r\n");
    expect(lines.at(-1)).toBe("");
    const pairs = Array.from({ length: (lines.length - 1) / 2 }, (_, i) => [
      Number(lines[2 * i]),
      lines[2 * i + 1] ?? "",
    ]);
    expect(pairs).toContainEqual([1, "AC1009"]);
    expect(pairs.at(-1)).toEqual([0, "EOF"]);
    const points: { x: number; y: number }[] = [];
    for (const [i, [code, value]] of pairs.entries()) {
      if (code === 0 && value === "VERTEX") points.push({ x: Number(pairs[i + 2]?.[1]), y: Number(pairs[i + 3]?.[1]) });
    }
    let area = 0;
    for (const [i, b] of points.entries()) {
      const a = points.at(i - 1) ?? b;
      area += (a.x * b.y - b.x * a.y) / 2;
    }
    expect(Math.abs(area)).toBeCloseTo(outlineAreaMm2(machineOutline(midlow)), 0);
    expect(pairs.filter(([code, value]) => code === 0 && value === "SEQEND")).toHaveLength(1);
  });

  it("write an SVG path that starts at the tip, reaches the tail and closes", () => {
    const path = outlineSvgPath(machineOutline(midlow));
    expect(path.startsWith("M0.00 0.00L")).toBe(true);
    expect(path).toContain("L1780.00 ");
    expect(path.endsWith("Z")).toBe(true);
  });
});
