/**
 * Drawing 1 of a ski of round numbers: 1 mm is 0.2 pt, the tip lies at x = 20, so what lies s mm from the tip is drawn at
 * 20 + s/5 and what is w mm wide reaches w/10 to each side of the axis. Heights of the profile are stretched threefold.
 */
import { describe, expect, it } from "vitest";
import { composeBuildSheet } from "#papers";
import type { DrawingData } from "#papers/parts/facts";
import { OutlineDrawing } from "../../lib/papers/build-sheet/outline-drawing";
import { PlanView } from "../../lib/papers/build-sheet/plan-view";
import { ProfileView } from "../../lib/papers/build-sheet/profile-view";
import { corners, type Dimension, drawn, numbers, ofType, type Shape, textAt } from "./drawn";
import { innerPt, scale, ski } from "./plain-ski";
import { facts } from "./sample";

const plan = (change: Partial<DrawingData> = {}) => drawn(PlanView({ d: { ...ski, ...change }, scale, innerPt }));
const profile = (change: Partial<DrawingData> = {}) => drawn(ProfileView({ d: { ...ski, ...change }, scale, innerPt }));
const along = (dimensions: readonly Dimension[]) =>
  dimensions.flatMap(({ name, from, to, text }) => (name === "HDim" ? [`${from} to ${to}: ${text}`] : []));
const across = (dimensions: readonly Dimension[]) =>
  dimensions.flatMap(({ name, from, to, text, props }) => (name === "VDim" ? [[Number(props.x), from, to, text]] : []));

/** The paper of a drawing, and everything that is drawn on it. */
function extent(shapes: readonly Shape[]) {
  const [paper] = ofType(shapes, "SVG");
  const ys = shapes.flatMap((shape) => {
    if (shape.type === "PATH") return corners(shape.props.d).map(({ y }) => y);
    if (shape.type === "LINE") return numbers(shape, "y1", "y2");
    if (shape.type === "TEXT") return numbers(shape, "y");
    return [];
  });
  const [width, height] = numbers(paper, "width", "height");
  expect(paper?.props.viewBox).toBe(`0 0 ${width} ${height}`);
  return { width, height: height ?? 0, top: Math.min(...ys), bottom: Math.max(...ys) };
}

describe("the plan", () => {
  // Widest is 100 mm: the axis is 10 pt below the ski's upper side, which has 54 pt for what stands above it.
  const axis = 64;

  it("has every length where it is on the ski", () => {
    expect(along(plan().dimensions)).toEqual([
      "44 to 196: contact 760 (0.5 mm gauge, pressed flat)",
      "32 to 206: edges 870 a side",
      "20 to 40: 100",
      "40 to 200: sidecut 800.0",
      "200 to 220: 100",
      "20 to 130: tip to mount line 550",
      "130 to 220: mount line to tail 450",
      "20 to 220: length 1 000 along the base",
    ]);
  });

  it("has each width across the axis at its own place", () => {
    expect(across(plan().dimensions)).toEqual([
      [40, axis - 10, axis + 10, "100"],
      [120, axis - 6.6, axis + 6.6, "66"],
      [200, axis - 9, axis + 9, "90"],
    ]);
  });

  it("writes widths and end lengths to a tenth where they have one", () => {
    const { dimensions } = plan({
      lengthMm: 1000.25,
      shoulder: { xMm: 100.14, widthMm: 100.06 },
      waist: { xMm: 500, widthMm: 66.16 },
      heel: { xMm: 899.9, widthMm: 90.24 },
    });
    expect(across(dimensions).map(([, , , text]) => text)).toEqual(["100.1", "66.2", "90.2"]);
    expect(along(dimensions).map((each) => each.split(": ")[1])).toEqual(
      expect.arrayContaining(["100.1", "sidecut 799.8", "100.4"]),
    );
  });

  it("finds room for a ski whose heel is the wider end", () => {
    const wide = plan({ heel: { xMm: 900, widthMm: 120 } });
    expect(across(wide.dimensions)[2]).toEqual([200, 54, 78, "120"]);
  });

  it("draws the outline about the axis, and the steel on it from end to end of the edge", () => {
    const [outline, upper, lower] = ofType(plan().shapes, "PATH").map(({ props }) => corners(props.d));
    expect(outline?.slice(0, 3)).toEqual([
      { x: 20, y: axis },
      { x: 40, y: axis - 10 },
      { x: 80, y: axis - 8.4 },
    ]);
    // Between 60 and 930: from shoulder to heel.
    expect(upper?.map(({ x }) => x)).toEqual([40, 80, 120, 160, 200]);
    expect(upper?.[0]).toEqual({ x: 40, y: axis - 10 });
    expect(lower?.[0]).toEqual({ x: 40, y: axis + 10 });
  });

  it("takes the ends of the edge in, and a full wrap all round", () => {
    const steel = (edge: DrawingData["edge"]) =>
      corners(ofType(plan({ edge }).shapes, "PATH")[1]?.props.d).map(({ x }) => x);
    expect(steel({ ...ski.edge, fromMm: 100, toMm: 700 })).toEqual([40, 80, 120, 160]);
    expect(steel({ ...ski.edge, wrap: "full" })).toEqual([20, 40, 80, 120, 160, 200, 220]);
    expect(along(plan({ edge: { ...ski.edge, wrap: "full", lengthMm: 2100 } }).dimensions)[1]).toBe(
      "32 to 206: edges all round: 2 100 a ski",
    );
  });

  it("draws mat and windows by place and width, each with its name inside", () => {
    const { shapes } = plan();
    const plain = ofType(shapes, "RECT").filter(({ props }) => props.fill === "none");
    // Mat 250 to 850, drawn 3 pt within the waist; windows 600 to 700, 40 wide, and 750 to 800, 20 wide.
    expect(plain.map((rect) => numbers(rect, "x", "y", "width", "height"))).toEqual([
      [70, axis - 3.6, 120, 7.2],
      [140, axis - 4, 20, 8],
      [170, axis - 2, 10, 4],
    ]);
    expect(textAt(shapes, "binding mat 250–850")[0]).toBe(73);
    expect(textAt(shapes, "window 1")[0]).toBe(143);
    expect(textAt(shapes, "window 2")[0]).toBe(173);
    const hatching = corners(ofType(shapes, "PATH")[3]?.props.d);
    expect(Math.min(...hatching.map(({ x }) => x))).toBeGreaterThanOrEqual(70);
    expect(Math.max(...hatching.map(({ x }) => x))).toBeLessThanOrEqual(190);
    expect(Math.min(...hatching.map(({ y }) => y))).toBeGreaterThanOrEqual(axis - 3.6);
    expect(Math.max(...hatching.map(({ y }) => y))).toBeLessThanOrEqual(axis + 3.6);
  });

  it("marks the mount line across the whole ski and the axis beyond its ends", () => {
    const { shapes } = plan();
    const lines = ofType(shapes, "LINE").map((line) => numbers(line, "x1", "y1", "x2", "y2"));
    expect(lines).toContainEqual([130, 51, 130, 77]);
    expect(lines).toContainEqual([16.4, axis, 223.6, axis]);
    expect(textAt(shapes, "mount line")).toEqual([134, 49]);
  });

  it("names its scale, and stays on its paper with the lengths in rows below the ski", () => {
    const { shapes, dimensions } = plan();
    expect(textAt(shapes, "Plan, L and R alike: 1 : 12.5, all dimensions in mm, tip to the left")).toEqual([0, 7]);
    const { width, height, top, bottom } = extent(shapes);
    expect(width).toBe(innerPt);
    expect(top).toBeGreaterThan(0);
    expect(bottom).toBeLessThan(height);
    const rows = dimensions.flatMap(({ name, props }) => (name === "HDim" ? [Number(props.y)] : []));
    // Contact and edges above, then ends and sidecut, the mount line's two, the whole length.
    expect(rows.map((y) => (y < axis - 10 ? "above" : y > axis + 10 ? "below" : "on"))).toEqual([
      ...Array(2).fill("above"),
      ...Array(6).fill("below"),
    ]);
    expect(rows[1]).toBeGreaterThan((rows[0] ?? 0) + 7);
    expect(new Set(rows.slice(2, 5)).size).toBe(1);
    expect(rows[5]).toBeGreaterThan((rows[2] ?? 0) + 7);
    expect(rows[6]).toBe(rows[5]);
    expect(rows[7]).toBeGreaterThan((rows[5] ?? 0) + 7);
    // What is measured lies between a dimension and the ski: witness lines start on the ski's side.
    for (const { name, props } of dimensions) {
      if (name !== "HDim") continue;
      const from = Number(props.fromY);
      const ends = Number(props.y) < axis ? from - Number(props.y) : Number(props.y) - from;
      expect(ends).toBeGreaterThan(0);
      expect(Math.abs(from - axis)).toBeLessThanOrEqual(20);
      // What is measured above begins on the upper half of the ski, what is measured below on its axis or lower half.
      expect(Math.sign(from - axis)).toBe(Number(props.y) < axis ? -1 : Math.max(0, Math.sign(from - axis)));
    }
  });
});

describe("the profile", () => {
  // The higher end rises 50 mm, 30 pt; the bench lies 24 pt below that, at 54.
  const bench = 54;

  it("has every height above the bench, three times the scale of the lengths", () => {
    const { shapes, dimensions } = profile();
    const line = ofType(shapes, "PATH").map(({ props }) => props.d);
    expect(line).toContain("M20 24L50 54L129 51.6L208 54L220 42");
    expect(across(dimensions)).toEqual([
      [20, bench - 30, bench, "50"],
      [220, bench - 12, bench, "20"],
    ]);
    expect(dimensions.find(({ text }) => text === "50")?.props.side).toBe("left");
    expect(textAt(shapes, "camber 4 finished · mould camber 5.5")).toEqual([129, 46.6]);
  });

  it("finds room for a tail that rises more than the tip", () => {
    expect(across(profile({ tipRiseMm: 10, tailRiseMm: 70 }).dimensions)).toEqual([
      [20, 60, 66, "10"],
      [220, 24, 66, "70"],
    ]);
  });

  it("lies on a bench that is longer than the ski", () => {
    const lines = ofType(profile().shapes, "LINE").map((line) => numbers(line, "x1", "y1", "x2", "y2"));
    expect(lines[0]).toEqual([17, bench, 223, bench]);
    const hatching = corners(ofType(profile().shapes, "PATH")[0]?.props.d);
    expect(Math.min(...hatching.map(({ x }) => x))).toBeCloseTo(17, 0);
    expect(Math.max(...hatching.map(({ x }) => x))).toBe(223);
    expect(Math.min(...hatching.map(({ y }) => y))).toBe(bench);
  });

  it("tells each rocker and the length between them", () => {
    // Tip 150 mm is 30 pt, tail 60 mm is 12 pt: too narrow for words.
    expect(along(profile().dimensions)).toEqual([
      "20 to 50: 150",
      "50 to 208: between tangent points 790",
      "208 to 220: 60",
    ]);
    expect(profile().dimensions.at(-1)?.props.textAt).toBe("after");
  });

  it.each([
    // 34 pt are 170 mm, 75 pt are 375 mm.
    [169, "169"],
    [170, "tip 170"],
    [374, "tip 374"],
    [375, "tip rocker 375"],
  ])("names a tip rocker of %d mm as far as there is room", (fromMm, words) => {
    expect(along(profile({ tangent: { ...ski.tangent, fromMm } }).dimensions)[0]?.split(": ")[1]).toBe(words);
  });

  it.each([
    [831, "169", "after"],
    [830, "tail 170", "middle"],
  ])("with the tail's rocker from %d mm writes %s %s its line", (toMm, words, textAtEnd) => {
    const last = profile({ tangent: { ...ski.tangent, toMm } }).dimensions.at(-1);
    expect([last?.text, last?.props.textAt]).toEqual([words, textAtEnd]);
  });

  it("writes heights and cambers to a tenth, and stays on its paper", () => {
    const { shapes, dimensions } = profile({
      tipRiseMm: 50.26,
      tailRiseMm: 20.14,
      camberMm: 4.16,
      mouldCamberMm: 5.54,
    });
    expect(across(dimensions).map(([, , , text]) => text)).toEqual(["50.3", "20.1"]);
    expect(textAt(shapes, "camber 4.2 finished · mould camber 5.5")[0]).toBe(129);
    const title = "Side profile of the finished ski, lying free: lengths 1 : 12.5, heights 3 times that";
    expect(textAt(shapes, title)).toEqual([120, 8]);
    const { width, height, top, bottom } = extent(shapes);
    expect(width).toBe(innerPt);
    expect(top).toBeGreaterThan(0);
    expect(bottom).toBeLessThan(height);
    for (const { name, props } of dimensions) if (name === "HDim") expect(Number(props.y)).toBeGreaterThan(bench + 3);
  });
});

describe("the numbers beside the shape", () => {
  const sheet = composeBuildSheet(facts);
  const page = (change: Partial<DrawingData> = {}) =>
    ofType(
      drawn(OutlineDrawing({ data: { ...sheet, drawing: { ...ski, ...change } }, innerPt: 744 })).shapes,
      "TEXT",
    ).map(({ text }) => text);
  const beside = (texts: readonly string[], label: string) => texts[texts.indexOf(label) + 1];

  it.each<[string, string, Partial<DrawingData>]>([
    ["Shoulder – waist – heel, mm", "100.1 – 66 – 90", { shoulder: { xMm: 100, widthMm: 100.06 } }],
    ["Width at the mount line", "84.1 mm", { widthAtMountMm: 84.06 }],
    ["Waist, from the tip", "500 mm", {}],
    ["Sidecut radius", "17.46 m (one circle); S–H–W formula 17.40 m", { sidecutRadiusM: 17.456 }],
    ["Sidecut radius", "17.50 m (one circle); S–H–W formula 17.40 m", { federationRadiusM: 17.404 }],
    ["Projected length", "990 mm", {}],
    ["Edge wrap", "partial", {}],
    ["Edge steel", "2 × 870 mm each ski", {}],
    ["Edge from – to", "60 – 930 mm from the tip", {}],
    ["Edge wrap", "full", { edge: { ...ski.edge, wrap: "full" } }],
    ["Edge steel", "870 mm round each ski", { edge: { ...ski.edge, wrap: "full" } }],
    ["Edge from – to", "all round", { edge: { ...ski.edge, wrap: "full" } }],
    ["Base sheet", "this outline less 2.3 mm where steel runs", { edgeWidthMm: 2.26 }],
    // 123 456 mm² are 0.123 456 m².
    ["Plan area", "0.1235 m² a ski", { planAreaMm2: 123_456 }],
    ["Mount line", "550 mm from the tip: 10 mm forward of the model's", {}],
    ["Mount line", "550 mm from the tip: 10 mm back of the model's", { mountOffsetMm: -10 }],
    ["Mount line", "550 mm from the tip: the model's own", { mountOffsetMm: 0 }],
    ["Mould camber", "5.5 mm", { mouldCamberMm: 5.46 }],
    ["Finished camber", "4.1 mm", { camberMm: 4.14 }],
    ["Tip, tail height", "50 mm, 20 mm", {}],
    ["Clear windows", "1: 600 to 700 mm from the tip, 40 mm wide; 2: 750 to 800 mm from the tip, 20 mm wide", {}],
  ])("%s: %s", (label, words, change) => {
    expect(beside(page(change), label)).toBe(words);
  });

  it("mark a moved mount line and windows as options, and have no windows where there are none", () => {
    const marks = (change: Partial<DrawingData>) => page(change).filter((text) => text === "OPTION").length;
    expect([marks({}), marks({ mountOffsetMm: 0 }), marks({ windows: [] })]).toEqual([2, 1, 1]);
    expect(page({ windows: [] })).not.toContain("Clear windows");
  });

  it("stand again by the boxes for each ski before the lay-up, to a tenth", () => {
    const change = {
      shoulder: { xMm: 100, widthMm: 100.06 },
      waist: { xMm: 500, widthMm: 66.16 },
      heel: { xMm: 900, widthMm: 90.26 },
    };
    const texts = page(change);
    for (const words of ["Shoulder 100.1", "Waist 66.2", "Heel 90.3", "Length 1000", "Flip test, at most 0.5"]) {
      const at = texts.indexOf(words);
      expect(at).toBeGreaterThan(0);
      // The number in its own face, then a box for each ski.
      expect(texts.slice(at + 2, at + 4)).toEqual(["L", "R"]);
    }
  });
});
