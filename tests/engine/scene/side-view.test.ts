/** The side view against the geometry that is milled: its length, its heights, its shadow on the bench. */
import { describe, expect, it } from "vitest";
import { profileHeightMm, projectedLengthMm, shapeAtLength } from "#engine/geometry";
import { modelLook, sideLine, sideScene, sideSilhouette } from "#engine/scene";
import { catalog } from "../demo-catalog";

const { build } = catalog;
const skis = build.models.flatMap((model) =>
  model.lengths.map(({ lengthCm }) => [`${model.id} ${lengthCm}`, shapeAtLength(model.shape, lengthCm)] as const),
);
const numbers = (d: string) => (d.match(/-?[\d.]+/g) ?? []).map(Number);

describe("the running surface from the side", () => {
  it.each(skis)("of %s is as long as the ski and lies where the profile says", (_, shape) => {
    const line = sideLine(shape);
    const steps = line.slice(1).map((point, i) => {
      const before = line[i];
      return before ? Math.hypot(point.alongMm - before.alongMm, point.heightMm - before.heightMm) : 0;
    });
    expect(Math.abs(steps.reduce((sum, step) => sum + step, 0) - shape.lengthMm)).toBeLessThan(0.1);
    expect([line[0]?.xMm, line[0]?.alongMm, line.at(-1)?.xMm]).toEqual([0, 0, shape.lengthMm]);
    for (const { xMm, heightMm } of line) expect(heightMm).toBe(profileHeightMm(shape, xMm, "free"));
  });

  it.each(skis)("of %s is drawn with no chord more than 0.2 mm off", (_, shape) => {
    const line = sideLine(shape);
    line.slice(1).forEach((point, i) => {
      const before = line[i];
      if (!before) return;
      for (const share of [0.25, 0.5, 0.75]) {
        const xMm = before.xMm + share * (point.xMm - before.xMm);
        const chord = before.heightMm + share * (point.heightMm - before.heightMm);
        expect(Math.abs(profileHeightMm(shape, xMm, "free") - chord)).toBeLessThanOrEqual(0.2);
      }
    });
  });

  it.each(skis)("of %s throws the shadow of the pressed ski, but for its arch", (_, shape) => {
    // Steps of 11 mm along the ends leave less than a quarter of a millimetre of a metre and a half.
    const flat = sideLine({ ...shape, camberMm: 0 }).at(-1)?.alongMm ?? 0;
    expect(Math.abs(flat - projectedLengthMm(shape))).toBeLessThan(0.25);
    // A parabola of height c over a length l is longer than its chord by 8c²/(3l); an arch that runs out level by less than twice that.
    const arch = (8 * shape.camberMm ** 2) / (3 * (shape.tailTangentMm - shape.tipTangentMm));
    const arched = sideLine(shape).at(-1)?.alongMm ?? 0;
    expect(flat - arched).toBeGreaterThan(0);
    expect(flat - arched).toBeLessThan(2 * arch);
  });
});

describe("the side view", () => {
  const [model] = build.models;
  const look = model && modelLook(model, build);
  if (!look) throw new Error("no model");

  it("is as thick at each place as the ski, and stands on a bench line of the ski's length", () => {
    const { box, marks } = sideScene(look);
    const [bench, body] = marks;
    if (bench?.kind !== "line" || body?.kind !== "fill") throw new Error("no bench line and body");
    expect(bench.d).toBe(`M0 0L0 ${look.shape.lengthMm}`);
    expect(body.d).toBe(sideSilhouette(look));
    const values = numbers(body.d);
    const points = values.flatMap((x, i) => (i % 2 === 0 ? [{ x, y: values[i + 1] ?? 0 }] : []));
    const line = sideLine(look.shape);
    expect(points).toHaveLength(2 * line.length);
    line.forEach(({ xMm }, i) => {
      const [under, over] = [points[i], points.at(-1 - i)];
      const thick = look.thickness.findLast((each) => each.xMm <= xMm) ?? look.thickness[0];
      const next = look.thickness.find((each) => each.xMm >= xMm) ?? look.thickness.at(-1);
      const gap = Math.hypot((over?.x ?? 0) - (under?.x ?? 0), (over?.y ?? 0) - (under?.y ?? 0));
      const [low, high] = [thick?.thicknessMm ?? 0, next?.thicknessMm ?? 0].toSorted((a, b) => a - b);
      // Points are written to a tenth of a millimetre.
      expect(gap).toBeGreaterThanOrEqual((low ?? 0) - 0.15);
      expect(gap).toBeLessThanOrEqual((high ?? 0) + 0.15);
    });
    expect(box.width).toBeGreaterThan(Math.max(look.shape.tipRiseMm, look.shape.tailRiseMm));
    expect(box.height).toBe(look.shape.lengthMm);
  });
});
