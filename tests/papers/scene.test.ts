/** The two renderers of one scene, page and paper: the same marks in the same order, the same paths, the same paints. */
import { createElement } from "react";
import { describe, expect, it } from "vitest";
import type { GraphicLayout, PairSpec } from "#engine/configuration";
import {
  daylightColour,
  type PairLook,
  pairLook,
  pairScene,
  type Scene,
  sideScene,
  skiOverPicture,
  svgMarks,
} from "#engine/scene";
import { PairDrawing } from "../../lib/papers/parts/pair-drawing";
import { SceneOnPaper, scenePt } from "../../lib/papers/parts/scene";
import { catalog, specOf } from "../engine/demo-catalog";
import { parsed, type Reading } from "../support/page-reading";
import { drawn, ofType, type Shape } from "./drawn";

const { build } = catalog;
const widthPt = 500;
/** Of the paper's theme. */
const hairlinePt = 0.35;

/** A mark that leaves ink, as either renderer has it. */
interface Inked {
  readonly d: string;
  readonly fill: string | null;
  readonly stroke: string | null;
  readonly width: number | null;
  readonly through: number | null;
  readonly rule: string | null;
  readonly stops: readonly string[];
}

const number = (value: unknown) =>
  value === null || value === undefined ? null : Math.round(Number(value) * 1e4) / 1e4;
const text = (value: unknown) => (value === null || value === undefined || value === "none" ? null : String(value));
const nameIn = (paint: string | null) => /^url\(#(.+)\)$/.exec(paint ?? "")?.[1];

function onPage(scene: Scene): Reading {
  const hairlineMm = hairlinePt / scenePt({ scene, widthPt, turn: "lying" }).ptPerMm;
  const manner = { id: "s", colour: daylightColour, picture: () => null, font: "sans-serif", hairlineMm } as const;
  return parsed(`<svg>${svgMarks(scene.marks, manner)}</svg>`);
}

function inkOnPage(page: Reading): readonly Inked[] {
  return page.all("path, use").flatMap((each): Inked[] => {
    const { attribute } = each;
    const [fill, stroke] = [text(attribute("fill")), text(attribute("stroke"))];
    if (fill === null && stroke === null) return [];
    const href = attribute("href");
    const gradient = nameIn(fill);
    const stops = gradient === undefined ? [] : page.one(`linearGradient[id="${gradient}"]`).all("stop");
    return [
      {
        d: (href === null ? attribute("d") : page.one(`path[id="${href.slice(1)}"]`).attribute("d")) ?? "",
        fill: gradient === undefined ? fill : "light",
        stroke,
        width: number(attribute("stroke-width")),
        through: number(attribute("fill-opacity") ?? attribute("stroke-opacity")),
        rule: text(attribute("fill-rule")),
        stops: stops.map((stop) => ["offset", "stop-color", "stop-opacity"].map(stop.attribute).join(" ")),
      },
    ];
  });
}

const onPaper = (scene: Scene) => drawn(createElement(SceneOnPaper, { id: "s", scene, widthPt, turn: "lying" })).shapes;

function inkOnPaper(shapes: readonly Shape[]): readonly Inked[] {
  return ofType(shapes, "PATH").flatMap(({ props }): Inked[] => {
    const [fill, stroke] = [text(props.fill), text(props.stroke)];
    if (fill === null && stroke === null) return [];
    const gradient = nameIn(fill);
    return [
      {
        d: String(props.d),
        fill: gradient === undefined ? fill : "light",
        stroke,
        width: number(props.strokeWidth),
        through: number(props.fillOpacity ?? props.strokeOpacity),
        rule: text(props.fillRule),
        stops: gradient === undefined ? [] : stopsOf(shapes, gradient),
      },
    ];
  });
}

/** The stops that follow a gradient of this name, before the next thing. */
function stopsOf(shapes: readonly Shape[], name: string): readonly string[] {
  const from = shapes.findIndex(({ type, props }) => /gradient/i.test(type) && props.id === name) + 1;
  const rest = shapes.slice(from);
  const end = rest.findIndex(({ type }) => type !== "STOP");
  return rest.slice(0, end).map(({ props }) => `${props.offset} ${props.stopColor} ${props.stopOpacity}`);
}

/** Clips in the order in which they cut. */
function clipsOnPage(page: Reading): readonly string[] {
  return page.all("g[clip-path]").map((group) => {
    const clip = page.one(`clipPath[id="${nameIn(group.attribute("clip-path"))}"]`);
    const [path, use] = [clip.all("path")[0], clip.all("use")[0]];
    const named = use && page.one(`path[id="${use.attribute("href")?.slice(1)}"]`);
    return path?.attribute("d") ?? named?.attribute("d") ?? "";
  });
}
function clipsOnPaper(shapes: readonly Shape[]): readonly string[] {
  return ofType(shapes, "G").flatMap(({ props }) => {
    const name = nameIn(text(props.clipPath));
    if (name === undefined) return [];
    const at = shapes.findIndex(({ props: own }) => own.id === name);
    return [String(shapes[at + 1]?.props.d)];
  });
}

/** Where groups are moved to, and whether they are mirrored; what stays where it is left out. */
function movesOnPage(page: Reading): readonly (readonly [number, number, boolean])[] {
  return page.all("g[transform]").map((group) => {
    const how = group.attribute("transform") ?? "";
    const [, x = "0", y = "0"] = /translate\((\S+) (\S+)\)/.exec(how) ?? [];
    return [Number(x), Number(y), how.includes("scale(-1 1)")];
  });
}
function movesOnPaper(shapes: readonly Shape[]): readonly (readonly [number, number, boolean])[] {
  return ofType(shapes, "G").flatMap(({ props }) => {
    const [a, b, , , x = 0, y = 0] = (/matrix\((.+)\)/.exec(String(props.transform))?.[1] ?? "").split(",").map(Number);
    if (b !== 0 || (a === 1 && x === 0 && y === 0)) return [];
    const tenth = (value: number) => Math.round(value * 10) / 10;
    return [[tenth(x), tenth(y), a === -1] as const];
  });
}

const dressed = (layout: GraphicLayout, house: string): PairSpec => {
  const spec = specOf();
  const [dark, light] = build.baseColours;
  return {
    ...spec,
    graphic: {
      kind: "house",
      house,
      layout,
      text: { text: "RIDGE HOME", xMm: 520, capHeightMm: 24 },
      windows: [{ fromXMm: 1350, toXMm: 1500, halfWidthMm: 25 }],
    },
    base: { left: dark?.id ?? "", right: light?.id ?? "", inlay: "counterchange", inlayText: "FERN" },
  };
};
const lookOf = (layout: GraphicLayout, house: string): PairLook => {
  const look = pairLook(dressed(layout, house), build);
  if (!look) throw new Error("no drawing");
  return look;
};
const scenes = (["same", "mirrored", "alternate", "continuing"] as const).flatMap((layout, i) => {
  const house = build.houseGraphics[i + 1]?.id ?? "";
  const look = lookOf(layout, house);
  return [
    [`${house}, ${layout}, from above`, pairScene(look)],
    [`${house}, ${layout}, from below`, pairScene(look, { view: "below" })],
    [`${house}, ${layout}, from the side`, sideScene(look)],
  ] as const;
});

describe("page and paper", () => {
  it.each(scenes)("draw %s alike, mark by mark", (_, scene) => {
    const [page, shapes] = [onPage(scene), onPaper(scene)];
    const ink = inkOnPaper(shapes);
    expect(ink.length).toBeGreaterThan(5);
    expect(ink).toEqual(inkOnPage(page));
    expect(clipsOnPaper(shapes)).toEqual(clipsOnPage(page));
    expect(movesOnPaper(shapes)).toEqual(movesOnPage(page));
    // Nothing that follows a page's theme is left on paper.
    for (const { fill, stroke } of ink)
      for (const paint of [fill, stroke]) expect(paint ?? "light").toMatch(/^(#[0-9a-f]{6}|light)$/i);
  });

  it.each(scenes)("letter %s alike: as tall, as light, in the same places", (_, scene) => {
    const letters = onPage(scene).all("text");
    const shapes = ofType(onPaper(scene), "TEXT");
    const paints = letters.map((each) => each.attribute("fill"));
    // On paper an edge is the letters again, all around and under them.
    const own = shapes.filter(({ props }) => paints.includes(String(props.fill)));
    expect(own.map((each) => [each.text, each.props.fill])).toEqual(
      letters.map((each) => [each.text, each.attribute("fill")]),
    );
    own.forEach(({ props }, i) => {
      expect((props.style as { fontSize: number }).fontSize).toBeCloseTo(Number(letters[i]?.attribute("font-size")), 1);
    });
    const edges = letters.filter((each) => each.attribute("stroke") !== null).length;
    expect(shapes).toHaveLength(own.length + 8 * edges);
  });
});

describe("a drawing on paper", () => {
  const scene = pairScene(lookOf("continuing", "autumn-larch"));
  const { width, height } = scene.box;

  it("is as wide as asked and in true proportion, lying and upright", () => {
    expect(scenePt({ scene, widthPt, turn: "lying" }).heightPt).toBeCloseTo((500 * width) / height, 9);
    expect(scenePt({ scene, widthPt: 50, turn: "upright" }).heightPt).toBeCloseTo((50 * height) / width, 9);
    const [svg] = ofType(onPaper(scene), "SVG");
    expect(svg?.props.viewBox).toBe(`0 0 ${height} ${width}`);
    // The tip, in the middle between both skis, lies on the left at half height; the skier's right is up.
    const [axes] = ofType(onPaper(scene), "G");
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = (/\((.+)\)/.exec(String(axes?.props.transform))?.[1] ?? "")
      .split(",")
      .map(Number);
    const at = (x: number, y: number) => [a * x + c * y + e, b * x + d * y + f];
    expect(at(0, 0)).toEqual([0, width / 2]);
    expect(at(width / 2, height)).toEqual([height, 0]);
  });

  it("names nothing twice, and finds all that it uses at its root", () => {
    const shapes = onPaper(scene);
    const names = shapes.flatMap(({ type, props }) => (/CLIP|GRADIENT/i.test(type) ? [String(props.id)] : []));
    expect(new Set(names).size).toBe(names.length);
    const used = shapes
      .flatMap(({ props }) => [nameIn(text(props.fill)), nameIn(text(props.clipPath))])
      .filter((name) => name !== undefined);
    expect(used.toSorted()).toEqual(names.toSorted());
    expect(ofType(shapes, "DEFS")).toHaveLength(1);
  });

  it("over a picture is the ring of the walls, wood and light, and hides no more of it", () => {
    const look = lookOf("continuing", "autumn-larch");
    const marks = skiOverPicture(look);
    const [ring] = marks;
    expect(ring).toMatchObject({ kind: "fill", evenOdd: true });
    const inside = marks.flatMap((mark) => (mark.kind === "group" ? mark.marks : []));
    expect(inside.map(({ kind }) => kind)).toEqual(["group", "line", "shade", "shade"]);
    // The rest is the ski's own, mark by mark: both walls, the steel, the topsheet's rim, the ticks, the outline.
    const [whole] = pairScene(look).marks;
    const own = whole?.kind === "group" ? whole.marks.filter(({ kind }) => kind !== "group").slice(1) : [];
    expect(own).toHaveLength(7);
    expect(marks.filter(({ kind }) => kind !== "group").slice(1)).toEqual(own);
  });
});

describe("a picture of one's own on quote and confirmation", () => {
  const look = lookOf("mirrored", "autumn-larch");
  const own: PairLook = {
    ...look,
    graphic: {
      ...look.graphic,
      house: undefined,
      artwork: {
        id: "a",
        widthPx: 10,
        heightPx: 5,
        copies: [{ placement: { centreXMm: 1, centreYMm: 2, mmPerPixel: 3, angleDeg: 4 } }],
        fades: [],
      },
    },
  };
  const shown = (pictures: { readonly L: string; readonly R: string } | null) =>
    drawn(createElement(PairDrawing, { id: "p", look: own, pictures, widthPt })).shapes;
  const { shape } = own;
  const ptPerMm = widthPt / shape.lengthMm;
  const wide = Math.max(shape.shoulderWidthMm, shape.heelWidthMm);

  it("lies in the box of its ski, the right one above the left, 24 mm between them", () => {
    const images = ofType(shown({ L: "left", R: "right" }), "IMAGE");
    const places = images.map(({ props }) => ({ src: props.src, ...(props.style as Record<string, number>) }));
    const box = { left: 0, width: widthPt, height: expect.closeTo(wide * ptPerMm, 6) };
    expect(places).toMatchObject([
      { src: "left", ...box, top: expect.closeTo((wide + 24) * ptPerMm, 6) },
      { src: "right", ...box, top: expect.closeTo(0, 6) },
    ]);
  });

  it("is hidden past the outline, under walls, wood, letters and light", () => {
    const shapes = shown({ L: "left", R: "right" });
    const [around, ring] = inkOnPaper(shapes);
    expect([around?.fill, around?.rule, ring?.rule]).toEqual(["#FFFFFF", "evenodd", "evenodd"]);
    // The drawing reaches as far past the pictures as what hides their rims, to the same scale.
    const [over] = ofType(shapes, "SVG");
    expect(Number(over?.props.width)).toBeCloseTo((shape.lengthMm + 2) * ptPerMm, 6);
    expect(Number(over?.props.height)).toBeCloseTo((2 * wide + 24 + 2) * ptPerMm, 6);
    // What is left open is the outline itself, the whole of the ring's outer edge.
    const outline = around?.d.slice((around.d.indexOf("Z") ?? 0) + 1) ?? "";
    expect(ring?.d.startsWith(outline)).toBe(true);
    expect(outline.length).toBeGreaterThan(200);
    expect(
      ofType(shapes, "TEXT").filter((each) => each.text === "RIDGE HOME" && each.props.fill === "#fffdf9"),
    ).toHaveLength(2);
    expect(ofType(shapes, "TEXT").some((each) => each.text.includes("not here any more"))).toBe(false);
  });

  it("leaves its place empty where the shop has it no more, and says so", () => {
    const shapes = shown(null);
    expect(ofType(shapes, "IMAGE")).toEqual([]);
    expect(ofType(shapes, "TEXT").some((each) => each.text.includes("Your picture is not here any more"))).toBe(true);
  });
});
