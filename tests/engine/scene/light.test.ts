/**
 * Light on a ski by Lambert's cosine law (J. H. Lambert, Photometria, 1760; cited from memory): a matt face is as bright as
 * the cosine between its normal and the light. The light comes from (−0.42 across, −0.34 along, 0.84 up), tip and left.
 */
import { describe, expect, it } from "vitest";
import { brightnessAt, endLight, modelLook, topOutline, wallBrightness } from "#engine/scene";
import { catalog } from "../demo-catalog";

describe("a facet that slopes along the ski", () => {
  it.each([
    // (−s·(−0.34) + 0.84)/√(1 + s²)/0.84
    [0, 1],
    // (0.34 + 0.84)/√2/0.84 and (−0.34 + 0.84)/√2/0.84
    [1, 0.99332],
    [-1, 0.4209],
    // tan 30° = 0.57735: (0.1963 + 0.84)·cos 30°/0.84
    [0.57735, 1.06841],
    // It looks away from the light: −1.02 + 0.84 < 0.
    [-3, 0],
  ])("of %d is %d times as bright as a flat one", (slope, brightness) => {
    expect(brightnessAt(slope)).toBeCloseTo(brightness, 4);
  });

  it("is brightest where it looks straight at the light: slope 0.34/0.84, √(0.34² + 0.84²)/0.84", () => {
    const best = 0.34 / 0.84;
    expect(brightnessAt(best)).toBeCloseTo(1.07881, 4);
    for (const other of [best - 0.05, best + 0.05]) expect(brightnessAt(other)).toBeLessThan(brightnessAt(best));
  });
});

describe("a wall that leans by its bevel", () => {
  it.each([
    // cos 10°·0.42 + sin 10°·0.84 = 0.41362 + 0.14587, over 0.84
    [-1, 10, 0.66606],
    // −0.41362 + 0.14587: in the shade
    [1, 10, 0],
    [-1, 0, 0.5],
    // A wall that lies flat is the top.
    [1, 90, 1],
    [-1, 90, 1],
  ] as const)("on side %d by %d° is %d times as bright as the top", (side, bevelDeg, brightness) => {
    expect(wallBrightness(side, bevelDeg)).toBeCloseTo(brightness, 4);
  });
});

describe("a ski's ends", () => {
  it.each(catalog.build.models.map((model) => [model.id, model] as const))(
    "of %s: the tip turns from the light and is darker, the tail turns to it and is lighter, the middle stays as it is",
    (_, model) => {
      const look = modelLook(model, catalog.build);
      if (!look) throw new Error("no drawing");
      const { stops, from, to } = endLight(look.shape, topOutline(look));
      expect([from, to]).toEqual([
        { x: 0, y: 0 },
        { x: 0, y: look.shape.lengthMm },
      ]);
      const places = stops.map(({ at }) => at);
      expect(places).toEqual(places.toSorted((a, b) => a - b));
      expect([places[0], places.at(-1)]).toEqual([0, 1]);
      expect([stops[0]?.paint, stops.at(-1)?.paint]).toEqual(["#000000", "#ffffff"]);
      expect(stops[0]?.opacity).toBeGreaterThan(0.05);
      expect(stops.at(-1)?.opacity).toBeGreaterThan(0.01);
      // A sheen that hides no graphic.
      for (const { opacity } of stops) expect(opacity).toBeLessThanOrEqual(0.55);
      const flat = stops.filter(({ at }) => Math.abs(at * look.shape.lengthMm - look.shape.tipTangentMm) < 1);
      expect(flat).toHaveLength(1);
      expect(flat[0]?.opacity).toBeLessThan(0.02);
    },
  );
});
