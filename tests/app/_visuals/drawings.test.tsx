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
import { drawnBase, drawnGraphic, drawnWood, PairFigure } from "#app/_visuals/pair-figure.tsx";
import { closedPath, greatestHalfWidthMm, sidePath } from "#app/_visuals/paths.ts";
import { SkiPair } from "#app/_visuals/ski-drawing.tsx";
import { SkiOutline } from "#app/_visuals/ski-outline.tsx";
import { woodStrips } from "#app/_visuals/ski-wood.tsx";
import type { FlexStation, SkiFlex } from "#engine/flex";
import { type SkiShape, shapeAtLength } from "#engine/geometry";
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
});

describe("a pair of skis", () => {
  const pair = (known: Partial<Parameters<typeof SkiPair>[0]> = {}) =>
    drawn(<SkiPair shape={shape} orientation="upright" {...known} />);
  const places = (reading: Reading) => reading.all("[data-ski-axes] > g").map((ski) => ski.attribute("transform"));

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
    expect(places(alone)).toEqual(["translate(0 0)"]);
  });

  it("marks the mount line across it, and what boot and binding hide", () => {
    const marked = pair({ sides: ["left"], marks: { mountMm: 600, bindingHalfMm: 150, safeMm: 5 } });
    expect(paths(marked)).toContain("M-66 600H66");
    const hidden = marked.all("rect").find((rect) => rect.attribute("fill")?.startsWith("url("));
    expect(["x", "y", "width", "height"].map((name) => Number(hidden?.attribute(name)))).toEqual([-45, 450, 90, 300]);
    const safe = marked.all("path[stroke-dasharray='3 3']");
    expect(safe).toHaveLength(1);
    expect(Math.max(...numbers(safe[0]?.attribute("d")).filter((_, index) => index % 2 === 0))).toBeLessThan(60);
    const base = pair({
      sides: ["left"],
      view: "base",
      baseColours: { left: "#111111", right: "#222222" },
      marks: { mountMm: 600, bindingHalfMm: 150, safeMm: 5 },
    });
    expect(base.all("path[stroke-dasharray='3 3']")).toEqual([]);
    expect(base.all("rect")).toEqual([]);
    expect(paths(base)).toContain("M-66 600H66");
    expect(paths(pair({ sides: ["left"], marks: { bindingHalfMm: 150 } }))).not.toContain("M-66 600H66");
    expect(pair({ marks: { mountMm: 600 } }).all("rect")).toEqual([]);
  });

  it("shows each base in its own colour and the steel edges where they run", () => {
    const base = pair({ view: "base", baseColours: { left: "#111111", right: "#222222" } });
    expect(base.all("[data-ski-axes] > g").map((ski) => ski.one("g[clip-path] > path").attribute("fill"))).toEqual([
      "#111111",
      "#222222",
    ]);
    const edges = base.all("path[stroke='var(--steel)']");
    expect(edges.map((edge) => edge.attribute("stroke-width"))).toEqual(["4", "4", "4", "4"]);
    const edgeOf = (known: Partial<SkiShape>) => {
      const [edge] = drawn(<SkiPair shape={skiOf(1000, known)} orientation="upright" />).all(
        "path[stroke='var(--steel)']",
      );
      const xs = numbers(edge?.attribute("d")).filter((_, index) => index % 2 === 1);
      return [xs[0], xs.at(-1), edge?.attribute("stroke-width")];
    };
    expect(edgeOf({ edgeWrap: "full" })).toEqual([2, 998, "2"]);
    // From 30 mm ahead of the shoulder to 30 mm behind the heel.
    expect(edgeOf({ edgeWrap: "partial" })).toEqual([140, 890, "2"]);
    const [one, other] = pair({ sides: ["left"] })
      .all("path[stroke='var(--steel)']")
      .map((edge) => numbers(edge.attribute("d"))[0] ?? 0);
    expect(one).toBe(-(other ?? 0));
  });

  it("lays a picture by its placement, mirrored or split as the layout asks", () => {
    const artwork = {
      url: "/p",
      widthPx: 4000,
      heightPx: 1000,
      placement: { centreXMm: 500, centreYMm: 10, mmPerPixel: 0.2, angleDeg: 0 },
    };
    const picture = (layout: "same" | "mirrored" | "continuing", known: object = {}) =>
      pair({ graphic: { layout, artwork: { ...artwork, placement: { ...artwork.placement, ...known } } } });
    const frames = (reading: Reading) =>
      reading.all("[data-ski-axes] > g > g > g").map((frame) => frame.attribute("transform"));
    const same = picture("same");
    const image = same.one("image");
    expect(["x", "y", "width", "height"].map((name) => Number(image.attribute(name)))).toEqual([-400, -100, 800, 200]);
    expect(image.attribute("href")).toBe("/p");
    expect(
      same
        .all("g")
        .find((group) => group.attribute("transform")?.includes("rotate"))
        ?.attribute("transform"),
    ).toBe("translate(10 500) rotate(90)");
    expect(
      picture("same", { angleDeg: 30 })
        .all("g")
        .find((group) => group.attribute("transform")?.includes("rotate"))
        ?.attribute("transform"),
    ).toBe("translate(10 500) rotate(60)");
    expect(frames(same)).toEqual(["translate(0 0)", "translate(0 0)"]);
    expect(frames(picture("mirrored"))).toEqual(["translate(0 0)", "translate(0 0) scale(-1 1)"]);
    // Half a ski and half the gap: 60 + 12.
    expect(frames(picture("continuing"))).toEqual(["translate(72 0)", "translate(-72 0)"]);
    expect(frames(pair({ graphic: { layout: "continuing", splitGapMm: 40, artwork } }))).toEqual([
      "translate(80 0)",
      "translate(-80 0)",
    ]);
    const ghost = (layout: "same" | "continuing") =>
      pair({ ghost: true, graphic: { layout, artwork } })
        .all("g[opacity='0.25'] > g")
        .map((each) => each.attribute("transform"));
    expect(ghost("same")).toEqual(["translate(-72 0)", "translate(72 0)"]);
    expect(ghost("continuing")).toEqual(["translate(0 0)"]);
    expect(pair({ ghost: true, graphic: { layout: "same" } }).all("g[opacity]")).toEqual([]);
  });

  it("letters from tip to tail, a cap being 0.698 em high, and only on top", () => {
    const text = { text: "ADA", xMm: 400, capHeightMm: 34.9 };
    const letters = pair({ graphic: { layout: "mirrored", text } }).all("text");
    expect(
      letters.map((each) => [
        each.text,
        each.attribute("transform"),
        Number(each.attribute("font-size")),
        Number(each.attribute("stroke-width")),
      ]),
    ).toEqual([
      ["ADA", "translate(0 400) rotate(90)", 50, 6],
      ["ADA", "translate(0 400) rotate(90)", 50, 6],
    ]);
    expect(pair({ view: "base", graphic: { layout: "same", text } }).all("text")).toEqual([]);
  });

  it("shows wood through a window, symmetric about the centre line", () => {
    const wood = woodStrips(20, { C: false, I: true, M: false, O: true });
    expect(wood).toEqual([
      { innerMm: 0, outerMm: 10, dense: false },
      { innerMm: 10, outerMm: 30, dense: true },
      { innerMm: 30, outerMm: 50, dense: false },
      { innerMm: 50, outerMm: 90, dense: true },
    ]);
    const graphic = {
      layout: "same",
      windows: [
        { fromXMm: 300, toXMm: 500, halfWidthMm: 20 },
        { fromXMm: 600, toXMm: 620, halfWidthMm: 8 },
      ],
    } as const;
    const seen = pair({ sides: ["left"], graphic, wood });
    const holes = seen
      .all("clipPath rect")
      .map((rect) => ["x", "y", "width", "height", "rx"].map((name) => Number(rect.attribute(name))));
    expect(holes).toEqual([
      [-20, 300, 40, 200, 14],
      [-8, 600, 16, 20, 8],
    ]);
    const frames = seen
      .all("rect[fill=none]")
      .map((rect) => ["x", "y", "width", "height", "rx"].map((name) => Number(rect.attribute(name))));
    expect(frames).toEqual(holes);
    const bands = seen
      .all("rect[height='1000']")
      .map((rect) => [Number(rect.attribute("x")), Number(rect.attribute("width")), rect.attribute("fill")]);
    expect(bands).toEqual([
      [-10, 20, "var(--wood)"],
      [10, 20, "var(--wood-dense)"],
      [-30, 20, "var(--wood-dense)"],
      [30, 20, "var(--wood)"],
      [-50, 20, "var(--wood)"],
      [50, 40, "var(--wood-dense)"],
      [-90, 40, "var(--wood-dense)"],
    ]);
    const grain = seen.all("path[stroke-opacity='0.35']").map((path) => numbers(path.attribute("d")));
    expect(grain).toHaveLength(7);
    // Two lines in each band, at 0.3 and 0.62 of its width, every 60 mm, swinging no more than 1.4 mm.
    expect(
      paths(seen, "path[stroke-opacity='0.35']")[0]
        ?.split("M")
        .map((part) => numbers(part)[0]),
    ).toEqual([undefined, -4, 2.4]);
    for (const line of paths(seen, "path[stroke-opacity='0.35']").flatMap((d) => d.split("M").slice(1).map(numbers))) {
      const [start = 0] = line;
      expect(line.filter((_, index) => index % 2 === 1)).toEqual(Array.from({ length: 17 }, (_, index) => 60 * index));
      for (const [index, value] of line.entries())
        if (index % 2 === 0) expect(Math.abs(value - start)).toBeLessThanOrEqual(1.46);
    }
    expect(pair({ sides: ["left"], view: "base", graphic, wood }).all("clipPath rect")).toEqual([]);
    expect(pair({ sides: ["left"], graphic: { layout: "same" }, wood }).all("clipPath rect")).toEqual([]);
  });

  it("draws a house graphic, the second ski of an alternate pair in the other palette", () => {
    const house = catalog.build.houseGraphics.find(({ id }) => id !== "plain") ?? catalog.build.houseGraphics[0];
    const fills = (layout: "same" | "alternate") => {
      const seen = pair({ graphic: { layout, house } });
      return seen.all("[data-ski-axes] > g").map((ski) => {
        // What is drawn once is used by both.
        const used = ski.all("use").flatMap((use) => seen.all(`[id="${use.attribute("href")?.slice(1)}"] path`));
        const fillAndStroke = (path: Reading) => `${path.attribute("fill")} ${path.attribute("stroke")}`;
        return [...ski.all("g g path"), ...used].map(fillAndStroke);
      });
    };
    const [left, right] = fills("same");
    expect(left?.length).toBeGreaterThan(1);
    expect(right).toEqual(left);
    expect(pair({ graphic: { layout: "same", house } }).all("use")).toHaveLength(1);
    expect(pair({ graphic: { layout: "alternate", house } }).all("use")).toEqual([]);
    const [one, other] = fills("alternate");
    expect(one).toEqual(left);
    expect(other).not.toEqual(one);
  });

  it("is drawn as ordered, from above and from below, lying and upright", () => {
    const spec = specOf();
    const [dark, light] = catalog.build.baseColours;
    const ordered = {
      ...spec,
      mount: { offsetMm: 15 },
      base: { ...spec.base, left: dark?.id ?? "", right: light?.id ?? "" },
    };
    expect(drawnBase(ordered, catalog.build)).toEqual({ left: dark?.hex, right: light?.hex });
    expect(drawnBase({ ...ordered, base: { ...ordered.base, left: "none" } }, catalog.build).left).toBe("#23262a");
    const figure = drawn(<PairFigure spec={ordered} build={catalog.build} pictureBase="/files" />);
    expect(figure.all("svg").map((svg) => svg.attribute("aria-label"))).toEqual([
      "Midlow 95, 178 cm, from above, tips to the left",
      "Midlow 95, 178 cm, from below",
      "Midlow 95, 178 cm, from above, tips up",
      "Midlow 95, 178 cm, from below",
    ]);
    // Plus is towards the tip.
    const mounts = figure
      .all("svg")[0]
      ?.all("path[stroke='var(--larch)']")
      .map((path) => numbers(path.attribute("d"))[1]);
    expect(mounts).toEqual([real.mountFromTipMm - 15, real.mountFromTipMm - 15]);
    expect(figure.all("svg")[1]?.all("path[stroke='var(--larch)']")).toEqual([]);
    expect(
      drawn(<PairFigure spec={{ ...spec, model: "none" }} build={catalog.build} pictureBase="" />).all("svg"),
    ).toEqual([]);
    const picture = { id: "art-1", widthPx: 10, heightPx: 5, sha256: "x" };
    const placement = { centreXMm: 1, centreYMm: 2, mmPerPixel: 3, angleDeg: 4 };
    const graphic = { ...spec.graphic, kind: "own", artwork: picture, placement } as typeof spec.graphic;
    expect(drawnGraphic({ ...spec, graphic }, catalog.build, "/files")).toMatchObject({
      house: undefined,
      artwork: { url: "/files/art-1", widthPx: 10, heightPx: 5, placement },
    });
    expect(
      drawnGraphic({ ...spec, graphic: { ...graphic, kind: "house" } }, catalog.build, "/files").artwork,
    ).toBeUndefined();
    expect(drawnGraphic(spec, catalog.build, "/files").house?.id).toBe(spec.graphic.house);
    // The blend's dense wood is in the position of the screws: ash at 670 kg/m³ against aspen at 426.
    expect(drawnWood(spec, catalog.build).map(({ dense }) => dense)).toEqual(
      (["C", "I", "M", "O"] as const).map((position) => {
        const wood = catalog.build.blends.find(({ id }) => id === spec.core)?.strips[position];
        return (catalog.build.materials.woods.find(({ id }) => id === wood)?.densityKgM3 ?? 0) > 500;
      }),
    );
    expect(drawnWood({ ...spec, core: "none" }, catalog.build)).toEqual([]);
    const strip = model.core.stripWidthMm;
    expect(drawnWood(spec, catalog.build).map(({ outerMm }) => outerMm / strip)).toEqual([0.5, 1.5, 2.5, 4.5]);
  });

  it("is a thumbnail to one scale with others, 150 mm across", () => {
    const thumb = drawn(<SkiOutline shape={shape} scaleLengthMm={1980} />);
    expect(thumb.one("svg").attribute("viewBox")).toBe("0 -75 1980 150");
    expect(paths(thumb)[1]).toBe(`M-45 ${shape.mountFromTipMm}H45`);
    expect(thumb.one("svg").attribute("class")).toBe("block w-full");
    expect(
      drawn(<SkiOutline shape={shape} scaleLengthMm={1980} className="own" />)
        .one("svg")
        .attribute("class"),
    ).toBe("own");
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
    const pair = { bindingHalfMm: 150 };
    // A pair: four half widths and the gap, 264 mm.
    expect(uprightPlanWidth({ builds: [a], scales, pair }).width).toBe("calc(var(--axis) * 0.264)");
    expect(
      drawn(<LyingDrawing builds={[a]} scales={scales} pair={pair} />)
        .one("svg")
        .attribute("viewBox"),
    ).toBe("0 -132 1000 264");
  });

  it("show the pair itself only where every outline is the same", () => {
    const pair = { bindingHalfMm: 150 };
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
