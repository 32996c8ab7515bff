/**
 * Every line of the reference pair (Midlow 95 at 178 cm) and of its options, sizes worked by hand from the shop's allowances
 * (common practice, no source): 1,780 mm long, 132 mm wide at most, 95 at the waist, wood from 180 to 1,660 mm, steel 1,521 a side.
 */
import { describe, expect, it } from "vitest";
import { type BuildCatalog, type SpecChoices, solveSpec } from "#engine/configuration";
import { measure } from "#engine/geometry";
import { baseMaterial, baseUse, type PartLine, partsFor, serveFromRoll } from "#engine/parts";
import { catalog, solved, specOf } from "../demo-catalog";

const { materials } = catalog.build;
const ski = solved(specOf());
const { planAreaMm2: area, perimeterMm: perimeter, projectedLengthMm } = measure(ski.build.shape);
const coreMm = Math.max(...ski.core.profile.stations.map((station) => station.thicknessMm));
const sheet = (id: string) => materials.sheets.find((each) => each.id === id) ?? expect.fail(id);
const cloth = (id: string) => materials.fabrics.find((each) => each.id === id) ?? expect.fail(id);
const wood = (id: string) => materials.woods.find((each) => each.id === id) ?? expect.fail(id);
const near = (value: number) => expect.closeTo(value, 6);

function list(choices: SpecChoices = {}, build: BuildCatalog = catalog.build) {
  const spec = specOf(choices);
  const found = solveSpec(spec, build);
  if (!found.ok) throw new Error(found.refusal.code);
  return partsFor(spec, found.value, build, catalog.parts);
}
const part = (code: string, choices?: SpecChoices, build?: BuildCatalog) =>
  list(choices, build).lines.find((line) => line.code === code) ?? expect.fail(`no ${code}`);

/** Base and steel of the same ski with its edge all round. */
const fullWrap: BuildCatalog = {
  ...catalog.build,
  models: catalog.build.models.map((model) => ({ ...model, shape: { ...model.shape, edgeWrap: "full" as const } })),
};

const steel = sheet("steel");
const abs = sheet("abs");
const rubber = sheet("rubber");
const base = sheet("base");

describe("the reference pair, line by line", () => {
  const { lines, resin } = list();
  const blankMm = coreMm + 2;
  const [each, pair] = [
    (n: number) => ({ quantityLeft: n, quantityRight: n, quantityPair: 0 }),
    (n: number) => ({ quantityLeft: 0, quantityRight: 0, quantityPair: n }),
  ];
  const rect = (lengthMm: number, widthMm: number) => ({ lengthMm, widthMm, areaMm2: near(lengthMm * widthMm) });
  const stripG = (id: string) => near((1540 * 20.4 * blankMm * wood(id).densityKgM3) / 1e6);
  const blend = catalog.build.blends.find((one) => one.id === "aspen-ash") ?? expect.fail("no blend");
  const strip = (position: "C" | "I" | "M" | "O", n: number) => ({
    lengthMm: 1540,
    widthMm: near(20.4),
    thicknessMm: near(blankMm),
    netMassG: stripG(blend.strips[position]),
    material: wood(blend.strips[position]).label,
    cut: `1540 × 20.4 × ${blankMm.toFixed(1)} mm rough, 17.4 wide when planed`,
    ...each(n),
  });
  const g = (grams: number) => ({ netMassG: grams, ...pair(grams) });
  const foil = (lengthMm: number) => ({
    ...rect(lengthMm, 20),
    thicknessMm: 0.15,
    material: `${rubber.label}, 0.15 mm`,
    netMassG: near((lengthMm * 20 * 0.15 * rubber.densityKgM3) / 1e6),
    ...each(2),
  });
  const baseArea = area - 2 * 1556 * 2;
  const baseSheet = {
    lengthMm: 1820,
    widthMm: 152,
    thicknessMm: 1.3,
    areaMm2: near(baseArea),
    netMassG: near((baseArea * 1.3 * base.densityKgM3) / 1e6),
    cut: "outline 2 mm inside along the edges, from a blank 1820 × 152 mm",
  };
  const edge = {
    lengthMm: near(3112),
    widthMm: 2,
    thicknessMm: 2,
    netMassG: near(((3112 * 4 * steel.densityKgM3) / 1e6) * 1.25),
    cut: "two pieces of 1556 mm, laid from 145 to 1701 mm from the tip",
    material: `${steel.label} 2 × 2 mm with anchors`,
  };
  const spacer = (end: "tip" | "tail", lengthMm: number) => ({
    lengthMm,
    thicknessMm: ski.core.profile.stations.at(end === "tip" ? 0 : -1)?.thicknessMm,
    material: abs.label,
    cut: `outline of the ${end} to ${lengthMm} mm, scarf of 15 included`,
    ...each(1),
  });

  it.each<[string, object]>([
    ["strip-c", strip("C", 1)],
    ["strip-i", strip("I", 2)],
    ["strip-m", strip("M", 2)],
    ["strip-o", strip("O", 2)],
    // 2 skis · 6 joints · 1.540 m · blank height · 150 g/m².
    ["core-glue", { ...g(Math.round((2 * 6 * 1540 * blankMm * 150) / 1e6)), cut: "6 joints a ski" }],
    [
      "sidewall",
      {
        lengthMm: near(1616),
        widthMm: 19,
        thicknessMm: near(blankMm),
        netMassG: near((1616 * 19 * blankMm * abs.densityKgM3) / 1e6),
        cut: `1616 × 19 × ${blankMm.toFixed(1)} mm, 7 wide when trimmed`,
        material: abs.label,
        ...each(2),
      },
    ],
    ["tip-spacer", spacer("tip", 195)],
    ["tail-spacer", spacer("tail", 135)],
    ["spacer-adhesive", g(60)],
    [
      "plate",
      {
        ...rect(480, 77),
        thicknessMm: 0.5,
        netMassG: near((480 * 77 * 0.5 * sheet("aluminium").densityKgM3) / 1e6),
        cut: "480 × 77 mm, centred 965 mm from the tip",
        material: `${sheet("aluminium").label}, 0.5 mm`,
        ...each(1),
      },
    ],
    [
      "plate-rubber",
      {
        ...rect(480, 77),
        thicknessMm: 0.2,
        netMassG: near((480 * 77 * 0.2 * rubber.densityKgM3) / 1e6),
        cut: "480 × 77 mm",
        material: `${rubber.label}, 0.2 mm`,
        ...each(1),
      },
    ],
    [
      "binding-mat",
      {
        ...rect(600, 105),
        netMassG: near((600 * 105 * cloth("binding-mat").arealWeightGM2) / 1e6),
        cut: "600 × 105 mm, centred 965 mm from the tip",
        material: cloth("binding-mat").label,
        ...each(1),
      },
    ],
    ["base-left", { ...baseSheet, quantityLeft: 1, quantityRight: 0 }],
    ["base-right", { ...baseSheet, quantityLeft: 0, quantityRight: 1 }],
    ["edge-left", { ...edge, quantityLeft: 1, quantityRight: 0 }],
    ["edge-right", { ...edge, quantityLeft: 0, quantityRight: 1 }],
    ["edge-joint", { cut: "between the edge ends, tip and tail", ...each(2) }],
    ["edge-adhesive", g(3)],
    ["edge-rubber", { ...foil(1556), lengthMm: near(1556), areaMm2: near(1556 * 20) }],
    ["end-rubber", foil(150)],
    [
      "bottom-fabric",
      { ...rect(1820, 156), netMassG: near((1820 * 156 * 750) / 1e6), cut: "1820 × 156 mm", ...each(1) },
    ],
    ["top-fabric", { ...rect(1820, 156), netMassG: near((1820 * 156 * 750) / 1e6), ...each(1) }],
    [
      "topsheet",
      {
        ...rect(1840, 162),
        thicknessMm: 0.6,
        netMassG: near((1840 * 162 * 0.6 * sheet("topsheet").densityKgM3) / 1e6),
        cut: "1840 × 162 mm, backed white where printed light",
        material: `${sheet("topsheet").label}, 0.6 mm`,
        ...each(1),
      },
    ],
    ["transfer-print", { ...rect(1850, 172), cut: "1850 × 172 mm, left and right marked", ...each(1) }],
    // 2 · 1.84 m · 0.162 m · 11 ml/m² = 6.6.
    ["sublimation-ink", { ...pair(7) }],
    ["tissue", { ...rect(1860, 182), cut: "1860 × 182 mm", ...each(1) }],
    ["topsheet-film", { ...rect(1840, 162), ...each(1) }],
    ["base-film", { ...rect(1820, 152), ...each(1) }],
    ["resin", g(resin.resinG)],
    ["hardener", { ...g(resin.hardenerG), cut: "27 to 100 of resin by weight" }],
    ["filler", g(Math.round(resin.resinG / 100))],
    ["release-film", { ...rect(1980, 300), ...each(2) }],
    ["flash-tape", pair(1)],
    ["lay-up-sundries", pair(1)],
    ["serial-tag", { ...rect(30, 8), ...each(1) }],
    ["edge-sealer", g(15)],
    ["abrasives", pair(1)],
    ["wax", g(Math.round((2 * area * 50) / 1e6))],
    ["straps", pair(2)],
    ["end-caps", each(2)],
    [
      "carton",
      {
        lengthMm: Math.ceil(projectedLengthMm + 120),
        widthMm: 200,
        thicknessMm: 160,
        cut: `${Math.ceil(projectedLengthMm + 120)} × 200 × 160 mm inside`,
        ...pair(1),
      },
    ],
    ["papers", pair(1)],
    ["shipping-label", pair(1)],
  ])("%s", (code, expected) => {
    const found = lines.find((line) => line.code === code);
    expect(found).toMatchObject(expected);
    const rule = catalog.parts.lines.find((line) => line.code === code);
    expect(found).toMatchObject({
      line: rule?.line,
      label: rule?.label,
      unit: rule?.unit,
      scrapFactor: rule?.scrapFactor,
      station: rule?.station,
      mandatoryScan: rule?.mandatoryScan,
    });
    expect(found?.fromOption).toBeUndefined();
  });

  it("weighs spacers by the outline of their end", () => {
    // The ends are super-ellipses: between the triangle's half and the whole of their box.
    for (const [code, lengthMm, widthMm] of [
      ["tip-spacer", 195, 132],
      ["tail-spacer", 135, 119],
    ] as const) {
      const found = lines.find((line) => line.code === code) as PartLine;
      expect(found.widthMm).toBeGreaterThan(0.95 * widthMm);
      expect(found.widthMm).toBeLessThanOrEqual(widthMm);
      expect(found.areaMm2).toBeGreaterThan(0.7 * lengthMm * widthMm);
      expect(found.areaMm2).toBeLessThan(0.95 * lengthMm * widthMm);
      expect(found.netMassG).toBeCloseTo(((found.areaMm2 ?? 0) * (found.thicknessMm ?? 0) * abs.densityKgM3) / 1e6, 9);
    }
  });
});

describe("what an option changes", () => {
  it("steel all round: one piece of the outline, its joint at the tail, base inside it by Steiner's formula", () => {
    const inside = area - perimeter * 2 + Math.PI * 4;
    expect(part("base-left", {}, fullWrap)).toMatchObject({
      areaMm2: near(inside),
      cut: expect.stringContaining("2 mm inside all round"),
    });
    expect(part("edge-left", {}, fullWrap)).toMatchObject({
      lengthMm: near(perimeter),
      netMassG: near(((perimeter * 4 * steel.densityKgM3) / 1e6) * 1.25),
    });
    expect(part("edge-joint", {}, fullWrap)).toMatchObject({
      quantityLeft: 1,
      quantityRight: 1,
      cut: "at the tail joint",
    });
    expect(part("edge-rubber", {}, fullWrap)).toMatchObject({ lengthMm: near(perimeter / 2) });
  });

  it("two colours and letters: each from the other's sheet, spaces not counted", () => {
    const choices: SpecChoices = {
      base: { left: "black", right: "yellow", inlay: "counterchange", inlayText: " A BC " },
    };
    const colour = (id: string) => catalog.build.baseColours.find((one) => one.id === id)?.label;
    expect(part("base-left", choices)).toMatchObject({
      fromOption: "two-colours",
      material: `${base.label}, 1.3 mm, ${colour("black")}`,
    });
    expect(part("base-right", choices)).toMatchObject({
      fromOption: "two-colours",
      material: `${base.label}, 1.3 mm, ${colour("yellow")}`,
    });
    // From 60 mm behind the shoulder; four places of 0.9 cap heights. A has one island, B two.
    const cut =
      '"A BC", 60 mm high, from 235 to 451 mm from the tip, 3 islands of the own base set back, zero kerf, both bases in one job';
    const letters = { cut, widthMm: 60, quantityPair: 0, fromOption: "counterchange" };
    expect(part("inlay-left-to-right", choices)).toMatchObject({
      ...letters,
      quantityLeft: 0,
      quantityRight: 6,
      material: `off-cut of the left base, ${colour("black")}`,
    });
    expect(part("inlay-right-to-left", choices)).toMatchObject({
      ...letters,
      quantityLeft: 6,
      quantityRight: 0,
      material: `off-cut of the right base, ${colour("yellow")}`,
    });
    expect(part("inlay-backing", choices)).toMatchObject({
      cut: "70 mm wide, the letters and 10 mm",
      widthMm: 70,
      quantityLeft: 1,
      quantityRight: 1,
      fromOption: "counterchange",
    });
  });

  it("metal: the outline less 2 mm all round, Steiner's A − 2P + 4π", () => {
    const placement = catalog.build.reinforcements.find((one) => one.id === "metal-pair")?.placement;
    if (placement?.kind !== "metal-pair") throw new Error("no metal pair");
    const metal = sheet(placement.sheet);
    const inside = area - 2 * perimeter + 4 * Math.PI;
    for (const code of ["metal-lower", "metal-upper"])
      expect(part(code, { reinforcements: ["metal-pair"] })).toMatchObject({
        lengthMm: 1776,
        widthMm: 128,
        thicknessMm: placement.thicknessMm,
        areaMm2: near(inside),
        netMassG: near((inside * placement.thicknessMm * metal.densityKgM3) / 1e6),
        cut: "outline of the ski less 2 mm all round, primed",
        material: `${metal.label}, ${placement.thicknessMm} mm`,
        quantityLeft: 1,
        quantityRight: 1,
      });
  });

  it("plies and stringers: how many, over or under the core, as heavy as their cloth", () => {
    const plain = list().resin;
    for (const one of catalog.build.reinforcements) {
      const { placement } = one;
      if (placement.kind === "metal-pair") continue;
      const isBand = placement.kind === "stringers";
      const fabric = cloth(placement.fabric);
      const found = list({ reinforcements: [one.id] }).lines.find((line) => line.fromOption === one.id);
      const [lengthMm, widthMm] = isBand ? [1780, placement.bandWidthMm] : [1820, 156];
      const n = placement.faces.length * (isBand ? placement.perFace : 1);
      const faces = placement.faces.map((face) => ({ bottom: "under", top: "over" })[face]).join(" and ");
      expect(found).toMatchObject({
        lengthMm,
        widthMm,
        thicknessMm: fabric.thicknessMm,
        netMassG: near((lengthMm * widthMm * fabric.arealWeightGM2) / 1e6),
        quantityLeft: n,
        quantityRight: n,
        cut: `${lengthMm} × ${widthMm} mm, ${faces} the core`,
        material: fabric.label,
      });
      expect(found?.code.endsWith(`-${one.id}`)).toBe(true);
      expect(found?.label.endsWith(`: ${one.label}`)).toBe(true);
      // More cloth is more resin: what the cured cloth weighs beyond its dry weight, and a quarter more, on both skis.
      const areaMm2 = isBand ? 1780 * placement.bandWidthMm * n : area * n;
      const inClothG = (areaMm2 * (fabric.thicknessMm * fabric.densityKgM3 - fabric.arealWeightGM2)) / 1e6;
      const mixedG = ({ resinG, hardenerG }: typeof plain) => resinG + hardenerG;
      const addedG = mixedG(list({ reinforcements: [one.id] }).resin) - mixedG(plain);
      expect(Math.abs(addedG - 2 * inClothG * 1.25)).toBeLessThanOrEqual(2);
    }
  });

  it("two cloths: the one under the core is the bottom's, the one over it the top's", () => {
    const models = catalog.build.models.map((model) => {
      let seen = 0;
      const layup = model.layup.map((layer) => {
        if (layer.role !== "fabric") return layer;
        seen += 1;
        return { ...layer, material: seen === 1 ? "triax-750" : "triax-450" };
      });
      return { ...model, layup };
    });
    const build: BuildCatalog = { ...catalog.build, models };
    expect(part("bottom-fabric", {}, build)).toMatchObject({ material: cloth("triax-750").label });
    expect(part("top-fabric", {}, build)).toMatchObject({ material: cloth("triax-450").label });
  });

  it("protectors: four patches as wide as the ski, four pieces to the tail's width", () => {
    const choices = { tipTailProtectors: true };
    expect(part("end-patch", choices)).toMatchObject({
      lengthMm: 150,
      widthMm: 132,
      quantityLeft: 2,
      quantityRight: 2,
      fromOption: "tip-tail-protectors",
    });
    expect(part("protectors", choices)).toMatchObject({
      widthMm: 119,
      cut: "to the ends of the outline, tail 119 mm",
      quantityLeft: 2,
      quantityRight: 2,
      fromOption: "tip-tail-protectors",
    });
  });

  it("an own picture, another core and a window are marked where they are cut", () => {
    expect(part("transfer-print", { graphic: { kind: "own", layout: "same", windows: [] } }).fromOption).toBe(
      "own-graphic",
    );
    expect(part("strip-c", { core: "aspen-ash-window" }).fromOption).toBe("aspen-ash-window");
    const windows = [{ fromXMm: 400, toXMm: 600, halfWidthMm: 15 }];
    const choices: SpecChoices = { core: "aspen-ash-window", graphic: { kind: "own", layout: "same", windows } };
    expect(part("topsheet", choices)).toMatchObject({
      fromOption: "window",
      cut: "1840 × 162 mm, clear under the windows",
    });
  });

  it("a moved mount marks plate, foil and mat", () => {
    for (const code of ["plate", "plate-rubber", "binding-mat"])
      expect(part(code, { mount: { offsetMm: -5 } }).fromOption).toBe("mount");
    expect(part("binding-mat", { mount: { offsetMm: -5 } }).cut).toBe("600 × 105 mm, centred 970 mm from the tip");
  });
});

describe("rolls of base sheet", () => {
  const at = (choices: SpecChoices, rollMm = 300) =>
    baseUse(specOf(choices), list(choices), {
      ...catalog.parts,
      cut: { ...catalog.parts.cut, baseRollWidthMm: rollMm },
    });

  it("two skis of one colour lie side by side where 2 · (132 + 10) = 284 mm fit, else one after the other", () => {
    const [only] = at({}, 284);
    expect([at({}, 284).length, only?.colour, only?.needM]).toEqual([1, specOf().base.left, 1.82]);
    expect(at({}, 283.9)[0]?.needM).toBeCloseTo(3.64, 12);
    expect(only?.material).toBe(part("base-left").material);
  });

  it("two colours take a length of each", () => {
    const choices: SpecChoices = { base: { left: "black", right: "yellow", inlay: "none" } };
    const { sheet } = part("base-left", choices);
    expect(part("base-right", choices).sheet).toBe(sheet);
    expect(baseMaterial(sheet ?? "", "Signal yellow")).toBe(part("base-right", choices).material);
    expect(at(choices)).toEqual([
      { colour: "black", material: part("base-left", choices).material, sheet, needM: 1.82 },
      { colour: "yellow", material: part("base-right", choices).material, sheet, needM: 1.82 },
    ]);
    expect(() => baseUse(specOf(), { ...list(), lines: [] }, catalog.parts)).toThrow(/no bases/);
  });

  it("serves in order, leaves out who finds too little, and says what lacks for all", () => {
    expect(serveFromRoll([2, 3, 1], 4)).toEqual({ isServed: [true, false, true], shortM: 2 });
    expect(serveFromRoll([2, 2], 4)).toEqual({ isServed: [true, true], shortM: 0 });
    expect(serveFromRoll([0.1, 0.2], 0.3)).toEqual({ isServed: [true, true], shortM: expect.closeTo(0, 12) });
    expect(serveFromRoll([5], 4)).toEqual({ isServed: [false], shortM: 1 });
    expect(serveFromRoll([1], 4).shortM).toBe(0);
  });
});
