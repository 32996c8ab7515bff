/** The configuration's rules at their edges; values worked by hand from the rule stated beside them. */
import { describe, expect, it } from "vitest";
import {
  type BuildCatalog,
  completeSpec,
  conflictsOf,
  fillingPlacement,
  graphicResolution,
  letteringFit,
  letteringWarnings,
  pairArt,
  printCanvas,
  referenceBuildFor,
  resolveSpec,
  type SpecChoices,
  skiBuildFor,
} from "#engine/configuration";
import { type SkiShape, shapeAtLength } from "#engine/geometry";
import { plateMarginMm } from "#lib/engine/configuration/base-and-mount";
import { designedProfile } from "#lib/engine/configuration/designed-profile";
import { sheetLayer } from "#lib/engine/configuration/layer-materials";
import { stripColumns } from "#lib/engine/configuration/strip-columns";
import { catalog, solved, specOf } from "../demo-catalog";

const { build } = catalog;
const { print } = build.rules;
const model = (id: string) => {
  const found = build.models.find((each) => each.id === id);
  if (!found) throw new Error(`no ${id}`);
  return found;
};
const midlow = model("midlow-95");
const shape = shapeAtLength(midlow.shape, 178);
const built = (choices: SpecChoices, shop: BuildCatalog = build) => {
  const ski = skiBuildFor(specOf(choices), shop);
  if (!ski.ok) throw new Error(JSON.stringify(ski.refusal));
  return ski.value;
};
function clashes(choices: SpecChoices, shop = build) {
  const spec = specOf(choices);
  const resolved = resolveSpec(spec, shop);
  if (!resolved.ok) throw new Error(JSON.stringify(resolved.refusal));
  return conflictsOf(spec, resolved.value, shop);
}

describe("completeSpec", () => {
  const defaults = {
    model: "midlow-84",
    lengthCm: 174,
    flexRatio: 1.1,
    finish: { baseBevelDeg: 0.7, sideAngleDeg: 3, detuneTipMm: 1, detuneTailMm: 2, structure: "C" },
    mount: { offsetMm: 5, bindingTrackMm: 300 },
  } as const;

  it("takes what stands when nothing was chosen: the model's own core and graphic, and the first colour", () => {
    const spec = completeSpec({}, defaults, build);
    const colour = build.baseColours[0]?.id;
    expect(spec).toEqual({
      ok: true,
      value: {
        model: "midlow-84",
        lengthCm: 174,
        core: model("midlow-84").core.blend,
        reinforcements: [],
        flexRatio: 1.1,
        graphic: { kind: "house", house: "contour-lines", layout: "continuing", windows: [] },
        base: { left: colour, right: colour, inlay: "none" },
        mount: { offsetMm: 5, bindingTrackMm: 300 },
        finish: defaults.finish,
        tipTailProtectors: false,
      },
    });
  });

  it("takes every choice before it, a mount in part, and each reinforcement once", () => {
    const [first, second] = build.baseColours;
    const choices: SpecChoices = {
      model: "midlow-95",
      lengthCm: 186,
      core: "aspen-ash-window",
      reinforcements: ["flax", "basalt", "flax"],
      flexRatio: 0.9,
      graphic: { kind: "own", layout: "mirrored", windows: [] },
      base: { left: second?.id ?? "", right: first?.id ?? "", inlay: "none" },
      mount: { offsetMm: -10 },
      finish: { ...defaults.finish, structure: "F" },
      tipTailProtectors: true,
    };
    const spec = completeSpec(choices, defaults, build);
    expect(spec).toEqual({
      ok: true,
      value: { ...choices, reinforcements: ["flax", "basalt"], mount: { offsetMm: -10, bindingTrackMm: 300 } },
    });
  });

  it.each<[string, SpecChoices, object]>([
    ["model", { model: "x" }, { code: "unknown-item", path: "model", kind: "model", id: "x" }],
    ["length", { lengthCm: 175 }, { code: "length-not-offered", path: "lengthCm", lengthCm: 175, model: "midlow-84" }],
    ["core", { core: "x" }, { path: "core", kind: "core", id: "x" }],
    [
      "second reinforcement",
      { reinforcements: ["flax", "x"] },
      { path: "reinforcements.1", kind: "reinforcement", id: "x" },
    ],
    ["left base", { base: { left: "x", right: "black", inlay: "none" } }, { path: "base.left", kind: "base", id: "x" }],
    [
      "right base",
      { base: { left: "black", right: "x", inlay: "none" } },
      { path: "base.right", kind: "base", id: "x" },
    ],
    [
      "graphic",
      { graphic: { kind: "house", house: "x", layout: "same", windows: [] } },
      { path: "graphic.house", kind: "graphic" },
    ],
  ])("refuses an unknown %s by its place", (_what, choices, refusal) => {
    expect(completeSpec(choices, defaults, build)).toMatchObject({ ok: false, refusal });
  });
});

describe("a build from its rules", () => {
  it("has wood between its spacers, sidewalls and edges as the rules say", () => {
    const ski = built({});
    const { spacers, sidewall, edge } = build.rules;
    expect([ski.coreFromMm, ski.coreToMm]).toEqual([spacers.tipMm, 1780 - spacers.tailMm]);
    expect(ski.sidewall.widthMm).toBe(sidewall.widthMm);
    expect([ski.edge.widthMm, ski.edge.heightMm, ski.edge.anchorMassFactor]).toEqual([
      edge.widthMm,
      edge.heightMm,
      edge.anchorMassFactor,
    ]);
    // A partial wrap: from half the rule's surplus ahead of the shoulder at 175 to its margin past the tail's contact point,
    // where the 0.5 mm gauge stops behind the tangent point at 1780·0.94 (ISO 6289). A full one goes half round the ski.
    const contactMm = 1673.2 + 106.8 * Math.sqrt(0.5 / 18);
    const span = { fromMm: 175 - edge.beyondSidecutMm / 2, toMm: contactMm + (edge.pastContactMm ?? 0) };
    expect(ski.edge.span?.fromMm).toBeCloseTo(span.fromMm, 9);
    expect(ski.edge.span?.toMm).toBeCloseTo(span.toMm, 9);
    expect(ski.edge.lengthMm).toBeCloseTo(span.toMm - span.fromMm, 9);
    const full = { ...build, models: [{ ...midlow, shape: { ...midlow.shape, edgeWrap: "full" as const } }] };
    const around = built({}, full).edge.lengthMm;
    // Longer than the ski, by less than its widest half width at each end.
    expect(around).toBeGreaterThan(1780);
    expect(around).toBeLessThan(1780 + 132);
  });

  it("weighs resin on two faces, glue in six joints and rubber on two edges besides", () => {
    const ski = built({});
    const { rules, materials } = build;
    const rubber = materials.sheets.find((each) => each.id === rules.edgeRubber.material);
    // Plan area of the Midlow 95 at 178 from its printed table, m²: a few g/m² of the last digit do not matter here.
    const [resinOnly, glueOnly, rubberOnly] = (["resinAtFacesGM2", "coreGlueGM2", "edgeRubber"] as const).map(
      (kept) => {
        const off = {
          resinAtFacesGM2: kept === "resinAtFacesGM2" ? rules.resinAtFacesGM2 : 0,
          coreGlueGM2: kept === "coreGlueGM2" ? rules.coreGlueGM2 : 0,
          edgeRubber: { ...rules.edgeRubber, widthMm: kept === "edgeRubber" ? rules.edgeRubber.widthMm : 0 },
        };
        return built({}, { ...build, rules: { ...rules, ...off } }).extraMassG;
      },
    );
    const coreMm = ski.coreToMm - ski.coreFromMm;
    // The blank is 60 mm longer and 2 mm higher than the core.
    expect(glueOnly).toBeCloseTo((6 * rules.coreGlueGM2 * (coreMm + 60) * (midlow.core.midMm + 2)) / 1e6, 9);
    expect(rubberOnly).toBeCloseTo(
      (2 * ski.edge.lengthMm * rules.edgeRubber.widthMm * rules.edgeRubber.thicknessMm * (rubber?.densityKgM3 ?? 0)) /
        1e6,
      9,
    );
    // Both faces of about 0.19 m².
    expect((resinOnly ?? 0) / (2 * rules.resinAtFacesGM2)).toBeGreaterThan(0.17);
    expect((resinOnly ?? 0) / (2 * rules.resinAtFacesGM2)).toBeLessThan(0.21);
    expect(ski.extraMassG).toBeCloseTo((resinOnly ?? 0) + (glueOnly ?? 0) + (rubberOnly ?? 0), 9);
  });

  it("lays mat and plate round the order's mount line", () => {
    const { plate, mat } = build.rules;
    const ski = built({ mount: { offsetMm: -20 } });
    const mount = shape.mountFromTipMm + 20;
    expect(ski.mountFromTipMm).toBe(mount);
    expect(ski.springTest?.loadMm).toBe(mount);
    expect(ski.plate).toMatchObject({
      centreMm: mount,
      lengthMm: plate.lengthMm,
      widthMm: 95 - plate.widthInsetMm,
      rubberMm: plate.rubberMm,
    });
    const layer = ski.layers.find((each) => each.role === "mat");
    expect(layer).toMatchObject({
      extent: {
        kind: "zone",
        fromMountMm: -mat.lengthMm / 2,
        toMountMm: mat.lengthMm / 2,
        widthMm: 95 + mat.widthExtraMm,
      },
    });
  });

  it("is pressed where the shop's bench is set to, and only between its supports", () => {
    const set = (springTest: BuildCatalog["rules"]["springTest"]) =>
      built({}, { ...build, rules: { ...build.rules, springTest } }).springTest;
    expect(set({ supports: "shoulder-heel", load: "mount" })).toEqual({
      frontSupportMm: 175,
      rearSupportMm: 1636,
      loadMm: shape.mountFromTipMm,
    });
    expect(set({ supports: "shoulder-heel", load: "middle" })?.loadMm).toBe((175 + 1636) / 2);
    expect(set({ supports: { frontFromTipMm: 250, rearFromTailMm: 200 }, load: "middle" })).toEqual({
      frontSupportMm: 250,
      rearSupportMm: 1580,
      loadMm: 915,
    });
    const mount = shape.mountFromTipMm;
    for (const supports of [
      { frontFromTipMm: mount, rearFromTailMm: 200 },
      { frontFromTipMm: 250, rearFromTailMm: 1780 - mount },
    ])
      expect(() => set({ supports, load: "mount" })).toThrow(`a load at ${mount} mm is not between`);
  });

  it("is refused by its first unknown item", () => {
    expect(skiBuildFor({ ...specOf(), reinforcements: ["flax", "x"] }, build)).toMatchObject({
      ok: false,
      refusal: { path: "reinforcements.1" },
    });
    expect(skiBuildFor({ ...specOf(), model: "x" }, build)).toMatchObject({ ok: false, refusal: { path: "model" } });
    expect(() => referenceBuildFor({ ...midlow, core: { ...midlow.core, blend: "x" } }, build)).toThrow(/no blend "x"/);
  });

  it("places seven strips from the middle out: half a strip, then whole ones", () => {
    const blend = build.blends.find((each) => each.id === midlow.core.blend);
    if (!blend) throw new Error("no blend");
    const columns = stripColumns(blend, 20, build);
    expect(columns.map(({ position, innerMm, outerMm }) => [position, innerMm, outerMm])).toEqual([
      ["C", 0, 10],
      ["I", 10, 30],
      ["M", 30, 50],
      ["O", 50, 70],
    ]);
    for (const { position, axialModulusMpa, shearModulusMpa, densityKgM3 } of columns) {
      const wood = build.materials.woods.find((each) => each.id === blend.strips[position]);
      if (!wood) throw new Error(position);
      const axial = wood.bendingModulusMpa * build.rules.axialOverBendingModulus;
      expect([axialModulusMpa, shearModulusMpa, densityKgM3]).toEqual([
        axial,
        axial / wood.modulusToShearRatio,
        wood.densityKgM3,
      ]);
    }
  });

  it("takes an isotropic sheet's Poisson ratio from its moduli: E/2G − 1, 70 and 26.9 GPa give 0.3011", () => {
    const layer = sheetLayer({
      id: "a",
      label: "A",
      modulusMpa: 70_000,
      shearModulusMpa: 26_900,
      densityKgM3: 2800,
      isOpaque: true,
      source: "",
    });
    expect(layer).toEqual({
      id: "a",
      label: "A",
      exMpa: 70_000,
      eyMpa: 70_000,
      gxyMpa: 26_900,
      nuXy: expect.closeTo(0.3011, 4),
      densityKgM3: 2800,
    });
  });

  it("the designed core is level over its spacers and under the foot and curves between", () => {
    const core = { ...midlow.core, tipMm: 2, midMm: 10, tailMm: 3, flatMm: 200, taperPower: 2 };
    const { stations } = designedProfile({ ...midlow, core }, shape, build.rules);
    const { tipMm, tailMm } = build.rules.spacers;
    const mount = shape.mountFromTipMm;
    const at = (x: number) => stations.find((station) => Math.abs(station.xMm - x) < 1e-6)?.thicknessMm;
    expect([0, tipMm, mount - 100, mount + 100, 1780 - tailMm, 1780].map(at)).toEqual([2, 2, 10, 10, 3, 3]);
    // Half-way up a taper of power 2 it has three quarters of the rise.
    expect(at(tipMm + (mount - 100 - tipMm) / 2)).toBeCloseTo(2 + 8 * 0.75, 9);
    expect(at(1780 - tailMm - (1780 - tailMm - mount - 100) / 2)).toBeCloseTo(3 + 7 * 0.75, 9);
    expect(stations.map((s) => s.xMm)).toEqual(stations.map((s) => s.xMm).toSorted((a, b) => a - b));
    expect(stations).toHaveLength(2 * 25 + 2);
  });
});

describe("plate and mount", () => {
  const rules = { ...build.rules, plate: { ...build.rules.plate, lengthMm: 480, minMarginMm: 25 } };
  const shop = { ...build, rules };

  it("keeps (plate − track)/2 less what the line has moved", () => {
    const margin = (bindingTrackMm: number, offsetMm: number, pocketOffsetMm: number) =>
      plateMarginMm({ bindingTrackMm, offsetMm, pocketOffsetMm }, rules);
    expect(margin(410, 0, 0)).toBe(35);
    expect(margin(410, 10, 0)).toBe(25);
    expect(margin(410, -10, 5)).toBe(20);
  });

  it("a track clashes as soon as less than the margin is left: 430 leaves 25, 431 leaves 24.5", () => {
    const codes = (bindingTrackMm: number) =>
      clashes({ mount: { offsetMm: 30, bindingTrackMm } }, shop).map((each) => each.code);
    expect(codes(430)).toEqual([]);
    expect(codes(431)).toEqual(["plate-margin"]);
  });
});

describe("clashes and their ways out", () => {
  it("a retired model shows the two nearest active waists, with their own length and core", () => {
    const [conflict] = clashes({ model: "skeward-90" });
    const near = model("midlow-95");
    expect(conflict?.ways[0]).toMatchObject({
      code: "active-model-midlow-95",
      choices: { lengthCm: near.shape.refLengthCm, core: near.core.blend },
    });
    const retired = {
      ...build,
      models: build.models.map((each) => (each.id === "upleigh-92" ? { ...each, state: "retired" as const } : each)),
    };
    // The only touring model: nothing near it is for touring.
    const [touring] = clashes({ model: "upleigh-92" }, retired);
    expect(touring).toMatchObject({ code: "model-retired", ways: [] });
  });

  it("without letters each base keeps its own colour", () => {
    const [conflict] = clashes({ base: { left: "black", right: "yellow", inlay: "counterchange" } });
    expect(conflict?.ways).toMatchObject([{ choices: { base: { left: "black", right: "yellow", inlay: "none" } } }]);
    const [same] = clashes({ base: { left: "yellow", right: "yellow", inlay: "counterchange", inlayText: "A" } });
    expect(same).toMatchObject({ path: "base.right", colour: "yellow" });
  });

  it("of two windows the wrong one goes", () => {
    const small = { fromXMm: 600, toXMm: 610, halfWidthMm: 15 };
    const wide = { fromXMm: 900, toXMm: 1000, halfWidthMm: 38 };
    const good = { fromXMm: 400, toXMm: 500, halfWidthMm: 15 };
    const graphic = {
      kind: "house",
      house: build.houseGraphics[0]?.id ?? "",
      layout: "same",
      windows: [good, small, wide],
    } as const;
    const [first, second] = clashes({ core: "aspen-ash-window", graphic });
    expect(first).toMatchObject({
      code: "window-too-small",
      path: "graphic.windows.1",
      ways: [{ choices: { graphic: { windows: [good, wide] } } }],
    });
    expect(second).toMatchObject({ code: "window-near-edge", path: "graphic.windows.2" });
    expect(second?.ways.map((way) => way.choices.graphic?.windows)).toEqual([
      [good, small, { ...wide, halfWidthMm: 37 }],
      [good, small],
    ]);
  });

  it("letters need a text that is more than spaces, and two colours only where they change sides", () => {
    const codes = (base: NonNullable<SpecChoices["base"]>) => clashes({ base }).map((each) => each.code);
    expect(codes({ left: "black", right: "black", inlay: "none" })).toEqual([]);
    expect(codes({ left: "black", right: "yellow", inlay: "counterchange", inlayText: "  " })).toEqual([
      "inlay-needs-text",
    ]);
    expect(codes({ left: "black", right: "black", inlay: "counterchange", inlayText: "A" })).toEqual([
      "counterchange-needs-two-colours",
    ]);
  });

  const window = (fromXMm: number, toXMm: number, halfWidthMm: number) =>
    clashes({
      core: "aspen-ash-window",
      graphic: {
        kind: "house",
        house: build.houseGraphics[0]?.id ?? "",
        layout: "same",
        windows: [{ fromXMm, toXMm, halfWidthMm }],
      },
    });

  it("a window is at least 20 mm either way", () => {
    expect(window(600, 620, 10)).toEqual([]);
    expect(window(600, 619, 10)).toMatchObject([
      { code: "window-too-small", lengthMm: 19, widthMm: 20, leastMm: 20, path: "graphic.windows.0" },
    ]);
    expect(window(600, 620, 9.9)).toMatchObject([{ code: "window-too-small", widthMm: 19.8 }]);
  });

  it("a window keeps 10 mm from the outline at its narrowest: at the waist, or at its end nearer to it", () => {
    const { waistFromTipMm: waist } = shape;
    expect(window(waist - 50, waist + 50, 37.5)).toEqual([]);
    expect(window(waist - 50, waist + 50, 37.6)).toMatchObject([
      {
        code: "window-near-edge",
        widthMm: 75.2,
        mostMm: 75,
        clearMm: 10,
        ways: [{ code: "narrower-window", label: "A window 75 mm wide" }, { code: "no-window" }],
      },
    ]);
    // Ahead of the waist the rear end is the narrowest: half width there by the circle, W/2 + R − √(R² − x²).
    const half = (x: number) => 47.5 + shape.sidecutRadiusMm - Math.sqrt(shape.sidecutRadiusMm ** 2 - x ** 2);
    const [ahead] = window(waist - 300, waist - 200, 47.5);
    expect(ahead).toMatchObject({ mostMm: expect.closeTo(2 * (half(200) - 10), 6) });
    const [behind] = window(waist + 100, waist + 300, 47.5);
    expect(behind).toMatchObject({ mostMm: expect.closeTo(2 * (half(100) - 10), 6) });
    expect(behind?.ways[0]?.choices.graphic?.windows[0]?.halfWidthMm).toBe(Math.floor(half(100) - 10));
  });

  it("a window off the ski has no room, and only leaving it out helps", () => {
    for (const [from, to] of [
      [-1, 100],
      [1700, 1781],
    ] as const) {
      const [conflict] = window(from, to, 10);
      expect(conflict).toMatchObject({ code: "window-near-edge", mostMm: 0 });
      expect(conflict?.ways.map((way) => way.code)).toEqual(["no-window"]);
      expect(conflict?.ways[0]?.choices.graphic?.windows).toEqual([]);
    }
  });
});

describe("pictures", () => {
  const canvas = { lengthMm: 1000, widthMm: 100 };
  const photo = { widthPx: 2000, heightPx: 400 };
  const at = (change: Partial<ReturnType<typeof fillingPlacement>>) =>
    graphicResolution(photo, canvas, print, { centreXMm: 500, centreYMm: 0, mmPerPixel: 0.5, angleDeg: 0, ...change });

  it("fill the canvas by their tighter side", () => {
    expect(fillingPlacement(photo, canvas)).toEqual({ centreXMm: 500, centreYMm: 0, mmPerPixel: 0.5, angleDeg: 0 });
    expect(fillingPlacement({ widthPx: 2000, heightPx: 100 }, canvas).mmPerPixel).toBe(1);
  });

  it("print the part that lies on the canvas: 2000 × 200 px of it at 0.5 mm, 200 × 400 turned by a right angle", () => {
    expect(at({}).crop).toEqual({ widthPx: 2000, heightPx: 200 });
    const turned = at({ angleDeg: 90 }).crop;
    expect(turned.widthPx).toBeCloseTo(200, 6);
    expect(turned.heightPx).toBe(400);
    // At 45° the canvas is (1000 + 100)/√2 long either way as the picture sees it.
    expect(at({ angleDeg: 45, mmPerPixel: 4 }).crop.widthPx).toBeCloseTo(1100 / Math.SQRT2 / 4, 6);
  });

  it("cover it up to its very edge and not beyond", () => {
    expect(at({}).coversCanvas).toBe(true);
    expect(at({ centreXMm: 500.001 }).coversCanvas).toBe(false);
    expect(at({ centreYMm: 50 }).coversCanvas).toBe(true);
    expect(at({ centreYMm: -50.001 }).coversCanvas).toBe(false);
    expect(at({ angleDeg: 180 }).coversCanvas).toBe(true);
    expect(at({ angleDeg: 90, mmPerPixel: 2.5 }).coversCanvas).toBe(true);
    expect(at({ angleDeg: 90, mmPerPixel: 2.49 }).coversCanvas).toBe(false);
    expect(at({ angleDeg: 10 }).coversCanvas).toBe(false);
  });

  it("have a size and a scale", () => {
    expect(() => graphicResolution({ widthPx: 5, heightPx: 0 }, canvas, print)).toThrow(/5 × 0 px/);
    expect(() => at({ mmPerPixel: 0 })).toThrow(/mmPerPixel: 0/);
  });

  it("lie on two skis as their layout says, left ski first", () => {
    const plain = { isReflected: false, pictureAtYMm: 0, version: "first" };
    const wide: SkiShape = { ...shape, shoulderWidthMm: 120, heelWidthMm: 130 };
    const rules = { ...print, pairGapMm: 50, bleedMm: 12 };
    expect(pairArt("same", wide, rules)).toEqual({ left: plain, right: plain });
    expect(pairArt("mirrored", wide, rules)).toEqual({ left: plain, right: { ...plain, isReflected: true } });
    for (const layout of ["alternate", "independent"] as const)
      expect(pairArt(layout, wide, rules)).toEqual({ left: plain, right: { ...plain, version: "second" } });
    // The widest is 130: centre lines 180 mm apart, the picture's middle half-way.
    expect(pairArt("continuing", wide, rules)).toEqual({
      left: { ...plain, pictureAtYMm: 90 },
      right: { ...plain, pictureAtYMm: -90 },
    });
    expect(printCanvas("mirrored", wide, rules)).toEqual({ lengthMm: 1780, widthMm: 154 });
    expect(printCanvas("continuing", wide, rules)).toEqual({ lengthMm: 1780, widthMm: 334 });
  });
});

describe("lettering", () => {
  // One letter takes 18 mm at 20 mm of height; the binding hides 160 mm to either side of the mount line at 965.
  const rules = { ...print, letterAdvance: 0.9, bindingZoneMm: 320, safeMm: 6, leastCapHeightMm: 8 };
  const text = (xMm: number, words = "AB C", capHeightMm = 20) => ({ text: words, xMm, capHeightMm });

  it("runs from its middle both ways, and shows whole letters only", () => {
    expect(letteringFit(text(500), shape, 965, rules)).toEqual({
      fromXMm: 464,
      toXMm: 536,
      hiddenLetters: 0,
      letters: 3,
      clearXMm: null,
    });
    // A, B and C have their middles at x − 27, x − 9 and x + 27; hidden is what lies beyond 805.
    expect(letteringFit(text(779), shape, 965, rules).hiddenLetters).toBe(1);
    expect(letteringFit(text(778), shape, 965, rules).hiddenLetters).toBe(0);
    expect(letteringFit(text(815), shape, 965, rules).hiddenLetters).toBe(2);
    expect(letteringFit(text(965), shape, 965, rules).hiddenLetters).toBe(3);
  });

  it("moves to the nearer side of the binding: middle 160 + 36 mm from the mount line", () => {
    expect(letteringFit(text(960), shape, 965, rules).clearXMm).toBe(965 - 196);
    expect(letteringFit(text(970), shape, 965, rules).clearXMm).toBe(965 + 196);
  });

  it("moves only where it lies on the ski, 6 mm inside", () => {
    // 30 letters of 18 mm: 540 mm long; behind the binding they would end at 1665, ahead of it they begin at 265.
    const long = letteringFit(text(970, "A".repeat(30)), shape, 965, rules);
    expect(long.clearXMm).toBe(965 + 160 + 270);
    // 40 letters: 720 mm; behind they would end beyond the ski's 1780 mm.
    expect(letteringFit(text(970, "A".repeat(40)), shape, 965, rules).clearXMm).toBe(965 - 160 - 360);
    expect(letteringFit(text(970, "A".repeat(60)), shape, 965, rules).clearXMm).toBeNull();
    // Higher than the ski is wide.
    expect(letteringFit(text(970, "A", 130), shape, 965, rules).clearXMm).toBeNull();
  });

  const warn = (change: ReturnType<typeof text>, offsetMm = 0) =>
    letteringWarnings(
      { ...specOf(), mount: { offsetMm }, graphic: { kind: "house", layout: "same", windows: [], text: change } },
      shape,
      rules,
    );

  it("tells how far and which way to move", () => {
    const mount = shape.mountFromTipMm;
    expect(warn(text(mount - 6))).toMatchObject([
      {
        code: "letters-hidden",
        hiddenLetters: 3,
        letters: 3,
        ways: [{ label: "Move the text 190 mm towards the tip", choices: { graphic: { text: { xMm: mount - 196 } } } }],
      },
    ]);
    expect(warn(text(mount + 6))[0]?.ways[0]?.label).toBe("Move the text 190 mm towards the tail");
    expect(warn(text(mount, "A".repeat(60)))[0]?.ways).toEqual([]);
    // The binding moves with the mount line.
    expect(warn(text(mount - 201), 41)).toMatchObject([{ code: "letters-hidden" }]);
    expect(warn(text(mount - 201))).toEqual([]);
  });

  it("tells of letters under 8 mm, and nothing of an empty text", () => {
    expect(warn(text(400, "A", 8))).toEqual([]);
    expect(warn(text(400, "A", 7.9))).toMatchObject([
      {
        code: "text-too-small",
        capHeightMm: 7.9,
        leastMm: 8,
        ways: [{ choices: { graphic: { text: { capHeightMm: 8 } } } }],
      },
    ]);
    expect(warn(text(400, "  ", 1))).toEqual([]);
  });
});

describe("what was worked out once", () => {
  it("is kept for the same stiffness and not taken for another", () => {
    const core = (choices: SpecChoices, lengthCm = 178) => solved({ ...specOf(choices), lengthCm }).core;
    expect(core({})).toBe(core({ tipTailProtectors: true }));
    // The boot's floor lies where the boot stands; where there is none the mount line does not touch the core.
    const { bench: _bench, ...rules } = build.rules;
    const bare = { ...build, rules };
    expect(solved(specOf({ mount: { offsetMm: 10 } }), bare).core).toBe(solved(specOf(), bare).core);
    const others = [
      core({ mount: { offsetMm: 10 } }),
      core({ flexRatio: 1.01 }),
      core({ core: "aspen-ash-window" }),
      core({ reinforcements: ["flax"] }),
      core({}, 186),
      core({ model: "midlow-84" }, 174),
    ];
    for (const other of others) expect(other).not.toBe(core({}));
  });

  it("gives up the oldest of more than thirty-two", () => {
    const shop = { ...build };
    const at = (i: number) => solved(specOf({ flexRatio: 0.8 + i / 200 }), shop).core;
    const first = at(0);
    const second = at(1);
    for (let i = 2; i < 32; i++) at(i);
    expect(at(0)).toBe(first);
    at(32);
    expect(at(1)).toBe(second);
    expect(at(0)).not.toBe(first);
  });
});
