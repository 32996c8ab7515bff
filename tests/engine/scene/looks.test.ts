/** What is seen of a pair, gathered from its specification: every model of the demo, and what stands until something is chosen. */
import { describe, expect, it } from "vitest";
import { completeSpec, type Model } from "#engine/configuration";
import { halfOutline } from "#engine/geometry";
import { modelLook, pairLook, topOutline, withThickness, woodLook } from "#engine/scene";
import { catalog, specOf } from "../demo-catalog";

const { build } = catalog;
const models = build.models.map((model) => [model.id, model] as const);
const finish = { baseBevelDeg: 1, sideAngleDeg: 2, detuneTipMm: 50, detuneTailMm: 50, structure: "M" } as const;
const graphicOf = (model: Model, catalogue = build) => {
  const lengthCm = model.shape.refLengthCm;
  const spec = completeSpec({}, { model: model.id, lengthCm, flexRatio: 1, finish, mount: { offsetMm: 0 } }, catalogue);
  return spec.ok ? spec.value.graphic : spec.refusal;
};
const numbers = (d: string) => (d.match(/-?[\d.]+/g) ?? []).map(Number);

describe("the graphic that stands until another is chosen", () => {
  it.each([
    // content/catalog/models.json
    ["kerfline-68", "ice-facets"],
    ["midlow-84", "contour-lines"],
    ["midlow-95", "autumn-larch"],
    ["ridgefold-106", "rock-strata"],
  ])("of %s is %s, composed across the pair", (id, house) => {
    const model = build.models.find((each) => each.id === id);
    expect(model && graphicOf(model)).toEqual({ kind: "house", house, layout: "continuing", windows: [] });
  });

  it("is the first of a release whose models name none, the same on both skis", () => {
    for (const [, { houseGraphic: _, ...model }] of models) {
      const earlier = { ...build, models: [model] };
      expect(graphicOf(model, earlier)).toEqual({
        kind: "house",
        house: build.houseGraphics[0]?.id,
        layout: "same",
        windows: [],
      });
    }
    const [[, first] = []] = models;
    expect(first && graphicOf(first, { ...build, models: [{ ...first, houseGraphic: "gone" }] })).toMatchObject({
      house: build.houseGraphics[0]?.id,
      layout: "same",
    });
    expect(first && graphicOf(first, { ...build, houseGraphics: [] })).toEqual({
      kind: "house",
      layout: "same",
      windows: [],
    });
  });
});

describe("every model of the demo", () => {
  it.each(models)("%s is seen with its own measures, strips, base and graphic", (_, model) => {
    for (const { lengthCm } of model.lengths) {
      const look = modelLook(model, build, lengthCm);
      expect(look?.shape.lengthMm).toBe(10 * lengthCm);
      expect(look?.graphic.house?.id).toBe(model.houseGraphic);
      expect(look?.strips.length).toBeGreaterThan(2);
      // Strips lie side by side from the centre line out.
      expect(look?.strips[0]?.innerMm).toBeLessThanOrEqual(0);
      look?.strips.slice(1).forEach((strip, i) => {
        expect(strip.innerMm).toBeCloseTo(look.strips[i]?.outerMm ?? Number.NaN, 9);
      });
      // The outermost reaches past the widest place.
      expect(look?.strips.at(-1)?.outerMm).toBeGreaterThan(0.35 * (look?.shape.shoulderWidthMm ?? 0));
      const { fromMm = 0, toMm = 0 } = look?.edge ?? {};
      expect(0 <= fromMm && fromMm < toMm && toMm <= 10 * lengthCm).toBe(true);
      // A ski is some 4 mm thick at its ends and some 12 under the boot.
      const thick = look?.thickness.map((each) => each.thicknessMm) ?? [];
      expect(Math.min(...thick)).toBeGreaterThan(2);
      expect(Math.max(...thick)).toBeLessThan(25);
      expect(Math.abs((look?.mountMm ?? 0) - 0.54 * 10 * lengthCm)).toBeLessThan(150);
    }
    expect(modelLook(model, build, model.shape.refLengthCm + 1)).toBeNull();
  });

  it.each(models)("%s has a topsheet narrower than the base by what both walls lean", (_, model) => {
    const look = modelLook(model, build);
    if (!look) throw new Error("no drawing");
    const points = numbers(topOutline(look));
    const right = points
      .slice(0, points.length / 2)
      .flatMap((x, i, all) => (i % 2 === 0 ? [{ x, y: all[i + 1] ?? 0 }] : []));
    const thickAt = (xMm: number) => {
      const next = look.thickness.findIndex((each) => each.xMm >= xMm);
      const [a, b] = [look.thickness[Math.max(0, next - 1)], look.thickness[next]];
      if (!a || !b || a.xMm === b.xMm) return b?.thicknessMm ?? 0;
      return a.thicknessMm + ((b.thicknessMm - a.thicknessMm) * (xMm - a.xMm)) / (b.xMm - a.xMm);
    };
    const stations = halfOutline(look.shape, { endSegments: 28, arcStepMm: 40 });
    expect(right).toHaveLength(stations.length);
    stations.forEach(({ xMm, halfWidthMm }, i) => {
      // A right triangle on each side: as high as the wall leans, its foot the tangent of the bevel.
      const lean = Math.max(0, thickAt(xMm) - look.wall.uprightMm) * Math.tan((look.wall.bevelDeg * Math.PI) / 180);
      expect(Math.abs((right[i]?.x ?? 0) - Math.max(0, halfWidthMm - lean))).toBeLessThanOrEqual(0.051);
    });
  });
});

describe("a specification as it is seen", () => {
  it("has its bases, its letters where they are cut, and its mount line", () => {
    const [dark, light] = build.baseColours;
    const spec = specOf();
    const base = { left: dark?.id ?? "", right: light?.id ?? "", inlay: "counterchange", inlayText: "TY" } as const;
    const look = pairLook({ ...spec, base, mount: { offsetMm: 15 } }, build);
    expect(look?.base).toMatchObject({ left: dark?.hex, right: light?.hex, letters: { text: "TY" } });
    expect(pairLook({ ...spec, base: { ...base, inlay: "none" } }, build)?.base.letters).toBeUndefined();
    // Plus is towards the tip.
    expect((pairLook(spec, build)?.mountMm ?? 0) - (look?.mountMm ?? 0)).toBe(15);
    expect(pairLook({ ...spec, base: { ...spec.base, left: "none" } }, build)?.base.left).toBe("#23262a");
    expect(pairLook({ ...spec, model: "none" }, build)).toBeNull();
    expect(pairLook({ ...spec, core: "none" }, build)?.strips).toEqual([]);
  });

  it("shows a picture only where it is the skier's own, filling the print until it is placed", () => {
    const spec = specOf();
    const artwork = { id: "art-1", widthPx: 4000, heightPx: 1000, sha256: "x" };
    const placement = { centreXMm: 1, centreYMm: 2, mmPerPixel: 3, angleDeg: 4 };
    const own = { kind: "own", layout: "same", windows: [], artwork, placement } as const;
    const seen = (graphic: Partial<typeof spec.graphic>) =>
      pairLook({ ...spec, graphic: { ...spec.graphic, ...graphic } }, build)?.graphic;
    expect(seen(own)).toMatchObject({ house: undefined, artwork: { id: "art-1", copies: [{ placement }] } });
    expect(seen({ ...own, kind: "house" })).toMatchObject({ artwork: undefined, house: { id: spec.graphic.house } });
    const { placement: _, ...unplaced } = own;
    const { graphic } = pairLook({ ...spec, graphic: unplaced }, build) ?? {};
    const wideMm = (graphic?.artwork?.copies[0]?.placement.mmPerPixel ?? 0) * 4000;
    expect(wideMm).toBeGreaterThanOrEqual(10 * spec.lengthCm);
  });

  it("takes the thickness that was solved for it", () => {
    const look = pairLook(specOf(), build);
    if (!look) throw new Error("no drawing");
    const stations = [0, 1780].map((xMm) => ({ xMm, thicknessMm: 9, more: true }));
    expect(withThickness(look, stations).thickness).toEqual([0, 1780].map((xMm) => ({ xMm, thicknessMm: 9 })));
    expect(withThickness(look, undefined)).toBe(look);
    expect(withThickness(look, stations.slice(1))).toBe(look);
  });

  it("draws a wood without a look of its own by its density: dark above 500 kg/m³", () => {
    const [wood] = build.materials.woods;
    if (!wood) throw new Error("no wood");
    const { look, ...plain } = wood;
    expect(woodLook(wood)).toBe(look);
    const ground = (densityKgM3: number) => woodLook({ ...plain, densityKgM3 }).ground;
    expect([ground(500), ground(501)]).toEqual(["#d9b988", "#b98d54"]);
    expect(woodLook(undefined).ground).toBe("#d9b988");
  });
});
