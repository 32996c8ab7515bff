/** Laws of the graphics that are composed along a whole pair, as drawn for the demo's own palettes. */
import { gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import type { HouseGraphic } from "#engine/configuration";
import { housePattern, type Mark, modelLook, pageColour, pairScene, svgMarks } from "#engine/scene";
import { catalog } from "../demo-catalog";

const { build } = catalog;
const composed = build.houseGraphics.filter(({ pattern }) => pattern !== "plain");
const named = composed.map((graphic) => [graphic.id, graphic] as const);
/** Half of a pair of skis of 132 mm and 20 mm between them. */
const area = { lengthMm: 1780, reachMm: 142 };
const paintsOf = (marks: readonly Mark[]) =>
  marks.flatMap((mark) => (mark.kind === "fill" || mark.kind === "line" ? [mark.paint as string] : []));
const rgb = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

/** How far a colour lies off the straight line between two others, of 255 a channel. */
function offLine(colour: string, a: string, b: string): number {
  const [c, p, q] = [rgb(colour), rgb(a), rgb(b)];
  const way = p.map((value, i) => (q[i] ?? 0) - value);
  const long = way.reduce((sum, value) => sum + value ** 2, 0);
  const share = long === 0 ? 0 : c.reduce((sum, value, i) => sum + (value - (p[i] ?? 0)) * (way[i] ?? 0), 0) / long;
  const held = Math.min(1, Math.max(0, share));
  return Math.max(...c.map((value, i) => Math.abs(value - (p[i] ?? 0) - held * (way[i] ?? 0))));
}

describe("a house graphic composed for a pair", () => {
  it("is one of larch, contour lines, rock and ice", () => {
    expect(composed.map(({ pattern }) => pattern)).toEqual(["relief", "branch", "folds", "shards"]);
  });

  it.each(named)("%s is the same every time, in marks that can be drawn", (_, graphic) => {
    const marks = housePattern(graphic, area);
    expect(housePattern(graphic, area)).toEqual(marks);
    expect(marks.length).toBeGreaterThan(4);
    for (const mark of marks) {
      if (mark.kind !== "fill" && mark.kind !== "line") throw new Error(`a ${mark.kind}`);
      // Path data of the kinds that both renderers take, without a number that is none.
      expect(mark.d).toMatch(/^M[-\d.MLHVQClhvqcZz ,]+$/);
      if (mark.kind === "line") expect(mark.widthMm).toBeGreaterThan(0);
    }
  });

  it.each(named)("%s keeps to its own palette and mixtures of two of its colours", (_, { id, ...graphic }) => {
    const { colours } = graphic;
    const pairs = colours.flatMap((a) => colours.map((b) => [a, b] as const));
    const marks = housePattern(graphic, area);
    const isMixed = (paint: string) => pairs.some(([a, b]) => offLine(paint, a, b) <= 1);
    marks.forEach((mark, i) => {
      const [paint = ""] = paintsOf([mark]);
      const [before = ""] = paintsOf(marks.slice(Math.max(0, i - 1), i));
      // A seam between two beds of rock is the bed's own colour in shade.
      const isSeam = id === "rock-strata" && mark.kind === "line" && offLine(paint, before, "#000000") <= 1;
      expect(isSeam || isMixed(paint), `${paint} of mark ${i}`).toBe(true);
    });
    // And follows another one.
    const other = housePattern({ ...graphic, colours: colours.toReversed() }, area);
    expect(paintsOf(other)).not.toEqual(paintsOf(marks));
  });

  it.each(named)("%s begins with a ground that reaches past its area on every side", (_, graphic) => {
    const [ground] = housePattern(graphic, area);
    if (ground?.kind !== "fill") throw new Error("no ground");
    const [x = 0, y = 0, wide = 0, long = 0] = (ground.d.match(/-?[\d.]+/g) ?? []).map(Number);
    expect([x <= -area.reachMm, y <= 0, x + wide >= area.reachMm, y + long >= area.lengthMm]).toEqual([
      true,
      true,
      true,
      true,
    ]);
    expect(ground.opacity).toBeUndefined();
  });

  it.each(named)("%s is nowhere the same again: no shift along the ski lays it on itself", (_, graphic) => {
    // Where its lines turn, counted in windows of 60 mm: a repeating ground would count alike in all of them.
    const ys = housePattern(graphic, area).flatMap((mark) =>
      mark.kind === "fill" || mark.kind === "line"
        ? [...mark.d.matchAll(/[MLQ]([-\d. ]+)/g)].flatMap(([, run = ""]) =>
            run.split(" ").flatMap((value, i) => (i % 2 === 1 ? [Number(value)] : [])),
          )
        : [],
    );
    const counts = Array.from({ length: 29 }, (_, i) => ys.filter((y) => y >= 60 * i && y < 60 * (i + 1)).length);
    expect(new Set(counts).size).toBeGreaterThan(6);
  });
});

describe("both skis of a pair", () => {
  const graphicOn = (graphic: HouseGraphic) => {
    const [model] = build.models.filter(({ state }) => state === "active");
    const look = model && modelLook({ ...model, houseGraphic: graphic.id }, build);
    if (!look) throw new Error("no model");
    const gapMm = build.rules.print.pairGapMm;
    const skis = pairScene(look, { gapMm }).marks.flatMap((ski) => {
      if (ski.kind !== "group") return [];
      const top = ski.marks.find((mark) => mark.kind === "group" && mark.clip !== undefined);
      const frame = top?.kind === "group" ? top.marks.find((mark) => mark.kind === "group") : undefined;
      return frame?.kind === "group" ? [{ at: ski.shift?.x ?? 0, frame }] : [];
    });
    return { look, gapMm, skis };
  };

  it.each(named)(
    "carry %s on across the gap: the same marks, half a ski and half the gap to either side",
    (_, graphic) => {
      const { look, gapMm, skis } = graphicOn(graphic);
      const [left, right] = skis;
      expect(skis).toHaveLength(2);
      expect(right?.frame.marks).toEqual(left?.frame.marks);
      const half = Math.max(look.shape.shoulderWidthMm, look.shape.heelWidthMm) / 2;
      expect(left?.frame.shift?.x).toBeCloseTo(half + gapMm / 2, 9);
      expect(right?.frame.shift?.x).toBeCloseTo(-half - gapMm / 2, 9);
      expect([left?.frame.isMirrored, right?.frame.isMirrored]).toEqual([false, false]);
      // Laid as far apart as the picture is split, both halves meet: their middle is the middle between the skis.
      for (const { at, frame } of skis) expect(at + (frame.shift?.x ?? 0)).toBeCloseTo(0, 9);
    },
  );

  it.each(build.models.flatMap((model) => composed.map((graphic) => [model.id, graphic.id, model, graphic] as const)))(
    "of %s in %s weigh at most 70 kB on a page, 16 kB as they travel",
    (_m, _g, model, graphic) => {
      const longest = Math.max(...model.lengths.map(({ lengthCm }) => lengthCm));
      const look = modelLook({ ...model, houseGraphic: graphic.id }, build, longest);
      if (!look) throw new Error("no drawing");
      const manner = { id: "s", colour: pageColour, picture: () => null, font: "sans-serif" } as const;
      const svg = svgMarks(pairScene(look).marks, manner);
      expect(svg).not.toMatch(/NaN|undefined|Infinity/);
      expect(Buffer.byteLength(svg)).toBeLessThanOrEqual(70_000);
      expect(gzipSync(svg).byteLength).toBeLessThanOrEqual(16_000);
    },
  );
});
