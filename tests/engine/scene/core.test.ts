/** The core cut away: a wall on either side of it, layers that add up, strips that are mirror images. */
import { describe, expect, it } from "vitest";
import { halfWidthAt } from "#engine/geometry";
import {
  coreOutline,
  coreSectionScene,
  coreThicknessAt,
  coreThicknessPath,
  type Mark,
  modelLook,
  stripBands,
} from "#engine/scene";
import { catalog } from "../demo-catalog";

const { build } = catalog;
const model = build.models.find(({ id }) => id === "midlow-95");
const look = model ? modelLook(model, build) : null;
if (!model || !look) throw new Error("the demo has a Midlow 95");

const points = (d: string) =>
  [...d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
const flat = (marks: readonly Mark[]): readonly Mark[] =>
  marks.flatMap((mark) => (mark.kind === "group" ? flat(mark.marks) : [mark]));

describe("the core cut away", () => {
  it("is a wall narrower than the ski on either side: 7 mm each in the demo's rules", () => {
    const waist = points(coreOutline(look)).filter(([x, y]) => x > 0 && Math.abs(y - look.shape.waistFromTipMm) < 25);
    expect(waist.length).toBeGreaterThan(0);
    for (const [x, y] of waist) expect(x).toBeCloseTo(halfWidthAt(look.shape, y) - 7, 0);
  });

  it("shows one strip in the middle and three on either side, in mirrored places", () => {
    const bands = stripBands(look.strips);
    expect(bands.map(({ strip }) => strip.position)).toEqual(["C", "I", "I", "M", "M", "O", "O"]);
    for (const position of ["I", "M", "O"]) {
      const [right, left] = bands.filter(({ strip }) => strip.position === position);
      expect([right?.fromMm, right?.toMm]).toEqual([-(left?.toMm ?? 0), -(left?.fromMm ?? 0)]);
    }
  });

  it("adds up across: base, what is below, core, what is above, topsheet", () => {
    // Layers of the model's lay-up as its row of models.json lists them; cloth by its thickness in materials.json.
    const layers = model.layup.reduce((sum, layer) => {
      if (layer.role === "core") return sum;
      const cloth = build.materials.fabrics.find(({ id }) => id === layer.material);
      return sum + (layer.role === "fabric" ? (cloth?.thicknessMm ?? 0) : layer.thicknessMm);
    }, 0);
    const { box } = coreSectionScene(look, look.shape.mountFromTipMm, 11);
    // Two millimetres of paper above and below.
    expect(box.height - 4).toBeCloseTo(layers + 11, 6);
  });

  it("has no wood where a spacer is, and no steel beyond the edge", () => {
    const woods = new Set(look.strips.map((strip) => strip.look.ground));
    const paints = (xMm: number) =>
      flat(coreSectionScene(look, xMm, 5).marks).flatMap((mark) =>
        mark.kind === "fill" ? [mark.paint as string] : [],
      );
    expect(paints(look.woodMm.fromMm + 10).some((paint) => woods.has(paint))).toBe(true);
    expect(paints(look.woodMm.fromMm - 10).some((paint) => woods.has(paint))).toBe(false);
    expect(paints(look.edge.fromMm + 5)).toContain("steel");
    expect(paints(look.edge.fromMm - 5)).not.toContain("steel");
  });

  it("draws thickness from its stations and reads it between them", () => {
    const stations = [
      { xMm: 0, thicknessMm: 2 },
      { xMm: 100, thicknessMm: 10 },
    ];
    expect(coreThicknessPath(stations)).toBe("M0 0L0 -2L100 -10L100 0Z");
    expect(coreThicknessAt(stations, 25)).toBe(4);
    expect(coreThicknessPath([])).toBe("");
  });
});
