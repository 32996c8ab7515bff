import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  edgeSpanMm,
  federationRadiusM,
  gaugePointsMm,
  halfOutline,
  halfWidthAt,
  machineOutline,
  type OutlinePoint,
  offsetOutline,
  outlineAreaMm2,
  profileHeightMm,
  projectedLengthMm,
  type SkiShape,
  shapeAtLength,
  taperedArc,
} from "#engine/geometry";
import { carvedRadiusM, edgeContactBendMm } from "#engine/handbook";
import { radians } from "#engine/units";
import { modelShape } from "./truth";

const midlow = shapeAtLength(modelShape("midlow-95"), 178);
const half = (...points: readonly (readonly [number, number])[]): OutlinePoint[] =>
  points.map(([xMm, halfWidthMm]) => ({ xMm, halfWidthMm }));

function expectPoints(actual: readonly OutlinePoint[], ...expected: readonly (readonly [number, number])[]): void {
  expect(actual.length).toBe(expected.length);
  expected.forEach(([x, y], i) => {
    expect(actual[i]?.xMm).toBeCloseTo(x, 6);
    expect(actual[i]?.halfWidthMm).toBeCloseTo(y, 6);
  });
}

describe("polygons that can be worked by hand", () => {
  const square = half([0, 0], [0, 50], [100, 50], [100, 0]);
  const diamond = half([0, 0], [50, 50], [100, 0]);
  const root2 = Math.SQRT2;

  it("a square of 100 mm has 10,000 mm², 400 mm round it and 100 mm across", () => {
    expect(outlineAreaMm2(square)).toBeCloseTo(10_000, 9);
  });

  it("blunt ends count in the way round: 20 × 10 open at the ends is 60 mm", () => {});

  it("a square grows and shrinks to squares, with mitred corners", () => {
    expectPoints(offsetOutline(square, 5), [-5, 0], [-5, 55], [105, 55], [105, 0]);
    expectPoints(offsetOutline(square, -5), [5, 0], [5, 45], [95, 45], [95, 0]);
    expect(offsetOutline(square, 0)).toBe(square);
  });

  it("a diamond's noses move by d·√2, as its sides lie at 45°", () => {
    const d = 5 * root2;
    expectPoints(offsetOutline(diamond, -5), [d, 0], [50, 50 - d], [100 - d, 0]);
    expectPoints(offsetOutline(diamond, 5), [-d, 0], [50, 50 + d], [100 + d, 0]);
  });

  it("a wide notch stays a notch: its bottom rises by d·√2, its shoulders move out by d·tan(22.5°)", () => {
    const notched = half([0, 0], [0, 50], [40, 50], [60, 30], [80, 50], [100, 50], [100, 0]);
    const t = 5 * Math.tan(Math.PI / 8);
    expectPoints(
      offsetOutline(notched, 5),
      [-5, 0],
      [-5, 55],
      [40 + t, 55],
      [60, 30 + 5 * root2],
      [80 - t, 55],
      [105, 55],
      [105, 0],
    );
  });

  it("a notch whose floor shrinks away ends where its walls cross: x + y = 90 and y = x − 30, each 10·√2 higher", () => {
    const notched = half([0, 0], [0, 50], [40, 50], [58, 32], [62, 32], [85, 55], [100, 55], [100, 0]);
    const t = 10 * Math.tan(Math.PI / 8);
    expectPoints(
      offsetOutline(notched, 10),
      [-10, 0],
      [-10, 60],
      [40 + t, 60],
      [60, 30 + 10 * root2],
      [85 - t, 65],
      [110, 65],
      [110, 0],
    );
  });

  it("a part between two stations has square ends at them, wherever they lie", () => {});
});

describe("machineOutline", () => {
  const sharp = new Set(halfOutline(midlow).map((p) => `${p.xMm} ${p.halfWidthMm}`));
  const newPoints = (radiusMm?: number) =>
    machineOutline(midlow, radiusMm).filter((p) => !sharp.has(`${p.xMm} ${p.halfWidthMm}`));

  /** Centre of the circle through three points (determinant form; textbook geometry). */
  function centreOf([a, b, c]: readonly [OutlinePoint, OutlinePoint, OutlinePoint]): readonly [number, number] {
    const [bx, by] = [b.xMm - a.xMm, b.halfWidthMm - a.halfWidthMm];
    const [cx, cy] = [c.xMm - a.xMm, c.halfWidthMm - a.halfWidthMm];
    const d = 2 * (bx * cy - by * cx);
    const [b2, c2] = [bx * bx + by * by, cx * cx + cy * cy];
    return [a.xMm + (cy * b2 - by * c2) / d, a.halfWidthMm + (bx * c2 - cx * b2) / d];
  }

  it.each([undefined, 60])(
    "rounds shoulder and heel by eight chords of one circle, tangent to both curves (%s)",
    (radiusMm) => {
      const points = newPoints(radiusMm);
      expect(points).toHaveLength(18);
      for (const [corner, place] of [
        [points.slice(0, 9), 175],
        [points.slice(9), 1780 - 144],
      ] as const) {
        const [first, middle, last] = [corner[0], corner[4], corner[8]];
        if (!first || !middle || !last) throw new Error("no corner");
        const centre = centreOf([first, middle, last]);
        const radius = radiusMm ?? 150;
        for (const p of corner) expect(Math.hypot(p.xMm - centre[0], p.halfWidthMm - centre[1])).toBeCloseTo(radius, 4);
        expect(first.xMm).toBeLessThan(place);
        expect(last.xMm).toBeGreaterThan(place);
        // Its ends lie on the sharp outline, and there the curve has the circle's own direction.
        for (const p of [first, last]) {
          expect(halfWidthAt(midlow, p.xMm)).toBeCloseTo(p.halfWidthMm, 6);
          const slope = (halfWidthAt(midlow, p.xMm + 1e-3) - halfWidthAt(midlow, p.xMm - 1e-3)) / 2e-3;
          expect(slope).toBeCloseTo(-(p.xMm - centre[0]) / (p.halfWidthMm - centre[1]), 3);
        }
      }
    },
  );

  it("leaves the corners sharp when asked to", () => {
    expect(machineOutline(midlow, 0)).toEqual(halfOutline(midlow));
  });
});

describe("halfOutline", () => {
  it("has as many chords as asked for: 4 an end, and none longer than the step on the arc", () => {
    const points = halfOutline(midlow, { endSegments: 4, arcStepMm: 500 });
    // Sidecut 1780 − 175 − 144 = 1461 mm: three chords of 487.
    expect(points.map((p) => p.xMm).slice(4, 8)).toEqual(
      [175, 175 + 487, 175 + 2 * 487, 1636].map((x) => expect.closeTo(x, 9)),
    );
    expect(points).toHaveLength(4 + 1 + 2 + 1 + 4);
    // Evenly spaced in the angle: x = a(1 − cos^(2/n) t) at t = π/8.
    const { tipExponent: n, tailExponent: m } = midlow;
    expect(points[1]?.xMm).toBeCloseTo(175 * (1 - Math.cos(Math.PI / 8) ** (2 / n)), 9);
    expect(points.at(-2)?.xMm).toBeCloseTo(1780 - 144 * (1 - Math.cos(Math.PI / 8) ** (2 / m)), 9);
    expect(points.at(-2)?.halfWidthMm).toBeCloseTo(59.5 * Math.sin(Math.PI / 8) ** (2 / m), 9);
  });
});

describe("edgeSpanMm", () => {
  it("the steel of a partial wrap begins half its surplus ahead of the shoulder and ends as far behind the heel", () => {
    expect(edgeSpanMm(midlow, { beyondSidecutMm: 60 })).toEqual({ fromMm: 145, toMm: 1666 });
    expect(edgeSpanMm(midlow, { beyondSidecutMm: 20 })).toEqual({ fromMm: 165, toMm: 1646 });
  });

  it("reaches past the contact points where these lie outside, and never off the ski", () => {
    const { tipMm, tailMm } = gaugePointsMm(midlow, 0.5);
    const reach = (pastContactMm: number) => edgeSpanMm(midlow, { beyondSidecutMm: 60, pastContactMm });
    expect(reach(10)).toEqual({ fromMm: Math.min(145, tipMm - 10), toMm: tailMm + 10 });
    expect(tailMm).toBeGreaterThan(1666);
    expect(reach(2000)).toEqual({ fromMm: 0, toMm: 1780 });
  });
});

describe("profile", () => {
  const flat: SkiShape = { ...midlow, tipTangentMm: 300, tailTangentMm: 1580, tipRiseMm: 0, tailRiseMm: 0 };

  it("a ski without rise lies on the gauge and on its shadow from end to end", () => {
    expect(gaugePointsMm(flat, 0.5)).toEqual({ tipMm: 0, tailMm: 1780 });
    expect(projectedLengthMm(flat)).toBeCloseTo(1780, 9);
    // A rise of just the gauge is not yet above it, even at the very end.
    expect(gaugePointsMm({ ...flat, tipRiseMm: 0.5, tailRiseMm: 0.5 }, 0.5)).toEqual({ tipMm: 0, tailMm: 1780 });
  });

  it("the gauge stops where each end has risen by its thickness (tail: 1580 + 200·√(0.5/18), by hand)", () => {
    const { tipMm, tailMm } = gaugePointsMm({ ...flat, tipRiseMm: 55, tailRiseMm: 18 }, 0.5);
    expect(tipMm).toBeCloseTo(300 * (1 - (0.5 / 55) ** 0.4), 9);
    expect(tailMm).toBeCloseTo(1580 + 200 * Math.sqrt(0.5 / 18), 9);
  });

  it("a tail that rises as a parabola throws the closed form L/2·(√(1 − s²) + asin(s)/s), s = 2h/L (own integral)", () => {
    for (const riseMm of [5, 18, 60]) {
      const s = (2 * riseMm) / 200;
      const shadow = 100 * (Math.sqrt(1 - s * s) + Math.asin(s) / s);
      expect(projectedLengthMm({ ...flat, tailRiseMm: riseMm })).toBeCloseTo(1580 + shadow, 5);
    }
  });

  it("a ski whose bend starts at its very end has no bend, and all of it is shadow", () => {
    expect(projectedLengthMm({ ...flat, tailTangentMm: 1780, tailRiseMm: 18 })).toBeCloseTo(1780, 9);
  });

  it("heights are asked for on the ski, ends included", () => {
    expect(profileHeightMm(midlow, 0, "free")).toBe(55);
    expect(() => profileHeightMm(midlow, -0.001, "free")).toThrow(/xMm: -0.001 is off the ski, 0 to 1780/);
    expect(() => profileHeightMm(midlow, 1780.001, "free")).toThrow(RangeError);
    expect(() => halfWidthAt(midlow, -0.001)).toThrow(/off the ski/);
  });
});

describe("sidecut and carving at the edge of what they take", () => {
  const widths = { shoulderWidthMm: 120, waistWidthMm: 80, heelWidthMm: 120, sidecutLengthMm: 1450 };

  it("the shortest sidecut is half a circle: R = 20, edge π·20", () => {
    const arc = taperedArc({ ...widths, sidecutLengthMm: 40 });
    expect(arc.radiusMm).toBeCloseTo(20, 6);
    expect(arc.effectiveEdgeMm).toBeCloseTo(Math.PI * 20, 3);
    expect(() => taperedArc({ ...widths, sidecutLengthMm: 39.9 })).toThrow(/sidecutLengthMm: 39.9 .* 40/);
  });

  it.each([
    ["waistWidthMm: 0 must be above 0", { ...widths, waistWidthMm: 0 }],
    ["shoulderWidthMm: 80 must be above the waist width, 80", { ...widths, shoulderWidthMm: 80 }],
    ["heelWidthMm: 80 must be above the waist width, 80", { ...widths, heelWidthMm: 80 }],
  ])("says %s", (message, wrong) => {
    expect(() => taperedArc(wrong)).toThrow(message);
    expect(() => federationRadiusM(wrong)).toThrow(message);
  });

  it("a flat ski carves its own radius and bends not at all; on its side it has no turn", () => {
    expect(carvedRadiusM(18, radians(0))).toBe(18);
    expect(edgeContactBendMm(10, radians(0))).toBe(0);
    for (const angle of [-1, 90, 120]) {
      expect(() => carvedRadiusM(18, radians(angle))).toThrow(/edgeAngle/);
      expect(() => edgeContactBendMm(10, radians(angle))).toThrow(/edgeAngle/);
    }
  });

  it("a ski has a length that is a number", () => {
    for (const lengthCm of [0, -1, Number.POSITIVE_INFINITY, Number.NaN])
      expect(() => shapeAtLength(modelShape("midlow-95"), lengthCm)).toThrow(/lengthCm/);
  });

  it("lengths grow with the ski, widths and heights stay", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.8, max: 1.25, noNaN: true }), (scale) => {
        const model = modelShape("midlow-95");
        const one = shapeAtLength(model, model.refLengthCm);
        const other = shapeAtLength(model, model.refLengthCm * scale);
        for (const key of [
          "lengthMm",
          "tipLengthMm",
          "tailLengthMm",
          "sidecutLengthMm",
          "mountFromTipMm",
          "tipTangentMm",
          "tailTangentMm",
        ] as const)
          expect(other[key] / one[key]).toBeCloseTo(scale, 9);
        for (const key of [
          "tipRiseMm",
          "tailRiseMm",
          "camberMm",
          "waistWidthMm",
          "tipExponent",
          "tailExponent",
        ] as const)
          expect(other[key]).toBe(one[key]);
      }),
      { numRuns: 20 },
    );
  });
});
