/**
 * Drawing 2 of a core of round numbers: along and across 1 mm is 0.2 pt and the tip lies at x = 20; thickness and section are
 * drawn larger than life or full size, where 25.4 mm are 72 pt.
 */
import { describe, expect, it } from "vitest";
import { composeBuildSheet } from "#papers";
import { PT_PER_MM } from "#papers/parts/theme";
import { CoreDrawingPage } from "../../lib/papers/build-sheet/core-drawing";
import { CorePlan } from "../../lib/papers/build-sheet/core-plan";
import { SectionAtMount } from "../../lib/papers/build-sheet/core-section";
import { ThicknessView } from "../../lib/papers/build-sheet/core-thickness";
import type { BuildSheetData, CoreDrawing } from "../../lib/papers/build-sheet/printed";
import { corners, type Dimension, drawn, numbers, ofType, type Shape, textAt } from "./drawn";
import { core, innerPt, scale, ski } from "./plain-ski";
import { facts } from "./sample";

const along = (dimensions: readonly Dimension[]) =>
  dimensions.flatMap(({ name, from, to, text }) => (name === "HDim" ? [`${from} to ${to}: ${text}`] : []));
const lines = (shapes: readonly Shape[]) => ofType(shapes, "LINE").map((line) => numbers(line, "x1", "y1", "x2", "y2"));

describe("the core in plan", () => {
  const plan = (change: Partial<CoreDrawing> = {}) =>
    drawn(CorePlan({ d: ski, core: { ...core, ...change }, scale, innerPt }));
  // 16 pt above the ski, which is 10 pt to each side.
  const axis = 26;

  it("is the wood between its ends and its sidewalls, inside the dashed ski", () => {
    const [upper, lower, wood] = ofType(plan().shapes, "PATH").map(({ props }) => String(props.d));
    expect(upper).toBe("M20 26L40 16L80 17.6L120 19.4L160 18L200 17L220 26");
    expect(lower).toBe("M20 26L40 36L80 34.4L120 32.6L160 34L200 35L220 26");
    // Half widths 45, 37, 28, 35 and 40: 5 mm of sidewall off each side of the ski.
    expect(wood).toBe("M40 17L80 18.6L120 20.4L160 19L200 18L200 34L160 33L120 31.6L80 33.4L40 35Z");
  });

  it("has no wood where the ski is no wider than its walls", () => {
    const [, , wood] = ofType(plan({ sidewall: { widthMm: 34, material: "ABS" } }).shapes, "PATH");
    expect(corners(wood?.props.d)[2]).toEqual({ x: 120, y: axis });
  });

  it("has its joints where strips meet, on both sides, as far as the milled core reaches them", () => {
    // Joints at 10, 20 and 30 mm; at the waist the core is 28 mm a side, and the outermost joint is milled away there.
    const joints = lines(plan({ pocket: null }).shapes).filter(([x1, , x2]) => x1 !== x2);
    const at = (mm: number, from: number, to: number) => [
      [from, axis - mm / 5, to, axis - mm / 5],
      [from, axis + mm / 5, to, axis + mm / 5],
    ];
    expect(joints.slice(0, 8)).toEqual([
      ...at(10, 40, 200),
      ...at(20, 40, 200),
      ...at(30, 40, 80),
      ...at(30, 160, 200),
    ]);
  });

  it("has each strip's letter in its middle, the centre's once", () => {
    const letters = ofType(plan().shapes, "TEXT").filter(({ text }) => /^[CIMO]$/.test(text));
    const place = (letter: Shape) => [letter.text, ...numbers(letter, "x", "y")];
    expect(letters.map(place)).toEqual([
      ["C", 54, 28.2],
      ["I", 54, 25.2],
      ["I", 54, 31.2],
      ["M", 54, 23.2],
      ["M", 54, 33.2],
      ["O", 54, 20.7],
      ["O", 54, 35.7],
    ]);
  });

  it("has the pocket at its place and width, told with its depth", () => {
    const { shapes, dimensions } = plan();
    const pocket = ofType(shapes, "RECT").find(({ props }) => props.fill === "none");
    expect(numbers(pocket, "x", "y", "width", "height")).toEqual([90, axis - 6, 80, 12]);
    expect(along(dimensions)[0]).toBe("90 to 170: pocket 350 to 750: 400.0 × 60.0, 0.70 deep");
    expect(ofType(plan({ pocket: null }).shapes, "RECT").filter(({ props }) => props.fill === "none")).toEqual([]);
    const hatching = corners(ofType(shapes, "PATH")[3]?.props.d);
    expect(Math.min(...hatching.map(({ x }) => x))).toBeGreaterThanOrEqual(90);
    expect(Math.max(...hatching.map(({ x }) => x))).toBeLessThanOrEqual(170);
    expect(Math.min(...hatching.map(({ y }) => y))).toBeGreaterThanOrEqual(axis - 6);
    expect(Math.max(...hatching.map(({ y }) => y))).toBeLessThanOrEqual(axis + 6);
  });

  it("writes sizes of the pocket to a tenth and its depth to a hundredth", () => {
    const pocket = core.pocket && { ...core.pocket, toMm: 750.26, widthMm: 60.16, depthMm: 0.704 };
    expect(along(plan({ pocket }).dimensions)[0]?.split(": ").slice(1).join(": ")).toBe(
      "pocket 350 to 750: 400.3 × 60.2, 0.70 deep",
    );
  });

  it("has spacers, wood and mount line by length, in rows below the ski", () => {
    const { shapes, dimensions } = plan();
    expect(along(dimensions).slice(1)).toEqual([
      "20 to 40: spacer 100",
      "40 to 200: wood 800 (+ scarf 15 each end)",
      "200 to 220: spacer 100",
      "20 to 130: tip to mount line 550",
    ]);
    const rows = dimensions.map(({ props }) => Number(props.y));
    expect(rows[0]).toBeGreaterThan(axis + 10);
    expect(rows[1]).toBeGreaterThan((rows[0] ?? 0) + 7);
    expect([rows[2], rows[3]]).toEqual([rows[1], rows[1]]);
    expect(rows[4]).toBeGreaterThan((rows[1] ?? 0) + 7);
    expect(rows[4]).toBeLessThan(numbers(ofType(shapes, "SVG")[0], "height")[0] ?? 0);
    expect(dimensions.map(({ props }) => props.fromY)).toEqual([axis + 6, axis, axis, axis, axis]);
    expect(lines(shapes)).toContainEqual([130, axis - 8, 130, axis + 8]);
    expect(lines(shapes)).toContainEqual([18, axis, 222, axis]);
    expect(textAt(shapes, "Core in plan, upper face up, tip to the left: 1 : 12.5; dashed: finished ski")).toEqual([
      0, 7,
    ]);
  });

  it("tells tip and tail spacer apart", () => {
    const spacers = { ...core.spacers, tipMm: 110, tailMm: 90 };
    const dimensions = along(plan({ spacers }).dimensions);
    expect([dimensions[1], dimensions[3]]).toEqual(["20 to 40: spacer 110", "200 to 220: spacer 90"]);
  });
});

describe("the section at the mount line", () => {
  const section = (change: Partial<CoreDrawing> = {}, widthAtMountMm = 84) =>
    drawn(SectionAtMount({ d: { ...ski, widthAtMountMm }, core: { ...core, ...change } }));
  /** Sides in mm from the axis, which lies 4 pt and half the ski from the paper's edge; heights in mm. */
  const inMm = (shapes: readonly Shape[], widthAtMountMm = 84) =>
    ofType(shapes, "RECT")
      .map((rect) => {
        const [x = 0, y = 0, width = 0, height = 0] = numbers(rect, "x", "y", "width", "height");
        const from = (x - 4) / PT_PER_MM - widthAtMountMm / 2;
        return [from, from + width / PT_PER_MM, (y - 30) / PT_PER_MM, height / PT_PER_MM].map(
          (v) => Math.round(v * 1e4) / 1e4 + 0,
        );
      })
      .filter(([, , top]) => top === 0);

  it("has walls, strips and pocket full size, strips cut at the wall", () => {
    const t = 11.5;
    expect(inMm(section().shapes)).toEqual([
      [-42, 42, 0, t],
      [-42, -37, 0, t],
      [37, 42, 0, t],
      [-10, 10, 0, t],
      [10, 20, 0, t],
      [20, 30, 0, t],
      [30, 37, 0, t],
      [-20, -10, 0, t],
      [-30, -20, 0, t],
      [-37, -30, 0, t],
      [-30, 30, 0, 0.7],
    ]);
  });

  it("draws no pocket where there is none, and a shallow one thick enough to see", () => {
    expect(inMm(section({ pocket: null }).shapes)).toHaveLength(10);
    const shallow = section({ pocket: core.pocket && { ...core.pocket, depthMm: 0.1 } });
    expect(inMm(shallow.shapes).at(-1)?.[3]).toBeCloseTo(1.2 / PT_PER_MM, 3);
  });

  it("leaves out a strip that is milled away and the letter of a narrow one", () => {
    // At 72 mm the core reaches 31 mm: 1 mm of the outer strips is left, 2.8 pt, no room for a letter.
    const narrow = section({}, 72);
    expect(inMm(narrow.shapes, 72)).toContainEqual([30, 31, 0, 11.5]);
    const letters = (shapes: readonly Shape[]) =>
      ofType(shapes, "TEXT")
        .map(({ text }) => text)
        .filter((t) => /^[CIMO]$/.test(t));
    expect(letters(narrow.shapes)).toEqual(["C", "I", "M", "I", "M"]);
    expect(letters(section().shapes)).toEqual(["C", "I", "M", "O", "I", "M", "O"]);
    // At 70.2 mm 0.1 mm is left, 0.28 pt: no line either. At 68 mm nothing.
    expect(inMm(section({}, 70.2).shapes, 70.2)).toHaveLength(9);
    expect(inMm(section({}, 68).shapes, 68)).toHaveLength(9);
  });

  it("has each letter in the middle of its strip", () => {
    const { shapes } = section();
    const ofLetter = ofType(shapes, "TEXT").filter(({ text }) => text === "O");
    const mm = ofLetter.map((letter) => ((numbers(letter, "x")[0] ?? 0) - 4) / PT_PER_MM - 42);
    expect(mm[0]).toBeCloseTo(33.5, 3);
    expect(mm[1]).toBeCloseTo(-33.5, 3);
  });

  it("tells width and thickness, and names the woods and the wall", () => {
    const { shapes, dimensions } = section({ thicknessAtMountMm: 11.456 }, 84.06);
    const [thickness, width] = dimensions;
    expect(thickness?.text).toBe("11.46");
    expect((thickness?.to ?? 0) - (thickness?.from ?? 0)).toBeCloseTo(11.456 * PT_PER_MM, 6);
    expect(width?.text).toBe("84.1");
    expect((width?.to ?? 0) - (width?.from ?? 0)).toBeCloseTo(84.06 * PT_PER_MM, 6);
    expect(Number(thickness?.props.x)).toBeGreaterThan(width?.to ?? 0);
    expect(Number(width?.props.y)).toBeLessThan(thickness?.from ?? 0);
    const texts = ofType(shapes, "TEXT").map(({ text }) => text);
    expect(texts).toContain("C aspen · I ash · M poplar · O beech");
    expect(texts).toContain("sidewall ABS, 5 mm finished; black on top: pocket");
    const plain = section({ pocket: null, sidewall: { widthMm: 5.26, material: "ABS" } });
    expect(ofType(plain.shapes, "TEXT").map(({ text }) => text)).toContain("sidewall ABS, 5.3 mm finished");
  });

  it("is as wide as the ski and its number, or as its words, and has them below it", () => {
    const paper = (widthAtMountMm: number) => numbers(ofType(section({}, widthAtMountMm).shapes, "SVG")[0], "width")[0];
    expect(paper(84)).toBeCloseTo(84 * PT_PER_MM + 40, 5);
    expect(paper(60)).toBe(268);
    const { shapes } = section();
    const bottom = 30 + 11.5 * PT_PER_MM;
    const words = ofType(shapes, "TEXT")
      .slice(-2)
      .map((text) => numbers(text, "y")[0] ?? 0);
    expect(words[0]).toBeGreaterThan(bottom + 7);
    expect(words[1]).toBeGreaterThan((words[0] ?? 0) + 7);
    expect(numbers(ofType(shapes, "SVG")[0], "height")[0]).toBeGreaterThan(words[1] ?? 0);
  });
});

describe("the thickness programme", () => {
  const view = (thickestMm = 11.5) => {
    const thickness = core.thickness.map((p) => (p.y === 11.5 ? { ...p, y: thickestMm } : p));
    const stations = core.stations.map((s) => (s.plannedMm === 11.5 ? { ...s, plannedMm: thickestMm } : s));
    return drawn(ThicknessView({ d: ski, core: { ...core, thickness, stations }, scale, innerPt }));
  };
  /** The programme as drawn: places in mm along the ski, heights in pt over its floor. */
  const drawnHeights = (shapes: readonly Shape[]) => {
    const points = corners(ofType(shapes, "PATH")[0]?.props.d);
    const floor = points.at(-1)?.y ?? 0;
    return points.map(({ x, y }) => [Math.round((x - 20) * 5), floor - y] as const);
  };

  it.each([
    // 23 mm of paper: twice the thickness up to 11.5 mm, one and a half up to 15.3, as it is above, however thick.
    [11.5, 2],
    [11.6, 1.5],
    [15.3, 1.5],
    [15.4, 1],
    [24, 1],
  ])("of a core of %d mm is drawn %d times as thick", (thickestMm, ratio) => {
    const { shapes } = view(thickestMm);
    const heights = drawnHeights(shapes);
    expect(heights.map(([x]) => x)).toEqual([100, 550, 900, 900, 100]);
    expect(heights[0]?.[1]).toBeCloseTo(3 * ratio * PT_PER_MM, 1);
    expect(heights[1]?.[1]).toBeCloseTo(thickestMm * ratio * PT_PER_MM, 1);
    expect(heights[2]?.[1]).toBeCloseTo(4 * ratio * PT_PER_MM, 1);
    expect(heights[3]?.[1]).toBe(0);
    const title = ofType(shapes, "TEXT")[0]?.text;
    expect(title).toContain(`Core profile T-1, L and R alike: along 1 : 12.5, thickness ${ratio} : 1`);
  });

  it("has every station on its place, from the programme to below the floor, planned value and two boxes under it", () => {
    const { shapes } = view();
    const floor = corners(ofType(shapes, "PATH")[0]?.props.d).at(-1)?.y ?? 0;
    const stations = lines(shapes).filter(([x1, , , y2 = 0]) => x1 !== 130 || y2 > floor + 1);
    expect(stations.map(([x]) => x)).toEqual([40, 130, 200]);
    expect(floor - (stations[1]?.[1] ?? 0)).toBeCloseTo(23 * PT_PER_MM, 2);
    for (const [, , , end = 0] of stations) expect(end).toBeGreaterThan(floor);
    const words = (text: string) => textAt(shapes, text);
    expect(words("1 · 100")[0]).toBe(40);
    expect(words("3.00")[0]).toBe(40);
    expect(words("2 · 550")[0]).toBe(130);
    expect(words("11.50")[0]).toBe(130);
    expect(words("3 · 900")[0]).toBe(200);
    expect(words("4.00")[0]).toBe(200);
    const boxes = ofType(shapes, "RECT").map((rect) => numbers(rect, "x", "y", "width", "height"));
    // Stations are 80 pt apart: boxes of 58 pt, the left ski's over the right ski's, each beside its words.
    expect(boxes.map(([x, , width]) => [x, width])).toEqual(
      [40, 40, 130, 130, 200, 200].map((centre) => [centre - 29, 58]),
    );
    const [left = [], right = []] = boxes;
    expect(right[1]).toBeGreaterThanOrEqual((left[1] ?? 0) + (left[3] ?? 0));
    for (const [words, box] of [
      ["L measured", left],
      ["R measured", right],
    ] as const) {
      const [, y = 0] = textAt(shapes, words);
      expect(y).toBeGreaterThan(box[1] ?? 0);
      expect(y).toBeLessThan((box[1] ?? 0) + (box[3] ?? 0));
    }
    expect(words("planned mm")[1]).toBe(words("3.00")[1]);
    expect(words("station · mm from tip")[1]).toBe(words("1 · 100")[1]);
    expect(words("1 · 100")[1]).toBeGreaterThan(floor);
    expect(words("3.00")[1]).toBeGreaterThan((words("1 · 100")[1] ?? 0) + 7);
    expect(left[1]).toBeGreaterThan(words("3.00")[1] ?? 0);
    const [paper] = ofType(shapes, "SVG");
    expect(numbers(paper, "height")[0]).toBeGreaterThan((right[1] ?? 0) + (right[3] ?? 0));
    expect(numbers(paper, "width")).toEqual([innerPt]);
  });

  it("keeps boxes of near stations apart", () => {
    const stations = Array.from({ length: 9 }, (_, i) => ({ name: String(i + 1), xMm: 100 + 100 * i, plannedMm: 5 }));
    const { shapes } = drawn(ThicknessView({ d: ski, core: { ...core, stations }, scale, innerPt }));
    // 100 mm apart, 20 pt: 4 pt of air.
    expect(numbers(ofType(shapes, "RECT")[0], "x", "width")).toEqual([32, 16]);
  });

  it("has the mount line through it", () => {
    const { shapes } = view();
    const floor = corners(ofType(shapes, "PATH")[0]?.props.d).at(-1)?.y ?? 0;
    const mount = lines(shapes).find(([x1, , , y2 = 0]) => x1 === 130 && y2 <= floor + 0.01);
    expect(mount?.[1]).toBeLessThan(floor - 11);
    expect(textAt(shapes, "mount line 550")[0]).toBe(134);
  });
});

describe("the core card", () => {
  const page = (change: Partial<CoreDrawing>) => {
    const sheet: BuildSheetData = { ...composeBuildSheet(facts), core: { ...core, ...change } };
    return ofType(drawn(CoreDrawingPage({ data: sheet, innerPt: 744 })).shapes, "TEXT").map(({ text }) => text);
  };
  const beside = (texts: readonly string[], label: string) => texts[texts.indexOf(label) + 1];

  it("tells pocket, plate and rubber beside the drawing, sizes to a tenth, thickness to a hundredth", () => {
    const pocket = { ...core.pocket, fromMm: 350.14, toMm: 750.26, widthMm: 60.16, depthMm: 0.704 };
    const texts = page({
      pocket: core.pocket && { ...core.pocket, ...pocket, plateLengthMm: 399.04, plateWidthMm: 59.26 },
    });
    expect(beside(texts, "Pocket, upper face")).toBe("400.1 × 60.2 mm, 0.70 deep");
    expect(beside(texts, "From the tip")).toBe("350.1 to 750.3 mm");
    expect(beside(texts, "Plate")).toBe("aluminium, 399 × 59.3 × 0.50 mm");
    expect(beside(texts, "Rubber under it")).toBe("0.15 mm");
    expect(beside(page({ pocket: null }), "Pocket")).toBe("none");
  });

  it("tells each spacer and each core's wood", () => {
    const texts = page({ spacers: { ...core.spacers, tipMm: 110, tailMm: 90, tipThicknessMm: 3.056 } });
    expect(beside(texts, "Tip spacer")).toBe("110 + 15 mm scarf, 3.06 mm thick");
    expect(beside(texts, "Tail spacer")).toBe("90 + 15 mm scarf, 4.00 mm thick");
    expect(beside(texts, "Spacers")).toBe("spacer sheet");
    expect(beside(texts, "Wood, planned")).toBe("L 400 g, R 410 g (milled, pocket out)");
  });
});
