/** The proof of a ski of round numbers: what is drawn where on each ski, in points back-reckoned to millimetres of the ski. */
import { describe, expect, it } from "vitest";
import { isoDate } from "#engine/units";
import type { ProofData } from "#papers";
import { pageBox } from "#papers/parts/theme";
import { axisScale } from "../../lib/papers/parts/drawing";
import { composeProof } from "../../lib/papers/proof/compose";
import type { ProofFacts } from "../../lib/papers/proof/facts";
import { ProofPages } from "../../lib/papers/proof/page";
import { corners, drawn, numbers, ofType, type Shape } from "./drawn";
import { ski } from "./plain-ski";
import { catalog, facts, proof, spec } from "./sample";

const data: ProofData = { ...proof, drawing: ski };
/** The layer of marks; pictures and the body of the skis lie under it. */
const marksOf = (shapes: readonly Shape[]) => {
  const layers = shapes.flatMap((shape, at) => (shape.type === "SVG" && Number(shape.props.width) > 500 ? [at] : []));
  return shapes.slice(layers.at(-1));
};
const shapes = marksOf(drawn(ProofPages({ data, paper: "A4" })).shapes);
const scale = axisScale(ski.lengthMm, 20, pageBox("A4", "landscape").innerPt - 28);
const mm = (x: number) => Math.round(((x - scale.x(0)) / scale.len(1)) * 10) / 10;
const styleOf = (shape: Shape) => shape.props.style as Record<string, number>;

/** The closed outlines of both skis: the dark solid line. */
const outlines = ofType(shapes, "PATH").filter(({ props }) => props.strokeWidth === 1);
const axes = outlines.map(({ props }) => {
  const ys = corners(props.d).map(({ y }) => y);
  return (Math.min(...ys) + Math.max(...ys)) / 2;
});
const [rightAxis = 0, leftAxis = 0] = axes;

describe("both skis", () => {
  it("lie with the right one above the left, inside edges facing each other", () => {
    expect(outlines).toHaveLength(2);
    expect(rightAxis).toBeLessThan(leftAxis);
    const letters = ofType(shapes, "TEXT").filter(({ text, props }) => /^[LR]$/.test(text) && props.x === 0);
    expect(letters.map(({ text }) => text)).toEqual(["R", "L"]);
    letters.forEach((letter, index) => {
      expect((numbers(letter, "y")[0] ?? 0) - (axes[index] ?? 0)).toBeCloseTo(5, 1);
    });
    const inside = ofType(shapes, "TEXT").filter(({ text }) => text === "inside edge");
    for (const words of inside) {
      const [x = 0, y = 0] = numbers(words, "x", "y");
      expect(y).toBeGreaterThan(rightAxis + scale.len(50));
      expect(y).toBeLessThan(leftAxis - scale.len(50));
      expect(words.props.textAnchor).toBe("end");
      expect(x).toBeCloseTo(scale.x(1000) - 2, 5);
    }
    expect(inside).toHaveLength(2);
  });

  it("have each foot's serial over its own ski", () => {
    const place = (text: string) =>
      numbers(
        ofType(shapes, "TEXT").find((shape) => shape.text === text),
        "x",
        "y",
      );
    const [, right = 0] = place(`right foot · ${facts.pair.rightSerial}`);
    const [x = 0, left = 0] = place(`left foot · ${facts.pair.leftSerial}`);
    expect(x).toBeCloseTo(scale.x(0) + 2, 5);
    expect(rightAxis - scale.len(50) - right).toBeCloseTo(4, 1);
    expect(leftAxis - scale.len(50) - left).toBeCloseTo(4, 1);
  });

  it("lie on their own pictures, which fill the box of the ski", () => {
    const pictures = ProofPages({ data: { ...data, pictures: { L: "left", R: "right" } }, paper: "A4" });
    const images = ofType(drawn(pictures).shapes, "IMAGE");
    expect(images.map(({ props }) => props.src)).toEqual(["right", "left"]);
    images.forEach((image, index) => {
      const { left = 0, width = 0, height = 0, top = 0 } = styleOf(image);
      expect(left).toBeCloseTo(scale.x(0), 5);
      expect(width).toBeCloseTo(scale.len(1000), 5);
      expect(height).toBeCloseTo(scale.len(100), 5);
      expect(top + height / 2).toBeCloseTo(axes[index] ?? 0, 1);
    });
  });

  it("have their marks laid on the pictures without a shift", () => {
    const all = drawn(ProofPages({ data, paper: "A4" })).shapes;
    const layers = ofType(all, "SVG").filter(({ props }) => Number(props.width) > 500);
    const [body, over] = layers;
    expect(layers).toHaveLength(2);
    for (const layer of layers) expect(layer.props.style).toEqual({ position: "absolute", left: 0, top: 0 });
    expect([body?.props.width, body?.props.height]).toEqual([over?.props.width, over?.props.height]);
    const under = ofType(all, "VIEW").find(({ props }) => styleOf({ props } as Shape)?.width === over?.props.width);
    expect(under && styleOf(under).height).toBe(over?.props.height);
  });

  it("have walls, steel and light of their own under the marks, on the same axes", () => {
    const all = drawn(ProofPages({ data, paper: "A4" })).shapes;
    const body = all.slice(
      0,
      all.indexOf(ofType(all, "SVG").filter(({ props }) => Number(props.width) > 500)[1] as Shape),
    );
    const places = ofType(body, "G").flatMap(({ props }) => {
      const [a, b, c, d, x = 0, y = 0] = (/matrix\((.+)\)/.exec(String(props.transform))?.[1] ?? "")
        .split(",")
        .map(Number);
      return a === 0 && d === 0 && (b ?? 0) < 0 ? [{ along: c, across: b, x, y }] : [];
    });
    expect(places).toHaveLength(2);
    places.forEach(({ along, across, x, y }, index) => {
      expect([along, across]).toEqual([expect.closeTo(scale.len(1), 9), expect.closeTo(-scale.len(1), 9)]);
      expect(x).toBeCloseTo(scale.x(0), 9);
      expect(y).toBeCloseTo(axes[index] ?? 0, 1);
    });
    expect(ofType(body, "PATH").filter(({ props }) => props.stroke === "#6f777c")).toHaveLength(2);
    expect(ofType(body, "PATH").filter(({ props }) => /^url/.test(String(props.fill)))).toHaveLength(4);
  });

  it("stay on their paper, a wider heel too", () => {
    const heel = { xMm: 900, widthMm: 140 };
    const outline = ski.outline.map((p) => (p.x === 900 ? { ...p, y: 70 } : p));
    for (const drawing of [ski, { ...ski, heel, outline }]) {
      const all = marksOf(drawn(ProofPages({ data: { ...data, drawing }, paper: "A4" })).shapes);
      const paper = ofType(all, "SVG").find(({ props }) => Number(props.width) > 500);
      const height = numbers(paper, "height")[0] ?? 0;
      const ys = ofType(all, "PATH")
        .filter(({ props }) => props.strokeWidth === 1)
        .flatMap(({ props }) => corners(props.d).map(({ y }) => y));
      expect(Math.min(...ys)).toBeGreaterThan(7);
      expect(Math.max(...ys)).toBeLessThan(height - 9);
      // Between the skis there is room for the words on either inside edge.
      const middle = ys.filter((y) => y < height / 2);
      expect(Math.min(...ys.filter((y) => y > height / 2)) - Math.max(...middle)).toBeGreaterThan(18);
    }
  });
});

describe("the paper around a ski", () => {
  it("hides the picture outside the outline, on both sides and past both ends", () => {
    const around = ofType(shapes, "PATH").filter(({ props }) => props.fill === "#FFFFFF" && props.stroke === undefined);
    expect(around).toHaveLength(4);
    const [above = [], below = []] = around.map(({ props }) => corners(props.d));
    const half = scale.len(50);
    const ys = (points: readonly { readonly y: number }[]) => points.map(({ y }) => y);
    // From the outline outward to a point beyond the picture's box, never over the ski itself.
    expect(Math.max(...ys(above))).toBeCloseTo(rightAxis, 1);
    expect(Math.min(...ys(above))).toBeCloseTo(rightAxis - half - 1, 1);
    expect(Math.min(...ys(below))).toBeCloseTo(rightAxis, 1);
    expect(Math.max(...ys(below))).toBeCloseTo(rightAxis + half + 1, 1);
    for (const points of [above, below]) {
      expect(points.map(({ x }) => mm(x)).slice(1, -3)).toEqual(ski.outline.map(({ x }) => x));
      const xs = points.map(({ x }) => x);
      expect(Math.min(...xs)).toBeCloseTo(scale.x(0) - 1, 1);
      expect(Math.max(...xs)).toBeCloseTo(scale.x(1000) + 1, 1);
      expect(points.at(-1)?.x).toBe(Math.min(...xs));
      expect(points.at(-2)?.x).toBe(Math.max(...xs));
    }
    expect(above[2]?.y).toBeCloseTo(rightAxis - half, 1);
    expect(below[2]?.y).toBeCloseTo(rightAxis + half, 1);
  });
});

describe("the marks on a ski", () => {
  const boxes = (props: (shape: Shape) => boolean) =>
    ofType(shapes, "RECT")
      .filter(props)
      .map((rect) => {
        const [x = 0, y = 0, width = 0, height = 0] = numbers(rect, "x", "y", "width", "height");
        const axis = y < (rightAxis + leftAxis) / 2 ? rightAxis : leftAxis;
        const off = Math.abs(y + height / 2 - axis);
        return [mm(x), mm(x + width), Math.round((height / scale.len(1)) * 10) / 10, off < 0.02];
      });

  it("are the binding's zone, veiled, as wide as the waist", () => {
    const zone = boxes(({ props }) => props.strokeDasharray !== undefined);
    expect(zone).toEqual([
      [390, 710, 66, true],
      [390, 710, 66, true],
    ]);
    const words = ofType(shapes, "TEXT").filter(({ text }) => text === "hidden by boot and binding, 320 mm");
    expect(words.map((each) => (numbers(each, "x")[0] ?? 0) - scale.x(390))).toEqual([
      expect.closeTo(3, 4),
      expect.closeTo(3, 4),
    ]);
    const [hatching] = ofType(shapes, "PATH").filter(({ props }) => /^M[^L]+L[^LM]+M/.test(String(props.d)));
    const points = corners(hatching?.props.d);
    expect(points.every(({ x }) => mm(x) >= 389.9 && mm(x) <= 710.1)).toBe(true);
    expect(points.every(({ y }) => Math.abs(y - rightAxis) <= scale.len(33) + 0.02)).toBe(true);
  });

  it("are the frames of the clear windows, over the wood that they show", () => {
    const windows = boxes(({ props }) => props.fill === "none" && props.strokeDasharray === undefined);
    const once = [
      [600, 700, 40, true],
      [750, 800, 20, true],
    ];
    expect(windows).toEqual([...once, ...once]);
  });

  it("are the safe line, 6 mm inside the edge, and none where the ski is narrower than that", () => {
    const safe = ofType(shapes, "PATH").filter(({ props }) => props.stroke === "#A3440F");
    expect(safe).toHaveLength(2);
    const points = corners(safe[0]?.props.d);
    const upper = points
      .slice(0, points.length / 2)
      .map(({ x, y }) => [mm(x), Math.round(((rightAxis - y) / scale.len(1)) * 10) / 10]);
    expect(upper).toEqual([
      [100, 44],
      [300, 36],
      [500, 27],
      [700, 34],
      [900, 39],
    ]);
    const narrow = marksOf(drawn(ProofPages({ data: { ...data, safeMm: 33 }, paper: "A4" })).shapes);
    const rest = corners(ofType(narrow, "PATH").find(({ props }) => props.stroke === "#A3440F")?.props.d);
    expect(rest.slice(0, rest.length / 2).map(({ x }) => mm(x))).toEqual([100, 300, 700, 900]);
  });

  it("are letters as tall as they were ordered, on their place, with a dark edge all round", () => {
    const letters = ofType(shapes, "TEXT")
      .filter(({ text }) => text === "RIDGE HOME")
      .slice(0, 9);
    const light = letters.at(-1);
    const [x = 0, y = 0] = numbers(light, "x", "y");
    expect(mm(x)).toBe(520);
    // 24 mm of cap height about the axis; capitals are 0.698 of the type size.
    expect(y - rightAxis).toBeCloseTo(scale.len(12), 1);
    expect(styleOf(light as Shape).fontSize).toBeCloseTo(scale.len(24) / 0.698, 4);
    expect(light?.props.textAnchor).toBe("middle");
    const away = letters.slice(0, 8).map((each) => {
      const [ex = 0, ey = 0] = numbers(each, "x", "y");
      return [Math.hypot(ex - x, ey - y), (Math.atan2(ey - y, ex - x) * 180) / Math.PI] as const;
    });
    for (const [radius] of away) expect(radius).toBeCloseTo(away[0]?.[0] ?? 0, 4);
    const turns = away.map(([, deg]) => Math.round((deg + 360) % 360)).sort((a, b) => a - b);
    expect(turns).toEqual([0, 45, 90, 135, 180, 225, 270, 315]);
    expect(new Set(letters.slice(0, 8).map(({ props }) => props.fill)).size).toBe(1);
    expect(light?.props.fill).not.toBe(letters[0]?.props.fill);
  });

  it("have no letters where none were ordered", () => {
    const none = drawn(ProofPages({ data: { ...data, text: null, sourceHash: null }, paper: "A4" })).shapes;
    const texts = ofType(none, "TEXT").map(({ text }) => text);
    expect(texts).not.toContain("RIDGE HOME");
    expect(texts[texts.indexOf("Text, letter by letter") + 1]).toBe("no text");
    expect(texts[texts.indexOf("Source file") + 1]).toBe("house graphic");
  });
});

describe("what is told beside the drawing", () => {
  const told = (change: Partial<ProofData>) =>
    ofType(drawn(ProofPages({ data: { ...data, ...change }, paper: "A4" })).shapes, "TEXT").map(({ text }) => text);
  const beside = (texts: readonly string[], label: string) => texts[texts.indexOf(label) + 1];

  it("is each number with its own name", () => {
    const texts = told({});
    expect(beside(texts, "Text, letter by letter")).toBe("“RIDGE HOME”, cap height 24 mm");
    expect(beside(texts, "Safe line (dashed)")).toMatch(/^6 mm inside/);
    expect(beside(texts, "Bleed")).toBe("12 mm beyond the sides");
    expect(beside(texts, "Windows")).toBe("2 clear, showing the wood");
    expect(beside(texts, "Source file")).toBe("5a1f e0c2 77d1");
    expect(told({ drawing: { ...ski, windows: [] } })).not.toContain("Windows");
    expect(texts.some((text) => text.startsWith("With this proof"))).toBe(true);
    expect(told({ note: null }).some((text) => text.startsWith("With this proof"))).toBe(false);
  });

  it("is the answer as it stands", () => {
    const at = "2026-12-01T09:05";
    expect(told({ answer: { state: "approved", at, by: null } })).toContain("Approved, 1 Dec 2026, 09:05.");
    expect(told({ answer: { state: "draft" } })).toContain("Not sent yet: nobody has been asked.");
    const asked = told({ answer: { state: "issued", answerBy: isoDate("2026-12-02"), ifLate: "Late." } });
    expect(asked.join(" ")).toContain("please by Wed 2 Dec 2026");
    expect(asked).toContain("Late.");
    expect(told({ answer: { state: "issued", answerBy: null, ifLate: "" } }).join(" ")).not.toContain("please by");
  });
});

describe("the proof's facts in words", () => {
  const proofFacts: ProofFacts = {
    shop: facts.shop,
    stamp: facts.stamp,
    serial: "TY-1",
    leftSerial: "TY-1-L",
    rightSerial: "TY-1-R",
    url: "u",
    catalog,
    spec,
    printFace: "top",
    pictures: { L: "left", R: "right" },
    note: null,
    standing: { state: "draft" },
  };
  const proofOf = (change: Partial<ProofFacts>) => composeProof({ ...proofFacts, ...change });

  it("are the spec's own", () => {
    expect(proofOf({})).toMatchObject({
      title: "Midlow 95 · 178 cm · revision C",
      layout: "mirrored: words in it flip on the right ski, lettering does not",
      safeMm: 6,
      bleedSideMm: 12,
      text: { transcript: "RIDGE HOME", xMm: 520, capHeightMm: 24 },
      mirrored: "on the upper side of the sheet: the paper is printed mirrored",
      sourceHash: spec.graphic.artwork?.sha256,
      leftSerial: "TY-1-L",
      rightSerial: "TY-1-R",
    });
    const { drawing } = proofOf({});
    expect(drawing.lengthMm).toBe(1780);
    // 160 mm to each side of the mount line at 955; the edge runs 30 mm past shoulder and heel.
    expect(drawing.bindingZone.fromMm).toBeCloseTo(795, 0);
    expect(drawing.bindingZone.toMm).toBeCloseTo(1115, 0);
    expect(drawing.matZone.toMm - drawing.matZone.fromMm).toBeCloseTo(600, 6);
  });

  it("tell the resolution of a file and none of a house graphic", () => {
    const { artwork: _, text: __, ...graphic } = spec.graphic;
    const house = proofOf({ spec: { ...spec, graphic: { ...graphic, kind: "house", house: "contours" } } });
    expect(house).toMatchObject({ resolution: "drawn from lines: sharp at any size", sourceHash: null, text: null });
    // A house graphic has no words of its own to flip.
    expect(house.layout).toBe("mirrored, lettering stays readable");
    expect(proofOf({}).resolution).toMatch(/^\d+ dpi: sharp in print$/);
    const ends = {
      ...spec.graphic,
      arrangement: "ends",
      ground: "#46607a",
      unmirrored: { x: 0, y: 0, width: 1, height: 1 },
    };
    const arranged = proofOf({ spec: { ...spec, graphic: ends as typeof spec.graphic } });
    expect(arranged.resolution).toMatch(/^\d+ dpi: .*; what it leaves bare is printed in the ground colour #46607a$/);
    expect(arranged.layout).toBe("mirrored, lettering stays readable, the marked part of the picture as it reads");
  });

  it.each([
    ["waiting", /clock waits/],
    ["slot-lost", /was given up/],
    ["building", /being built/],
  ] as const)("say what a late answer does to an order that is %s", (order, words) => {
    const answer = proofOf({ standing: { state: "issued", answerBy: isoDate("2026-12-02"), order } }).answer;
    expect(answer).toMatchObject({ state: "issued", answerBy: "2026-12-02" });
    expect(answer.state === "issued" ? answer.ifLate : "").toMatch(words);
  });
});
