/** Dimension lines, labels, hatching and the scale: where each stroke and word stands, worked by hand. */
import { describe, expect, it } from "vitest";
import { between } from "#papers/parts/points";
import { PT_PER_MM, pageBox } from "#papers/parts/theme";
import {
  axisScale,
  CentreLine,
  HDim,
  hatch,
  Label,
  MountMark,
  mirroredOutline,
  polyline,
  VDim,
} from "../../lib/papers/parts/drawing";
import { corners, drawn, numbers, ofType, type Shape } from "./drawn";

const lines = (shapes: readonly Shape[]) => ofType(shapes, "LINE").map((line) => numbers(line, "x1", "y1", "x2", "y2"));
const arrows = (shapes: readonly Shape[]) => ofType(shapes, "PATH").map((path) => corners(path.props.d));
const wordAt = (shapes: readonly Shape[]) => {
  const text = ofType(shapes, "TEXT")[0];
  return [...numbers(text, "x", "y"), text?.props.textAnchor];
};

describe("the scale along the ski", () => {
  // 1778 mm are 5040 pt: 1 : 5 needs 1008 pt, 1 : 7.5 needs 672, 1 : 8 630, 1 : 10 504, 1 : 12.5 403.2, 1 : 15 336, 1 : 20 252.
  it.each([
    [1009, 5],
    [1007, 7.5],
    [673, 7.5],
    [671, 8],
    [629, 10],
    [503, 12.5],
    [403, 15],
    [335, 20],
    [253, 20],
  ])("in %d pt is the largest that fits: 1 : %d", (widthPt, denominator) => {
    expect(axisScale(1778, 0, widthPt).denominator).toBe(denominator);
  });

  it("takes a scale that fits to the point", () => {
    const needsPt = (254 * PT_PER_MM) / 5;
    expect(axisScale(254, 0, needsPt).denominator).toBe(5);
  });

  it("centres the ski between its margins", () => {
    const { x, len } = axisScale(1778, 30, 700);
    // At 1 : 7.5 672 pt are ski; of the 28 left, 14 lie before the tip.
    expect(x(0)).toBeCloseTo(44, 9);
    expect(x(1778)).toBeCloseTo(716, 9);
    expect(len(889)).toBeCloseTo(336, 9);
  });
});

describe("a page", () => {
  // In points: 210 mm are 595.28, 297 mm 841.89, 8.5 in 612, 11 in 792; the margins are 11 mm, 31.18 pt.
  it.each([
    ["A4", "portrait", 595.28, 841.89],
    ["A4", "landscape", 841.89, 595.28],
    ["LETTER", "portrait", 612, 792],
    ["LETTER", "landscape", 792, 612],
  ] as const)("%s %s", (paper, orientation, widthPt, heightPt) => {
    const box = pageBox(paper, orientation);
    expect(box.widthPt).toBeCloseTo(widthPt, 2);
    expect(box.heightPt).toBeCloseTo(heightPt, 2);
    expect(box.marginPt).toBeCloseTo(31.18, 2);
    expect(box.innerPt).toBeCloseTo(widthPt - 62.36, 1);
  });
});

describe("a line through points", () => {
  it("is drawn to a hundredth of a point", () => {
    expect(
      polyline([
        { x: 1 / 3, y: 2 / 3 },
        { x: 1, y: -2 },
      ]),
    ).toBe("M0.33 0.67L1 -2");
  });

  it("closes an outline from its half: there above the axis, back below it", () => {
    const half = [
      { x: 0, y: 1 },
      { x: 10, y: 2 },
    ];
    const scale = { denominator: 1, x: (v: number) => v + 5, len: (v: number) => v * 2 };
    expect(mirroredOutline(half, scale, 50)).toBe("M5 48L15 46L15 54L5 52Z");
  });

  it("is cut out of a curve with both ends on it", () => {
    const roof = [
      { x: 0, y: 3 },
      { x: 10, y: 13 },
      { x: 20, y: 3 },
    ];
    expect(between(roof, 5, 18)).toEqual([
      { x: 5, y: 8 },
      { x: 10, y: 13 },
      { x: 18, y: 5 },
    ]);
    expect(between(roof, 0, 20)).toEqual(roof);
    expect(between(roof, 10, 20)).toEqual(roof.slice(1));
  });
});

describe("a dimension along x", () => {
  it("runs between its ends with an arrow at each, pointing out, and its words above the middle", () => {
    const { shapes } = drawn(HDim({ x1: 10, x2: 50, y: 20, text: "40" }));
    expect(lines(shapes)).toEqual([[10, 20, 50, 20]]);
    expect(arrows(shapes)).toEqual([
      [
        { x: 10, y: 20 },
        { x: 14.6, y: 18.9 },
        { x: 14.6, y: 21.1 },
      ],
      [
        { x: 50, y: 20 },
        { x: 45.4, y: 21.1 },
        { x: 45.4, y: 18.9 },
      ],
    ]);
    expect(wordAt(shapes)).toEqual([30, 18, "middle"]);
  });

  it("below 14 pt has its arrows outside, pointing in, and lets the line out by 8", () => {
    const { shapes } = drawn(HDim({ x1: 10, x2: 23.9, y: 20, text: "13.9" }));
    expect(lines(shapes)).toEqual([[2, 20, 31.9, 20]]);
    expect(arrows(shapes).map(([tip, side]) => [tip?.x, side?.x])).toEqual([
      [10, 5.4],
      [23.9, 28.5],
    ]);
    expect(lines(drawn(HDim({ x1: 10, x2: 24, y: 20, text: "14" })).shapes)).toEqual([[10, 20, 24, 20]]);
  });

  it("writes beyond an end when asked, clear of outside arrows", () => {
    const at = (x2: number, textAt: "after" | "before") =>
      wordAt(drawn(HDim({ x1: 10, x2, y: 20, text: "n", size: 10, textAt })).shapes);
    expect(at(50, "after")).toEqual([53, 23.5, "start"]);
    expect(at(50, "before")).toEqual([7, 23.5, "end"]);
    expect(at(20, "after")).toEqual([29, 23.5, "start"]);
    expect(at(20, "before")).toEqual([1, 23.5, "end"]);
  });

  it("has witness lines from what it measures to a little past it, whichever way that is", () => {
    const witnesses = (fromY: number) => lines(drawn(HDim({ x1: 10, x2: 50, y: 20, fromY, text: "40" })).shapes);
    expect(witnesses(5)).toEqual([
      [10, 6.5, 10, 22],
      [50, 6.5, 50, 22],
      [10, 20, 50, 20],
    ]);
    expect(witnesses(40).slice(0, 2)).toEqual([
      [10, 38.5, 10, 18],
      [50, 38.5, 50, 18],
    ]);
  });
});

describe("a dimension along y", () => {
  it("runs between its ends with an arrow at each, pointing out, and its words to the right of the middle", () => {
    const { shapes } = drawn(VDim({ x: 30, y1: 10, y2: 50, text: "40", size: 10 }));
    expect(lines(shapes)).toEqual([[30, 10, 30, 50]]);
    expect(arrows(shapes).map(([tip, side, other]) => [tip, side?.y, (side?.x ?? 0) + (other?.x ?? 0)])).toEqual([
      [{ x: 30, y: 10 }, 14.6, 60],
      [{ x: 30, y: 50 }, 45.4, 60],
    ]);
    expect(wordAt(shapes)).toEqual([33, 33.5, "start"]);
  });

  it("writes to the left, and at a share of the way down, when asked", () => {
    const { shapes } = drawn(VDim({ x: 30, y1: 10, y2: 50, text: "40", size: 10, side: "left", textAt: 0.25 }));
    expect(wordAt(shapes)).toEqual([27, 23.5, "end"]);
  });

  it("below 14 pt has its arrows outside, pointing in", () => {
    const { shapes } = drawn(VDim({ x: 30, y1: 10, y2: 23.9, text: "1" }));
    expect(lines(shapes)).toEqual([[30, 2, 30, 31.9]]);
    expect(arrows(shapes).map(([tip, side]) => [tip?.y, side?.y])).toEqual([
      [10, 5.4],
      [23.9, 28.5],
    ]);
    expect(lines(drawn(VDim({ x: 30, y1: 10, y2: 24, text: "1" })).shapes)).toEqual([[30, 10, 30, 24]]);
  });
});

describe("a label", () => {
  const paper = (props: Partial<Parameters<typeof Label>[0]>) =>
    ofType(drawn(Label({ x: 100, y: 50, text: "12345", size: 10, ...props })).shapes, "RECT").map((rect) =>
      numbers(rect, "x", "y", "width", "height"),
    );

  it("stands on bare paper unless a line could run through it", () => {
    expect(paper({})).toEqual([]);
  });

  // Five characters of 10 pt at an advance of 0.6 are 30 pt, 1 pt of paper at each end.
  it.each([
    ["start", [99, 42.2, 32, 9.8]],
    ["middle", [84, 42.2, 32, 9.8]],
    ["end", [69, 42.2, 32, 9.8]],
  ] as const)("at its %s is covered whole", (anchor, box) => {
    expect(paper({ backed: true, mono: true, anchor })).toEqual([box]);
  });

  it("in the text face needs 0.88 of that", () => {
    expect(paper({ backed: true })).toEqual([[99, 43.136, 28.4, 8.624]]);
  });

  it("is heavy and monospaced when asked", () => {
    const style = (props: Partial<Parameters<typeof Label>[0]>) =>
      drawn(Label({ x: 0, y: 0, text: "a", ...props })).shapes[0]?.props.style;
    expect(style({})).toEqual({ fontSize: 7, fontFamily: "Plex Sans", fontWeight: 400 });
    expect(style({ mono: true, bold: true })).toEqual({ fontSize: 7, fontFamily: "Plex Mono", fontWeight: 600 });
  });
});

describe("hatching", () => {
  // A rectangle 4 by 2: 45° lines that start 1, 3 and 5 along left and lower side.
  it("is cut at the rectangle, leaning either way", () => {
    expect(hatch(10, 20, 4, 2, 2)).toBe("M10 21L11 20M11 22L13 20M13 22L14 21");
    expect(hatch(10, 20, 4, 2, 2, -1)).toBe("M14 21L13 20M13 22L11 20M11 22L10 21");
  });

  it("draws no line that would be a point", () => {
    expect(hatch(10, 20, 4, 2, 4)).toBe("M10 22L12 20");
  });
});

describe("the marks of axis and mount line", () => {
  it("run along and across", () => {
    expect(lines(drawn(CentreLine({ x1: 5, x2: 90, y: 40 })).shapes)).toEqual([[5, 40, 90, 40]]);
    const { shapes } = drawn(MountMark({ x: 30, y1: 10, y2: 70 }));
    expect(lines(shapes)).toEqual([[30, 10, 30, 70]]);
    expect(arrows(shapes)).toEqual([
      [
        { x: 27.4, y: 5.5 },
        { x: 32.6, y: 5.5 },
        { x: 30, y: 10 },
      ],
    ]);
  });
});
