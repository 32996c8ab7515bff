import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { halfOutline, halfWidthAt, measure, mountLineMm, profileHeightMm, shapeAtLength } from "#engine/geometry";
import { everyModelLength, modelShape, models } from "./truth";

/** Half a unit of the last printed digit, and a little for its own rounding. */
function toPrinted(decimals: number): number {
  return 0.5 * 10 ** -decimals * (1 + 1e-6);
}

const anyModelLength = fc.constantFrom(...everyModelLength);

describe("shapeAtLength and measure", () => {
  it("cover the 32 model-lengths of the line-up", () => {
    expect(everyModelLength).toHaveLength(32);
  });

  it.each(everyModelLength)("reproduce $name to its printed digits", ({ shape: model, printed }) => {
    const shape = shapeAtLength(model, printed.lengthCm);
    const measured = measure(shape);
    const rows: readonly (readonly [string, number, number, decimals: number])[] = [
      ["sidecut length", shape.sidecutLengthMm, printed.sidecutLengthMm, 1],
      ["sidecut radius", measured.sidecutRadiusM, printed.sidecutRadiusM, 2],
      ["federation radius", measured.federationRadiusM, printed.federationRadiusM, 2],
      ["waist", shape.waistFromTipMm, printed.waistFromTipMm, 0],
      ["mount line", shape.mountFromTipMm, printed.mountFromTipMm, 0],
      ["area", measured.planAreaMm2 / 1e6, printed.planAreaM2, 4],
      ["perimeter", measured.perimeterMm / 1e3, printed.perimeterM, 3],
      ["edge", measured.edgeCarryingMm / 1e3, printed.edgePartialM, 3],
      ["tangent contact", measured.tangentContactMm, printed.tangentContactMm, 0],
      ["projected length", measured.projectedLengthMm, printed.projectedLengthMm, 1],
    ];
    for (const [what, actual, expected, decimals] of rows) {
      expect(Math.abs(actual - expected), `${what}: ${actual} for ${expected}`).toBeLessThanOrEqual(
        toPrinted(decimals),
      );
    }
    // The printed contact lengths were read off a table of stations, the formula is exact: within one millimetre.
    expect(Math.abs(measured.contactLengthMm - printed.gaugeContactLengthMm)).toBeLessThan(1);
  });

  it("print 1,435 mm of contact for the Midlow 95 at 178, not the 1,371 between tangent points", () => {
    const measured = measure(shapeAtLength(modelShape("midlow-95"), 178));
    expect(Math.round(measured.contactLengthMm)).toBe(1435);
    expect(Math.round(measured.tangentContactMm)).toBe(1371);
  });

  it("grow the radius with the square of the length, within one per cent", () => {
    for (const { shape, lengths } of models) {
      const reference = shapeAtLength(shape, shape.refLengthCm).sidecutRadiusMm;
      for (const { lengthCm } of lengths) {
        const radius = shapeAtLength(shape, lengthCm).sidecutRadiusMm;
        expect(radius / reference / (lengthCm / shape.refLengthCm) ** 2).toBeCloseTo(1, 2);
      }
    }
  });

  it("scale the area with the length at equal widths", () => {
    fc.assert(
      fc.property(anyModelLength, fc.double({ min: 0.8, max: 1.2, noNaN: true }), ({ shape }, scale) => {
        // Stretching x alone is an affine map of the ends; the arc's changes by less than 1e-4 of the area.
        const reference = measure(shapeAtLength(shape, shape.refLengthCm)).planAreaMm2;
        const stretched = measure(shapeAtLength(shape, shape.refLengthCm * scale)).planAreaMm2;
        expect(stretched / reference / scale).toBeCloseTo(1, 3);
      }),
    );
  });

  it("cannot make a ski of no length", () => {
    expect(() => shapeAtLength(modelShape("midlow-95"), 0)).toThrow(/lengthCm: 0 must be above 0/);
  });

  it("move the mount line towards the tip for a positive offset", () => {
    const shape = shapeAtLength(modelShape("midlow-95"), 178);
    expect(mountLineMm(shape, 35)).toBe(930);
  });
});

describe("halfWidthAt", () => {
  const shape = shapeAtLength(modelShape("midlow-95"), 178);

  it("gives the corner widths, the waist and the ends", () => {
    expect(halfWidthAt(shape, 0)).toBe(0);
    expect(halfWidthAt(shape, 175)).toBeCloseTo(66, 9);
    expect(halfWidthAt(shape, shape.waistFromTipMm)).toBeCloseTo(47.5, 9);
    expect(halfWidthAt(shape, 1780 - 144)).toBeCloseTo(59.5, 9);
    expect(halfWidthAt(shape, 1780)).toBeCloseTo(0, 6);
  });

  it("is continuous along the whole ski", () => {
    fc.assert(
      fc.property(anyModelLength, fc.double({ min: 0.02, max: 0.98, noNaN: true }), ({ shape: model, printed }, at) => {
        const ski = shapeAtLength(model, printed.lengthCm);
        const x = at * ski.lengthMm;
        expect(Math.abs(halfWidthAt(ski, x + 1e-4) - halfWidthAt(ski, x))).toBeLessThan(1e-3);
      }),
    );
  });

  it("cannot be asked beyond the ski", () => {
    expect(() => halfWidthAt(shape, 1781)).toThrow(/xMm: 1781 is off the ski, 0 to 1780/);
  });

  it("agrees with every point of the sampled outline", () => {
    for (const { xMm, halfWidthMm } of halfOutline(shape)) expect(halfWidthAt(shape, xMm)).toBeCloseTo(halfWidthMm, 6);
  });
});

describe("profileHeightMm", () => {
  const shape = shapeAtLength(modelShape("midlow-95"), 178);

  it("stands at its rise at the ends and on the bench at the tangent points", () => {
    expect(profileHeightMm(shape, 0, "free")).toBe(55);
    expect(profileHeightMm(shape, 1780, "free")).toBe(18);
    expect(profileHeightMm(shape, shape.tipTangentMm, "free")).toBeCloseTo(0, 9);
    expect(profileHeightMm(shape, shape.tailTangentMm, "free")).toBeCloseTo(0, 9);
  });

  it("has its camber half-way between them and none when pressed flat", () => {
    const middle = (shape.tipTangentMm + shape.tailTangentMm) / 2;
    expect(profileHeightMm(shape, middle, "free")).toBeCloseTo(4, 9);
    expect(profileHeightMm(shape, middle, "pressed-flat")).toBe(0);
  });

  it("meets the 0.5 mm gauge exactly at the ends of the contact length (ISO 6289)", () => {
    const { contactLengthMm } = measure(shape);
    // Tip gauge point: z = 55((302.6 − x)/302.6)^2.5 = 0.5 at x = 302.6(1 − (0.5/55)^0.4) = 256.44 (by hand).
    const fromTip = 302.6 * (1 - (0.5 / 55) ** 0.4);
    expect(profileHeightMm(shape, fromTip, "pressed-flat")).toBeCloseTo(0.5, 9);
    expect(profileHeightMm(shape, fromTip + contactLengthMm, "pressed-flat")).toBeCloseTo(0.5, 9);
  });
});
