/** Resin by wetted faces, worked by hand for the reference pair; films and margin are the shop's (common practice, no source). */
import { describe, expect, it } from "vitest";
import type { SpecChoices } from "#engine/configuration";
import { halfWidthAt, measure } from "#engine/geometry";
import { type PartsRules, partsFor } from "#engine/parts";
import { catalog, solved, specOf } from "../demo-catalog";

function batch(choices: SpecChoices = {}, parts: PartsRules = catalog.parts) {
  const spec = specOf(choices);
  return partsFor(spec, solved(spec), catalog.build, parts).resin;
}

const withFaces = (films: object): PartsRules => {
  const { resin } = catalog.parts;
  if (!("faces" in resin)) throw new Error("the demo reckons by faces");
  return { ...catalog.parts, resin: { ...resin, faces: { ...resin.faces, ...films } } };
};
const dry = { woodGM2: 0, plasticGM2: 0, metalGM2: 0, rubberGM2: 0, patchGM2: 0, marginPercent: 0 };
const shape = solved(specOf()).build.shape;
const area = measure(shape).planAreaMm2;

describe("resin", () => {
  it("cloth holds what it weighs cured beyond its dry weight", () => {
    // 2 · 0.656 mm · 1,776 kg/m³ − 750 g/m² over the outline, and 0.346 · 1,875 − 450 over 600 × 105 mm; two skis.
    const ski = (2 * area * (0.656 * 1776 - 750) + 600 * 105 * (0.346 * 1875 - 450)) / 1e6;
    expect(batch({}, withFaces(dry)).stays?.inClothG).toBeCloseTo(2 * ski, 6);
    expect(batch({}, withFaces(dry)).stays?.onFacesG).toBe(0);
  });

  // Wood between walls of 7 mm from 180 to 1,660 mm, summed by millimetres.
  const wood = Array.from({ length: 1480 }, (_, i) => 2 * (halfWidthAt(shape, 180.5 + i) - 7)).reduce(
    (a, b) => a + b,
    0,
  );
  const steelMm = solved(specOf()).build.edge.lengthMm;
  const steel = 2 * steelMm * 2;

  it.each([
    ["wood", { woodGM2: 100 }, 2 * wood],
    // Base and topsheet one face, walls and spacers two.
    ["plastic", { plasticGM2: 100 }, area - steel + area + 2 * (area - wood)],
    // Plate two faces, steel one.
    ["metal", { metalGM2: 100 }, 2 * 480 * 77 + steel],
    // Plate rubber and the foils over edges and ends, two faces each.
    ["rubber", { rubberGM2: 100 }, 2 * (480 * 77 + (2 * steelMm + 300) * 20)],
  ])("%s: every face that is glued wet, both skis", (_, films, mm2) => {
    const onFacesG = batch({}, withFaces({ ...dry, ...films })).stays?.onFacesG ?? 0;
    expect(Math.abs(onFacesG / ((2 * mm2 * 100) / 1e6) - 1)).toBeLessThan(2e-4);
  });

  it("a metal pair adds four faces of metal and four of rubber a ski", () => {
    const grams = (films: object, choices: SpecChoices) =>
      batch(choices, withFaces({ ...dry, ...films })).stays?.onFacesG ?? 0;
    const added = (films: object) => grams(films, { reinforcements: ["metal-pair"] }) - grams(films, {});
    expect(added({ rubberGM2: 100 })).toBeCloseTo((2 * 4 * area * 100) / 1e6, 6);
    expect(
      Math.abs(added({ metalGM2: 100 }) / ((2 * 4 * (area - 2 * measure(shape).perimeterMm) * 100) / 1e6) - 1),
    ).toBeLessThan(1e-6);
  });

  it("the margin is the same on a plain and on a metal ski", () => {
    for (const choices of [{}, { model: "kerfline-68" }, { model: "upleigh-92", core: "paulownia-poplar" }]) {
      const { resinG, hardenerG, stays } = batch(choices);
      const netG = (stays?.inClothG ?? 0) + (stays?.onFacesG ?? 0);
      expect(Math.abs(100 * ((resinG + hardenerG) / netG - 1) - (stays?.marginPercent ?? 0))).toBeLessThan(0.3);
    }
  });

  it("a release that says nothing of faces is reckoned by its cloth and two faces of wood", () => {
    // Dry cloth 309.9 g a ski, faces 2 · 100 g/m² · 0.18768 m²: 2 · (0.62 · 309.9 + 37.5) · 1.333 = 612 g; 27 to 100 of it 165 g.
    const { system, hardenerPer100 } = catalog.parts.resin;
    const resin = { system, hardenerPer100, perDryFabric: 0.62, wettedFaces: 2, lossFactor: 1.333 };
    expect(batch({}, { ...catalog.parts, resin })).toEqual({ resinG: 612, hardenerG: 165, system });
  });
});
