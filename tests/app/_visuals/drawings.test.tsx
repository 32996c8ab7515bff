/**
 * Drawings against the millimetres they stand for: a plain ski of 1,000 mm whose every width is the same number, so that a
 * place on the page is arithmetic.
 */
import { describe, expect, it } from "vitest";
import type { AxisBuild } from "#app/_visuals/axis-builds.ts";
import { axisSeries, readingAt } from "#app/_visuals/axis-data.ts";
import { LyingDrawing, showsPair, UprightDrawing, uprightPlanWidth } from "#app/_visuals/axis-drawings.tsx";
import { LineKey, lineOf, lookOf } from "#app/_visuals/axis-looks.tsx";
import { OutlinesPlot, outlinesAcrossMm, ProfilePlot, plotScale, SeriesPlot } from "#app/_visuals/axis-plot.tsx";
import { AxisReadout, fromMountText, spokenReading } from "#app/_visuals/axis-readout.tsx";
import { AxisTable } from "#app/_visuals/axis-table.tsx";
import { ModelSilhouette } from "#app/_visuals/model-silhouette.tsx";
import { PairFigure } from "#app/_visuals/pair-figure.tsx";
import { SkiPair, type SkiPairProps } from "#app/_visuals/ski-drawing.tsx";
import { type ArtworkPlacement, type GraphicLayout, pairArt } from "#engine/configuration";
import type { FlexStation, SkiFlex } from "#engine/flex";
import { edgeSpanMm, halfWidthAt, type SkiShape, shapeAtLength } from "#engine/geometry";
import {
  closedPath,
  greatestHalfWidthMm,
  type PairLook,
  pairLook,
  roundedBox,
  type SeenArtwork,
  type SeenGraphic,
  type SeenStrip,
  screenOutline,
  sidePath,
  sideSilhouette,
  type WoodLook,
} from "#engine/scene";
import { catalog, specOf } from "../../engine/demo-catalog";
import { drawn } from "../../support/drawn";
import type { Reading } from "../../support/page-reading";

const model = catalog.build.models.find((each) => each.id === "midlow-95");
if (!model) throw new Error("the demo shop builds no midlow-95");
const real = shapeAtLength(model.shape, 178);
const ends = { tipLengthMm: 170, tailLengthMm: 140 };
const skiOf = (lengthMm: number, known: Partial<SkiShape> = {}): SkiShape => ({
  ...real,
  shoulderWidthMm: 120,
  heelWidthMm: 110,
  waistWidthMm: 90,
  ...ends,
  sidecutLengthMm: lengthMm - 310,
  waistFromTipMm: 540,
  tipTangentMm: 250,
  tailTangentMm: lengthMm - 200,
  lengthMm,
  ...known,
});
const shape = skiOf(1000);

/** EI 100 N·m² and 100 more a metre; GJ half of it; 10 mm of core in 13 mm of ski, 600 g/m, 100 mm wide. */
const station = (xMm: number): FlexStation => ({
  xMm,
  widthMm: 100,
  coreMm: 10 + xMm / 1000,
  thicknessMm: 13,
  bendingStiffnessNmm2: (100 + xMm / 10) * 1e6,
  torsionalStiffnessNmm2: (50 + xMm / 20) * 1e6,
  neutralAxisMm: 6,
  massGPerM: 600,
});
const flexOf = (lengthMm: number): SkiFlex => ({
  stations: [0, lengthMm / 2, lengthMm].map(station),
  massKg: 1,
  balancePointMm: 900,
  coreShearPercent: 0,
  springCentreNPerMm: 5,
  springForebodyNPerMm: 5,
  springAfterbodyNPerMm: 5,
  balance: 1,
});
const build = (label: string, lengthMm = 1000, mountMm = 400, known: Partial<SkiShape> = {}): AxisBuild => ({
  label,
  shape: skiOf(lengthMm, known),
  flex: flexOf(lengthMm),
  mountMm,
});
const a = build("A ski");
const longer = build("B ski", 1200, 500);
const numbers = (text: string | null | undefined) => (text ?? "").match(/-?[\d.]+(?:e-?\d+)?/g)?.map(Number) ?? [];
const rounded = (values: readonly number[]) => values.map((value) => Math.round(value * 10) / 10);
const paths = (reading: Reading, selector = "path") => reading.all(selector).map((path) => path.attribute("d") ?? "");

describe("outlines as paths", () => {
  it("go down the skier's right and up the left, to a tenth of a millimetre", () => {
    const outline = [
      { xMm: 0, halfWidthMm: 0 },
      { xMm: 50.04, halfWidthMm: 60.26 },
      { xMm: 100, halfWidthMm: 55 },
    ];
    expect(closedPath(outline)).toBe("M0 0L60.3 50L55 100L-55 100L-60.3 50L0 0Z");
    expect(greatestHalfWidthMm(shape)).toBe(60);
    expect(greatestHalfWidthMm({ ...shape, heelWidthMm: 130 })).toBe(65);
  });

  it("follow one side between two stations, kept inside the edge", () => {
    const right = numbers(sidePath(real, 600, 700, 1, 2));
    const left = numbers(sidePath(real, 600, 700, -1, 2));
    // Steps of at most 30 mm: four of 25.
    expect(right.filter((_, index) => index % 2 === 1)).toEqual([600, 625, 650, 675, 700]);
    expect(left.map((value, index) => (index % 2 === 0 ? -value : value))).toEqual(right);
    expect(right[0]).toBeLessThan(real.shoulderWidthMm / 2 - 2);
    expect(right[0]).toBeGreaterThan(real.waistWidthMm / 2 - 2);
    expect(numbers(sidePath(real, 0, 10, 1)).filter((_, index) => index % 2 === 1)).toEqual([0, 5, 10]);
    // Nothing is drawn beyond the centre line at a tip narrower than the inset.
    expect(numbers(sidePath(real, 0, 10, 1, 500))).toEqual([0, 0, 0, 5, 0, 10]);
  });

  it("round the corners of a box by no more than half of it", () => {
    expect(roundedBox(-20, 300, 40, 200, 14)).toBe(
      "M-6 300h12a14 14 0 0 1 14 14v172a14 14 0 0 1 -14 14h-12a14 14 0 0 1 -14 -14v-172a14 14 0 0 1 14 -14Z",
    );
    expect(roundedBox(0, 0, 16, 20, 14)).toMatch(/^M8 0h0a8 8 /);
  });
});

const ordered = pairLook(specOf(), catalog.build);
if (!ordered) throw new Error("the demo shop draws no Midlow 95");
const print = { ...catalog.build.rules.print, pairGapMm: 24 };
const graphicOf = (layout: GraphicLayout, known: Partial<SeenGraphic> = {}): SeenGraphic => ({
  layout,
  art: pairArt(layout, shape, print),
  windows: [],
  ...known,
});
/** The plain ski: 13 mm thick all along, steel from 100 to 900 mm, boot and binding about 600 mm. */
const plain: PairLook = {
  ...ordered,
  shape,
  mountMm: 600,
  bindingHalfMm: 150,
  edge: { widthMm: 2, heightMm: 2, fromMm: 100, toMm: 900 },
  thickness: [0, 1000].map((xMm) => ({ xMm, thicknessMm: 13 })),
  base: { left: "#111111", right: "#222222" },
  graphic: graphicOf("same"),
};

/** A path of a drawing; what is written once under a name is found there. */
interface Inked {
  readonly d: string;
  readonly of: (name: string) => string | null;
}
function inked(drawing: Reading, selector = ""): readonly Inked[] {
  const drawnHere = drawing.all(`path${selector}, use${selector}`).filter((each) => each.attribute("id") === null);
  return drawnHere.map((each) => {
    const href = each.attribute("href");
    const named = href === null ? each : drawing.one(`path[id="${href.slice(1)}"]`);
    return { d: named.attribute("d") ?? "", of: each.attribute };
  });
}

describe("a pair of skis", () => {
  const pair = (known: Partial<SkiPairProps> = {}) =>
    drawn(<SkiPair look={plain} orientation="upright" pictureBase="/files" {...known} />);
  const dressed = (graphic: SeenGraphic, known: Partial<SkiPairProps> = {}) =>
    pair({ look: { ...plain, graphic }, ...known });
  const skis = (reading: Reading) => reading.all("[data-ski-axes] > g:last-child > g");
  const places = (reading: Reading) => skis(reading).map((ski) => ski.attribute("transform"));
  const everySecond = (values: readonly number[], from: 0 | 1) => values.filter((_, index) => index % 2 === from);

  it("stands with the left ski on the left, 24 mm apart, or lies turned with its tip to the left", () => {
    // Two skis of 120 mm and a gap of 24: 264 across; centres 72 to each side.
    expect(pair().one("svg").attribute("viewBox")).toBe("-132 0 264 1000");
    expect(places(pair())).toEqual(["translate(-72 0)", "translate(72 0)"]);
    expect(pair().one("[data-ski-axes]").attribute("transform")).toBeNull();
    const lying = pair({ orientation: "lying", gapMm: 40, description: "a pair" });
    expect(lying.one("svg").attribute("viewBox")).toBe("0 -140 1000 280");
    expect(lying.one("[data-ski-axes]").attribute("transform")).toBe("rotate(-90)");
    expect([
      lying.one("svg").attribute("role"),
      lying.one("svg").attribute("aria-label"),
      lying.one("svg").attribute("aria-hidden"),
    ]).toEqual(["img", "a pair", null]);
    expect([pair().one("svg").attribute("role"), pair().one("svg").attribute("aria-hidden")]).toEqual([null, "true"]);
    const alone = pair({ sides: ["left"] });
    expect(alone.one("svg").attribute("viewBox")).toBe("-60 0 120 1000");
    expect(places(alone)).toEqual([null]);
  });

  it("is as wide as it is cut, its top narrower by what the walls lean", () => {
    const [wall] = inked(pair({ sides: ["left"] }));
    expect([Math.min(...numbers(wall?.d)), Math.max(...everySecond(numbers(wall?.d), 0))]).toEqual([-60, 60]);
    const sheets = inked(pair({ sides: ["left"] }), "[fill='var(--sheet)']");
    expect(sheets).toHaveLength(1);
    // 10° above 2.5 mm of 13: (13 − 2.5)·tan 10° = 1.85 mm a side.
    expect(Math.max(...everySecond(numbers(sheets[0]?.d), 0))).toBeCloseTo(60 - 1.85, 1);
    const upright = pair({ sides: ["left"], look: { ...plain, wall: { bevelDeg: 0, uprightMm: 2.5 } } });
    expect(inked(upright, "[fill='var(--sheet)']")[0]?.d).toBe(inked(upright)[0]?.d);
  });

  it("ticks the mount line in from both edges, and where the binding's zone ends", () => {
    const [mount] = inked(pair({ sides: ["left"] }), "[stroke='var(--larch)']");
    const half = Math.round(10 * halfWidthAt(shape, 600)) / 10;
    expect(numbers(mount?.d)).toEqual([-half, 600, 15 - half, 600, half, 600, half - 15, 600]);
    const zone = inked(pair({ sides: ["left"] }), "[stroke-width='1.6']")[0];
    expect([...new Set(everySecond(numbers(zone?.d), 1))]).toEqual([450, 750]);
    expect(inked(pair({ view: "below" }), "[stroke='var(--larch)']")).toEqual([]);
  });

  it("shows what binding and edge leave, while a picture is placed", () => {
    const placed = pair({ sides: ["left"], placing: { safeMm: 5 } });
    const safe = inked(placed, "[stroke-dasharray='3 3']");
    expect(safe).toHaveLength(1);
    expect(safe[0]?.of("vector-effect")).toBe("non-scaling-stroke");
    expect(Math.max(...everySecond(numbers(safe[0]?.d), 0))).toBeCloseTo(55, 0);
    const hidden = inked(placed, "[fill='var(--sheet)'][fill-opacity='0.28']");
    expect(hidden.map(({ d }) => d)).toEqual(["M-45 450h90v300h-90Z"]);
    expect(inked(pair({ placing: { safeMm: 5 } }), "[stroke-dasharray='3 3']")).toHaveLength(2);
    expect(inked(pair(), "[stroke-dasharray]")).toEqual([]);
  });

  it("shows each base in its own colour and the steel where it runs", () => {
    const below = pair({ view: "below" });
    const grounds = skis(below).map((ski) =>
      ski.all("path[fill^='#'], use[fill^='#']").map((each) => each.attribute("fill")),
    );
    expect(grounds).toEqual([
      ["#111111", "#111111"],
      ["#222222", "#222222"],
    ]);
    const edges = inked(below, "[stroke='var(--steel)']");
    expect(edges.map((edge) => edge.of("stroke-width"))).toEqual(["2", "2"]);
    // Half of its width in from the outline, on both sides.
    const [right = "", left = ""] = (edges[0]?.d ?? "").split("M").slice(1);
    expect([numbers(right)[1], numbers(right).at(-1)]).toEqual([100, 900]);
    expect(everySecond(numbers(left), 0)).toEqual(everySecond(numbers(right), 0).map((x) => -x));
    expect(numbers(right)[0]).toBeCloseTo(halfWidthAt(shape, 100) - 1, 1);
    const spanOf = (edgeWrap: "full" | "partial") => {
      const models = [{ ...model, shape: { ...model.shape, edgeWrap } }];
      return pairLook(specOf(), { ...catalog.build, models })?.edge;
    };
    expect(spanOf("full")).toMatchObject({ fromMm: 2, toMm: real.lengthMm - 2 });
    const reach = edgeSpanMm({ ...real, edgeWrap: "partial" }, catalog.build.rules.edge);
    expect(spanOf("partial")).toMatchObject(reach);
    expect(reach.fromMm).toBeLessThan(real.tipLengthMm);
  });

  it("lays a picture by its placement, mirrored or split as the layout asks", () => {
    const artwork: SeenArtwork = {
      id: "p",
      widthPx: 4000,
      heightPx: 1000,
      copies: [{ placement: { centreXMm: 500, centreYMm: 10, mmPerPixel: 0.2, angleDeg: 0 } }],
      fades: [],
    };
    const [copy] = artwork.copies;
    const picture = (layout: GraphicLayout, known: object = {}, props: Partial<SkiPairProps> = {}) =>
      dressed(
        graphicOf(layout, {
          artwork: { ...artwork, copies: [{ placement: { ...copy?.placement, ...known } as ArtworkPlacement }] },
        }),
        props,
      );
    const frames = (reading: Reading) =>
      reading
        .all('g:last-child use[transform*="rotate"]')
        .map((image) => image.element.parentElement?.getAttribute("transform") ?? null);
    const same = picture("same");
    // Where it comes once it is written out; where it comes twice it is named, and used at its size.
    const alone = (known: object = {}) => picture("same", known, { sides: ["left"] }).one("image");
    const image = alone();
    expect(["x", "y", "width", "height"].map((name) => Number(image.attribute(name)))).toEqual([-400, -100, 800, 200]);
    expect(image.attribute("href")).toBe("/files/p");
    expect(image.attribute("transform")).toBe("translate(10 500) rotate(90)");
    expect(alone({ angleDeg: 30 }).attribute("transform")).toBe("translate(10 500) rotate(60)");
    expect(same.all('use[transform*="rotate"]').map((each) => each.attribute("transform"))).toEqual(
      Array.from({ length: 2 }, () => "translate(10 500) rotate(90) scale(800 200)"),
    );
    expect(frames(same)).toEqual([null, null]);
    expect(frames(picture("mirrored"))).toEqual([null, "scale(-1 1)"]);
    // Half a ski and half the gap: 60 + 12.
    expect(frames(picture("continuing"))).toEqual(["translate(72 0)", "translate(-72 0)"]);
    // Faintly under the skis it is whole: in the same place of the drawing from both.
    const ghosts = (layout: GraphicLayout) =>
      picture(layout, {}, { placing: { safeMm: 5 } })
        .all("g[opacity='0.25'] > g")
        .map((each) => [each.attribute("transform"), each.one("g").attribute("transform")]);
    expect(ghosts("same").map(([at]) => at)).toEqual(["translate(-72 0)", "translate(72 0)"]);
    expect(ghosts("continuing")).toEqual([
      ["translate(-72 0)", "translate(72 0)"],
      ["translate(72 0)", "translate(-72 0)"],
    ]);
    // Where nobody says where pictures are, its place stays empty.
    expect(picture("same", {}, { pictureBase: undefined }).all("image")).toEqual([]);
  });

  it("letters from tip to tail, a cap being 0.698 em high, readable on both skis, and only on top", () => {
    const text = { text: "ADA", xMm: 400, capHeightMm: 34.9 };
    const letters = dressed(graphicOf("mirrored", { text })).all("text");
    // Half a cap below the line that they are centred on.
    const letter = ["ADA", "translate(0 400) rotate(90) translate(0 17.5)", 50, 6];
    expect(
      letters.map((each) => [
        each.text,
        each.attribute("transform"),
        Number(each.attribute("font-size")),
        Number(each.attribute("stroke-width")),
      ]),
    ).toEqual([letter, letter]);
    expect(letters.map((each) => each.element.closest("[transform*=scale]"))).toEqual([null, null]);
    expect(dressed(graphicOf("same", { text }), { view: "below" }).all("text")).toEqual([]);
    const said = `<b id="x">&'A'</b>`;
    const escaped = dressed(graphicOf("same", { text: { ...text, text: said } }), { sides: ["left"] });
    expect(escaped.one("text").text).toBe(said);
    expect(escaped.all("b")).toEqual([]);
  });

  it("cuts letters of the other base into each", () => {
    const letters = { text: "TY", fromXMm: 300, toXMm: 500, capHeightMm: 34.9 };
    const below = pair({ look: { ...plain, base: { ...plain.base, letters } }, view: "below" }).all("text");
    expect(below.map((each) => [each.text, each.attribute("fill"), each.attribute("textLength")])).toEqual([
      ["TY", "#222222", "200"],
      ["TY", "#111111", "200"],
    ]);
    expect(below[0]?.attribute("transform")).toContain("translate(0 400)");
    expect(below[0]?.attribute("stroke")).toBeNull();
  });

  it("shows wood through a window, symmetric about the centre line, its grain within each strip", () => {
    const look: WoodLook = { ground: "#d9b988", grain: "#a98a58", linesPer10Mm: 4 };
    const strips: readonly SeenStrip[] = [
      { position: "C", wood: "aspen", innerMm: 0, outerMm: 10, look },
      { position: "I", wood: "ash", innerMm: 10, outerMm: 30, look: { ...look, ground: "#b98d54" } },
    ];
    const windows = [
      { fromXMm: 300, toXMm: 500, halfWidthMm: 20 },
      { fromXMm: 600, toXMm: 620, halfWidthMm: 8 },
    ];
    const seen = pair({ look: { ...plain, strips, graphic: graphicOf("same", { windows }) }, sides: ["left"] });
    const holes = [roundedBox(-20, 300, 40, 200, 14), roundedBox(-8, 600, 16, 20, 14)];
    expect(paths(seen, "clipPath path").filter((d) => holes.includes(d))).toEqual(holes);
    expect(paths(seen, "path[stroke='#1b2023']")).toEqual(holes);
    const bands = seen.all("path[fill='#d9b988'], path[fill='#b98d54']").slice(0, 3);
    expect(bands.map((band) => [band.attribute("d"), band.attribute("fill")])).toEqual([
      ["M-10 300H10V500H-10Z", "#d9b988"],
      ["M10 300H30V500H10Z", "#b98d54"],
      ["M-30 300H-10V500H-30Z", "#b98d54"],
    ]);
    const grain = paths(seen, "path[stroke='#a98a58']").slice(0, 3);
    const edges = [-10, 10, 10, 30, -30, -10];
    grain.forEach((d, i) => {
      const xs = everySecond(numbers(d), 0);
      expect(Math.min(...xs)).toBeGreaterThan(edges[2 * i] ?? 0);
      expect(Math.max(...xs)).toBeLessThan(edges[2 * i + 1] ?? 0);
    });
    // Twins of one stick: the left strip is the right one's mirror image.
    expect(everySecond(numbers(grain[2]), 0)).toEqual(everySecond(numbers(grain[1]), 0).map((x) => -x));
    expect(pair({ look: { ...plain, strips } }).all("path[stroke='#a98a58']")).toEqual([]);
    const below = { look: { ...plain, strips, graphic: graphicOf("same", { windows }) }, view: "below" } as const;
    expect(pair(below).all("path[stroke='#a98a58']")).toEqual([]);
  });

  it("draws a house graphic, the second ski of an alternate pair in the other palette", () => {
    const house = catalog.build.houseGraphics.find(({ id }) => id === "autumn-larch");
    const colours = (layout: GraphicLayout) =>
      skis(dressed(graphicOf(layout, { house }))).map((ski) =>
        ski.all("path, use").flatMap((each) => {
          const colour = each.attribute("fill") ?? each.attribute("stroke");
          const stroke = each.attribute("stroke");
          return [colour === "none" ? stroke : colour].filter((value) => house?.colours.includes(value ?? ""));
        }),
      );
    const [left, right] = colours("same");
    expect(left?.length).toBeGreaterThan(1);
    expect(right).toEqual(left);
    const [one, other] = colours("alternate");
    expect(one).toEqual(left);
    // The palette backwards: the first colour for the last.
    const backwards = house?.colours.toReversed() ?? [];
    expect(other).toEqual(one?.map((colour) => backwards[house?.colours.indexOf(colour ?? "") ?? -1]));
  });

  it("names nothing twice, however often it is drawn, and finds all that it uses", () => {
    const house = catalog.build.houseGraphics.find(({ id }) => id === "ice-facets");
    const look = { ...plain, graphic: graphicOf("continuing", { house }) };
    const both = drawn(
      <>
        <SkiPair look={look} orientation="upright" placing={{ safeMm: 5 }} />
        <SkiPair look={look} orientation="lying" />
      </>,
    );
    const ids = both.all("[id]").map((each) => each.attribute("id"));
    expect(new Set(ids).size).toBe(ids.length);
    const used = both.all("use").map((each) => (each.attribute("href") ?? "").slice(1));
    const clips = both.all("[clip-path]").map((each) => each.attribute("clip-path")?.slice("url(#".length, -1));
    const fills = both.all("[fill^='url(']").map((each) => each.attribute("fill")?.slice("url(#".length, -1));
    for (const names of [used, clips, fills]) {
      expect(names.length).toBeGreaterThan(3);
      for (const name of names) expect(ids).toContain(name);
    }
  });

  it("is drawn as ordered, from above, from the side and from below, lying and upright", () => {
    const spec = { ...specOf(), mount: { offsetMm: 15 } };
    const figure = drawn(<PairFigure spec={spec} build={catalog.build} pictureBase="/files" />);
    expect(figure.all("svg").map((svg) => svg.attribute("aria-label"))).toEqual([
      "Midlow 95, 178 cm, from above, tips to the left",
      "Midlow 95, 178 cm, from the side",
      "Midlow 95, 178 cm, from below",
      "Midlow 95, 178 cm, from above, tips up",
      "Midlow 95, 178 cm, from the side",
      "Midlow 95, 178 cm, from below",
    ]);
    // Plus is towards the tip.
    const [above] = figure.all("svg");
    const mounts = above?.all("path[stroke='var(--larch)']").map((path) => numbers(path.attribute("d"))[1]);
    expect(mounts).toEqual([real.mountFromTipMm - 15, real.mountFromTipMm - 15]);
    expect(
      drawn(<PairFigure spec={{ ...spec, model: "none" }} build={catalog.build} pictureBase="" />).all("svg"),
    ).toEqual([]);
  });

  it("is a silhouette to one scale with others: the plan in 150 mm, its side below it in 92", () => {
    const seen = drawn(<ModelSilhouette look={plain} scaleLengthMm={1980} />);
    expect(seen.one("svg").attribute("viewBox")).toBe("0 -75 1980 242");
    const [plan, mount, side] = paths(seen);
    expect(plan).toBe(closedPath(screenOutline(shape)));
    expect(mount).toBe("M-45 600H45");
    expect(side).toBe(sideSilhouette(plain));
  });
});

describe("a reading along the ski", () => {
  it("is on the straight line between two stations, held to the ends", () => {
    const at = (xMm: number) => readingAt(a.shape, a.flex, xMm);
    expect(at(250)).toMatchObject({ xMm: 250, widthMm: 100, thicknessMm: 13, massGPerM: 600, neutralAxisMm: 6 });
    expect(at(250)?.coreMm).toBeCloseTo(10.25, 9);
    expect(at(750)?.bendingStiffnessNmm2).toBeCloseTo(175e6, 0);
    expect(at(750)?.torsionalStiffnessNmm2).toBeCloseTo(87.5e6, 0);
    expect(at(-10)?.xMm).toBe(0);
    expect(at(2000)?.xMm).toBe(1000);
    expect(at(500)?.coreMm).toBeCloseTo(10.5, 9);
    expect(readingAt(a.shape, { ...a.flex, stations: [] }, 1)).toBeNull();
    expect(readingAt(a.shape, { ...a.flex, stations: [station(0), station(0)] }, 0)?.coreMm).toBe(10);
    expect(axisSeries.map(({ value, unit }) => `${value(station(500))} ${unit}`)).toEqual([
      "150 N·m²",
      "75 N·m²",
      "10.5 mm",
      "600 g/m",
    ]);
  });
});

describe("the strips of the axis", () => {
  it("end at a round top, with ticks above zero", () => {
    expect(plotScale([0, 37, 91])).toEqual({ max: 100, ticks: [50, 100] });
    expect(plotScale([]).max).toBeGreaterThan(0);
    expect(plotScale([190]).max).toBe(200);
  });

  it("draw a quantity along the ski, value upwards lying and to the right upright", () => {
    const [bending] = axisSeries;
    if (!bending) throw new Error("no series");
    const scale = { max: 200, ticks: [100, 200] };
    const lying = drawn(<SeriesPlot orientation="lying" builds={[a]} series={bending} scale={scale} />);
    expect(lying.one("svg").attribute("viewBox")).toBe("0 0 1000 100");
    // 100, 150 and 200 N·m² of 200: 50, 25 and 0 from the top.
    expect(paths(lying)).toEqual([
      "M0 50H1000",
      "M0 0H1000",
      "M0,50L500,25L1000,0L1000,100L500,100L0,100Z",
      "M0,50L500,25L1000,0",
      "M0 100H1000",
    ]);
    const upright = drawn(<SeriesPlot orientation="upright" builds={[a]} series={bending} scale={scale} />);
    expect(upright.one("svg").attribute("viewBox")).toBe("0 0 100 1000");
    expect(paths(upright)).toEqual([
      "M50 0V1000",
      "M100 0V1000",
      "M50,0L75,500L100,1000L0,1000L0,500L0,0Z",
      "M50,0L75,500L100,1000",
      "M0 0V1000",
    ]);
    // Two builds over one another at their mount lines: the shorter tip lies 100 mm behind the longer one.
    const two = drawn(<SeriesPlot orientation="lying" builds={[a, longer]} series={bending} scale={scale} />);
    expect(two.one("svg").attribute("viewBox")).toBe("0 0 1200 100");
    const [, , band, first, second] = paths(two);
    expect(numbers(first)).toEqual([100, 50, 600, 25, 1100, 0]);
    expect(rounded(numbers(second))).toEqual([0, 50, 600, 20, 1200, -10]);
    expect(numbers(band).slice(0, 2)).toEqual([100, 50]);
    expect(two.all("path").map((path) => path.attribute("stroke-dasharray"))).toEqual([
      null,
      null,
      null,
      null,
      "8 4",
      null,
    ]);
  });

  it("draw the side view from the running surface to the top face, and the true outlines", () => {
    const side = drawn(<ProfilePlot orientation="lying" builds={[a, longer]} />);
    expect(side.one("svg").attribute("viewBox")).toBe("0 0 1200 100");
    const [bench, first, second] = paths(side);
    expect(bench).toBe("M0 100H1200");
    const xs = (d: string | undefined) => numbers(d).filter((_, index) => index % 2 === 0);
    expect([Math.min(...xs(first)), Math.max(...xs(first)), Math.min(...xs(second)), Math.max(...xs(second))]).toEqual([
      100, 1100, 0, 1200,
    ]);
    // Every 10 mm, both ends included, over the top and back along the surface.
    expect(xs(first)).toHaveLength(202);
    // The highest face has 4 % of air above it: the tip's rise and 13 mm of ski.
    const top = 1.04 * Math.max(shape.tipRiseMm + 13, shape.tailRiseMm + 13, 13 + shape.camberMm);
    const ys = numbers(first).filter((_, index) => index % 2 === 1);
    expect(100 - Math.min(...ys)).toBeCloseTo((100 * (Math.max(shape.tipRiseMm, shape.tailRiseMm) + 13)) / top, 3);
    expect(ys[101] ?? 0).toBeGreaterThan(ys[100] ?? 0);
    expect(outlinesAcrossMm([a, build("wide", 1000, 400, { shoulderWidthMm: 140 })])).toBe(146);
    const plan = drawn(<OutlinesPlot orientation="lying" builds={[a, longer]} className="own" />);
    expect(plan.one("svg").attribute("viewBox")).toBe("0 -63 1200 126");
    expect(plan.one("g").attribute("transform")).toBe("rotate(-90)");
    expect(plan.all("path[transform]").map((path) => [path.attribute("transform"), path.attribute("fill")])).toEqual([
      ["translate(0 100)", "var(--sheet)"],
      ["translate(0 0)", "none"],
    ]);
    expect(paths(plan).at(-1)).toBe("M-63 500H63");
    const upright = drawn(<OutlinesPlot orientation="upright" builds={[a]} className="own" />);
    expect(upright.one("svg").attribute("viewBox")).toBe("-63 0 126 1000");
    expect(upright.one("g").attribute("transform")).toBeNull();
  });

  it("stand over a ruler: from the tip for one, from the mount line for several", () => {
    const scales = axisSeries.map(() => ({ max: 200, ticks: [100] }));
    const ruler = (builds: readonly [AxisBuild, ...AxisBuild[]]) =>
      drawn(<LyingDrawing builds={builds} scales={scales} />)
        .all("div.h-7 span")
        .map((mark) => [mark.text, mark.attribute("style")]);
    expect(ruler([a])).toEqual([
      ["0 mm", "left:0%"],
      ["200", "left:20%"],
      ["400", "left:40%"],
      ["600", "left:60%"],
      ["800", "left:80%"],
      ["1000", "left:100%"],
    ]);
    expect(ruler([a, longer]).map(([text, style]) => [text, Math.round(numbers(style)[0] ?? -1)])).toEqual([
      ["−400", 8],
      ["−200", 25],
      ["0 mm", 42],
      ["200", 58],
      ["400", 75],
      ["600", 92],
    ]);
    const lying = drawn(<LyingDrawing builds={[a]} scales={scales} />);
    expect(lying.all("span[style*=bottom]").map((tick) => [tick.text, tick.attribute("style")])).toEqual(
      Array.from({ length: 4 }, () => ["100", "bottom:calc(50% - 0.5em)"]),
    );
    expect(drawn(<UprightDrawing builds={[a]} scales={scales} />).all("span[style*=bottom]")).toEqual([]);
    expect(lying.all("svg")).toHaveLength(6);
    // One plan: the outlines' 126 mm on 1,000 mm of length.
    expect(uprightPlanWidth({ builds: [a], scales }).width).toBe("calc(var(--axis) * 0.126)");
    const pair = { look: plain, pictureBase: "/files" };
    // A pair: four half widths and the gap, 264 mm.
    expect(uprightPlanWidth({ builds: [a], scales, pair }).width).toBe("calc(var(--axis) * 0.264)");
    expect(
      drawn(<LyingDrawing builds={[a]} scales={scales} pair={pair} />)
        .one("svg")
        .attribute("viewBox"),
    ).toBe("0 -132 1000 264");
  });

  it("show the pair itself only where every outline is the same", () => {
    const pair = { look: plain, pictureBase: "/files" };
    const shows = (other: AxisBuild, given: typeof pair | undefined = pair) =>
      showsPair({ builds: [a, other], scales: [], pair: given });
    expect(shows(a)).toBe(true);
    expect(showsPair({ builds: [a], scales: [] })).toBe(false);
    expect(shows(build("x", 1000, 410))).toBe(false);
    expect(shows(build("x", 1010))).toBe(false);
    expect(shows(build("x", 1000, 400, { waistWidthMm: 91 }))).toBe(false);
    expect(shows(build("x", 1000, 400, { shoulderWidthMm: 121 }))).toBe(false);
  });

  it("tell builds apart by letter and line", () => {
    expect([0, 1, 2, 3].map((index) => lookOf(index).letter)).toEqual(["A", "B", "C", "A"]);
    expect([0, 1, 2].map((index) => lineOf(index).strokeDasharray)).toEqual([undefined, "8 4", "0.1 4.5"]);
    expect(drawn(<LineKey index={2} />).text).toBe("C");
  });
});

describe("the readout", () => {
  it("says every value where the line stands, and the difference to the first", () => {
    expect([fromMountText(12.4), fromMountText(-12.6), fromMountText(0)]).toEqual(["+12 mm", "−13 mm", "0 mm"]);
    const one = drawn(<AxisReadout builds={[a]} fromMountMm={100} />);
    expect(one.facts).toMatchObject({
      "From the tip": "500 mm",
      "From the mount line": "+100 mm",
      Width: "100.0 mm",
      "Ski thickness": "13.00 mm",
      "Stiffness in bending, EI": "150.0 N·m²",
      "Stiffness in twist, GJ": "75.0 N·m²",
      "Core thickness": "10.50 mm",
      "Mass along the ski": "600 g/m",
    });
    const two = drawn(<AxisReadout builds={[a, longer]} fromMountMm={100} />);
    expect(two.one("caption").text).toBe("Read 100 mm behind the mount line; differences are to A");
    const rows = two.all("tbody tr").map((row) => [...row.all("th, td")].map(({ text }) => text));
    // The longer one is read at its own 600 mm: 160 N·m² against 150.
    expect(rows.find(([name]) => name?.startsWith("Stiffness in bending"))).toEqual([
      "Stiffness in bending, EI, EI N·m²",
      "150.0",
      "160.0+10.0",
    ]);
    const ended = drawn(<AxisReadout builds={[a, longer]} fromMountMm={650} />);
    expect(
      ended
        .all("tbody tr")[0]
        ?.all("td")
        .map(({ text }) => text),
    ).toEqual(["ended", "100.0"]);
    expect(drawn(<AxisReadout builds={[]} fromMountMm={0} />).text).toBe("");
  });

  it("is spoken in one sentence", () => {
    expect(spokenReading([a], -100)).toMatch(
      /^300 mm from the tip, 100 mm ahead of the mount line: 100\.0 mm wide, Height of running surface [\d.]+ mm, Ski thickness 13\.00 mm, Stiffness in bending, EI 130\.0 N·m²,/,
    );
    expect(spokenReading([a, longer], 0)).toMatch(
      /^at the mount line: A, A ski: 100\.0 mm wide, .*; B, B ski: 100\.0 mm wide/,
    );
    expect(spokenReading([a, longer], 650)).toMatch(
      /^650 mm behind the mount line: A, A ski: has ended here; B, B ski: /,
    );
  });

  it("has the same numbers as a table every 100 mm, and every 10 mm to take away", () => {
    const table = drawn(<AxisTable title="Midlow 95, 178 cm" builds={[a]} />);
    expect(table.one("caption").text).toBe("Midlow 95, 178 cm: values every 100 mm from the tip");
    expect(table.all("tbody tr")).toHaveLength(11);
    expect(
      table
        .all("tbody tr")[5]
        ?.all("td")
        .map(({ text }) => text),
    ).toEqual(expect.arrayContaining(["100", "500", "100.0", "150.0", "10.50", "600"]));
    expect(table.csv("midlow-95-178-cm.csv")).toHaveLength(102);
    expect(drawn(<AxisTable title="T" builds={[a, longer]} />).one("caption").text).toContain("from the mount line");
  });
});
