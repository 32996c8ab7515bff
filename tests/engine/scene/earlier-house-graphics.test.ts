/**
 * Laws of the graphics that earlier releases are printed with: each fills its area, repeats itself and keeps to its palette.
 * Sizes are those of the drawing.
 */
import { describe, expect, it } from "vitest";
import { otherPalette } from "#engine/scene";
import { earlierDrawings } from "../../../lib/engine/scene/house/earlier";
import { catalog } from "../demo-catalog";

const area = { lengthMm: 1000, reachMm: 60 };
const colours = ["#111", "#222", "#333"];
const draw = (pattern: keyof typeof earlierDrawings, palette: readonly string[] = colours, of = area) =>
  earlierDrawings[pattern](of, palette);
const patterns = ["plain", "contours", "larch", "strata", "facets"] as const;
/** The points of paths made of M and L alone. */
const linesOf = (d = "") =>
  d
    .split("M")
    .slice(1)
    .map((line) =>
      line
        .replace("Z", "")
        .split("L")
        .map((point) => point.split(" ").map(Number) as [number, number]),
    );

describe("house graphics", () => {
  it.each(patterns)("%s is the same every time and lies on a ground that fills its area", (pattern) => {
    expect(draw(pattern)).toEqual(draw(pattern));
    const [ground] = draw(pattern);
    // Strata begin before the tip, on the last colour, as their first band lies deep.
    const expected =
      pattern === "strata"
        ? { d: "M-60 -200h120v1200h-120Z", fill: "#333" }
        : { d: "M-60 0h120v1000h-120Z", fill: "#111" };
    expect(ground).toEqual(expected);
    for (const { d } of draw(pattern)) expect(d).not.toMatch(/NaN|undefined|Infinity/);
  });

  it("plain has two lines at 18 % of the length, 5 and 2 mm wide and 12 mm apart, and one at 86 %; none without a second colour", () => {
    expect(draw("plain").slice(1)).toEqual([
      { d: "M-60 180h120v5h-120Z", fill: "#222" },
      { d: "M-60 192h120v2h-120Z", fill: "#222" },
      { d: "M-60 860h120v5h-120Z", fill: "#222" },
    ]);
    expect(draw("plain", ["#111"])).toHaveLength(1);
  });

  it("contours run the whole length, 7.5 mm apart in the mean, every fifth one thicker, none crossing", () => {
    const [, thin, thick] = draw("contours");
    expect([thin?.stroke, thin?.strokeWidthMm, thick?.stroke, thick?.strokeWidthMm]).toEqual([
      "#333",
      1.2,
      "#222",
      2.4,
    ]);
    const lines = [...linesOf(thin?.d), ...linesOf(thick?.d)];
    // Levels −12 to 12: (60 + 30)/7.5; thick are −10, −5, 0, 5 and 10.
    expect([linesOf(thin?.d).length, linesOf(thick?.d).length]).toEqual([20, 5]);
    const stations = lines[0]?.map(([, x]) => x) ?? [];
    expect(stations.slice(0, 3)).toEqual([-10, 2, 14]);
    expect(stations.at(-1)).toBeGreaterThan(area.lengthMm - 2);
    expect(stations.at(-1)).toBeLessThanOrEqual(area.lengthMm + 10);
    for (const line of lines) expect(line.map(([, x]) => x)).toEqual(stations);
    const mean = (line: readonly (readonly [number, number])[]) => line.reduce((sum, [y]) => sum + y, 0) / line.length;
    const byPlace = lines.toSorted((a, b) => mean(a) - mean(b));
    // The waves are 15, 8 and 4 mm high.
    byPlace.forEach((line, i) => {
      for (const [y] of line) expect(Math.abs(y - 7.5 * (i - 12))).toBeLessThanOrEqual(27.1);
    });
    stations.forEach((_, at) => {
      const ys = byPlace.map((line) => line[at]?.[0] ?? 0);
      expect(Math.min(...ys)).toBeLessThan(-60);
      expect(Math.max(...ys)).toBeGreaterThan(60);
    });
    // Neighbouring lines run alike: their waves are shifted by less than a radian.
    byPlace.slice(1).forEach((line, i) => {
      line.forEach(([y], at) => {
        expect(Math.abs(y - (byPlace[i]?.[at]?.[0] ?? 0) - 7.5)).toBeLessThan(10);
      });
    });
    const [, , oneColour] = draw("contours", ["#111"]);
    expect(oneColour?.stroke).toBe("#111");
  });

  it.each([
    [60, 1],
    [76, 2],
    [160, 3],
  ])(
    "larch on a reach of %d mm has %d stems, with a twig every 74 mm to alternate sides and 33 needles a twig",
    (reachMm, stems) => {
      const [, needles, twigs] = draw("larch", colours, { ...area, reachMm });
      expect([needles?.stroke, needles?.strokeWidthMm, twigs?.stroke, twigs?.strokeWidthMm]).toEqual([
        "#222",
        1.3,
        "#333",
        2.2,
      ]);
      const parts = twigs?.d.split("M").slice(1) ?? [];
      const trunks = parts
        .filter((part) => part.includes("L"))
        .map((part) => part.split("L").map((p) => p.split(" ").map(Number)));
      const branches = parts.filter((part) => part.includes("q")).map((part) => part.split(/[ q]/).map(Number));
      expect(trunks).toHaveLength(stems);
      trunks.forEach((trunk, i) => {
        const axis = -reachMm + (2 * reachMm * (i + 0.5)) / stems;
        for (const [y = 0] of trunk) expect(Math.abs(y - axis)).toBeLessThanOrEqual(7.1);
        expect(trunk[0]?.[1]).toBe(-10);
        expect(trunk.at(-1)?.[1]).toBeGreaterThanOrEqual(area.lengthMm - 10);
      });
      // i·74 up to 1000 + 74: 15 of them.
      expect(branches).toHaveLength(15 * stems);
      branches.forEach(([x0 = 0, y = 0, bendX = 0, bendY, endX = 0, endY = 0], at) => {
        const i = at % 15;
        const column = Math.floor(at / 15);
        expect(y).toBeGreaterThanOrEqual(74 * i - 0.1);
        expect(y).toBeLessThanOrEqual(74 * i + 30.1);
        // It begins on its stem, which waves by 7 mm.
        const axis = -reachMm + (2 * reachMm * (column + 0.5)) / stems;
        expect(x0).toBeCloseTo(axis + 7 * Math.sin(y / 170 + column), 0);
        expect(Math.sign(endX)).toBe(i % 2 === 0 ? 1 : -1);
        expect(Math.abs(endX)).toBeGreaterThanOrEqual(33.9);
        expect(Math.abs(endX)).toBeLessThanOrEqual(50.1);
        expect(endY / Math.abs(endX)).toBeCloseTo(-0.8, 1);
        expect(bendX / endX).toBeCloseTo(0.4, 1);
        expect(bendY).toBe(-6);
      });
      const tufts = (needles?.d.split("M").slice(1) ?? []).map((needle) => needle.split(/[ l]/).map(Number));
      expect(tufts).toHaveLength(33 * branches.length);
      for (const [, , dx = 0, dy = 0] of tufts) {
        expect(Math.hypot(dx, dy)).toBeGreaterThan(10.8);
        expect(Math.hypot(dx, dy)).toBeLessThan(18.2);
        // They fan out by 1.35 rad to either side of the way to the tip.
        expect(dy).toBeLessThan(0);
        expect(Math.abs(Math.atan2(dx, -dy))).toBeLessThan(1.4);
      }
      // Eleven a tuft, from one side to the other; a twig's three tufts lie at thirds of it.
      branches.forEach(([x0 = 0, y = 0, , , endX = 0, endY = 0], at) => {
        for (const tuft of [1, 2, 3]) {
          const own = tufts.slice(33 * at + 11 * (tuft - 1), 33 * at + 11 * tuft);
          const u = tuft / 3;
          for (const [cx = 0, cy = 0] of own) {
            expect(Math.abs(cx - (x0 + endX * u))).toBeLessThan(0.2);
            expect(Math.abs(cy - (y + endY * u * u - 4 * u))).toBeLessThan(0.2);
          }
          const angles = own.map(([, , dx = 0, dy = 0]) => Math.atan2(dx, -dy));
          expect(angles).toEqual(angles.toSorted((a, b) => a - b));
        }
      });
    },
  );

  it("strata are nineteen bands, a sixteenth of the length each in the mean, in the palette's order", () => {
    const bands = draw("strata").slice(1);
    expect(bands).toHaveLength(19);
    expect(bands.map((band) => band.fill)).toEqual(Array.from({ length: 19 }, (_, i) => colours[(i + 2) % 3]));
    const tops = bands.map(({ d }) => {
      const [line = []] = linesOf(d);
      expect(line.slice(-2)).toEqual([
        [60, 1400],
        [-60, 1400],
      ]);
      const top = line.slice(0, -2);
      expect(top.map(([x]) => x)).toEqual(Array.from({ length: 21 }, (_, i) => -60 + 6 * i));
      return top;
    });
    tops.forEach((top, i) => {
      const k = i - 1;
      // Shifted by up to 23 mm, tilted by 0.55 to 0.85, waved by 13 mm.
      for (const [x, y] of top) {
        expect(Math.abs(y - (1000 * k) / 16 - 0.7 * x)).toBeLessThanOrEqual(23 + 0.15 * Math.abs(x) + 13.1);
      }
      const tilt = ((top.at(-1)?.[1] ?? 0) - (top[0]?.[1] ?? 0)) / 120;
      expect(tilt).toBeGreaterThan(0.55 - 26 / 120);
      expect(tilt).toBeLessThan(0.85 + 26 / 120);
    });
    const middles = tops.map((top) => top[10]?.[1] ?? 0);
    // The shifts differ from band to band.
    expect(new Set(middles.map((y, i) => Math.round(y - (1000 * (i - 1)) / 16))).size).toBeGreaterThan(10);
  });

  it("facets tile their area: every inner edge has two triangles, corners stray by at most 0.4 of a cell of 46 mm", () => {
    const groups = draw("facets").slice(1);
    expect(groups.map(({ fill, stroke, strokeWidthMm }) => [fill, stroke, strokeWidthMm])).toEqual(
      colours.map((colour) => [colour, colour, 0.6]),
    );
    const triangles = groups.flatMap(({ d }) => linesOf(d));
    // ceil(120/46) + 1 = 4 columns, ceil(1000/46) + 1 = 23 rows.
    expect(triangles).toHaveLength(2 * 4 * 23);
    const edges = new Map<string, number>();
    for (const triangle of triangles) {
      expect(triangle).toHaveLength(3);
      triangle.forEach((point, i) => {
        const next = triangle[(i + 1) % 3] ?? point;
        const key = [point, next].map(String).sort().join(" ");
        edges.set(key, (edges.get(key) ?? 0) + 1);
      });
      for (const [x, y] of triangle) {
        for (const [value, first] of [
          [x, -60 - 23],
          [y, -23],
        ] as const) {
          const cells = (value - first) / 46;
          expect(Math.abs(cells - Math.round(cells))).toBeLessThanOrEqual(0.402);
        }
      }
    }
    const counts = [...edges.values()];
    expect(counts.filter((count) => count === 1)).toHaveLength(2 * (4 + 23));
    expect(counts.filter((count) => count === 2)).toHaveLength((3 * triangles.length - 2 * (4 + 23)) / 2);
    // Whatever strays, the corners cover the area.
    const xs = triangles.flat().map(([x]) => x);
    const ys = triangles.flat().map(([, y]) => y);
    expect([Math.min(...xs) < -60, Math.max(...xs) > 60, Math.min(...ys) < 0, Math.max(...ys) > 1000]).toEqual([
      true,
      true,
      true,
      true,
    ]);
    // Each colour has its part.
    for (const { d } of groups) expect(linesOf(d).length).toBeGreaterThan(0.2 * triangles.length);
  });

  it("the other palette is the same one backwards", () => {
    const [graphic] = catalog.build.houseGraphics;
    if (!graphic) throw new Error("no graphic");
    const before = [...graphic.colours];
    expect(otherPalette(graphic)).toEqual({ ...graphic, colours: before.toReversed() });
    expect(graphic.colours).toEqual(before);
  });
});
