/** What the build sheet says of press, stone, sidewalls and wood where a release says it, and how layers stand with their parts. */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { type SpecChoices, solveSpec } from "#engine/configuration";
import { measure } from "#engine/geometry";
import { laidLayers, partsFor } from "#engine/parts";
import { type BuildSheetFacts, composeBuildSheet, composeKitList } from "#papers";
import { floorFacts } from "#services/papers/floor-facts";
import { specOf } from "../engine/demo-catalog";
import { facts as sample } from "./sample";

const catalog = loadCatalog();
const plain = (text: string) => text.replaceAll("\u00a0", " ");

function factsOf(choices: SpecChoices, floor: Partial<BuildSheetFacts["floor"]> = {}): BuildSheetFacts {
  const spec = specOf(choices);
  const solved = solveSpec(spec, catalog.build);
  if (!solved.ok) throw new Error(solved.refusal.code);
  const { shape } = solved.value.build;
  return {
    ...sample,
    catalog: catalog.build,
    spec,
    shape,
    measures: measure(shape),
    solved: solved.value,
    parts: partsFor(spec, solved.value, catalog.build, catalog.parts),
    strips: null,
    floor: { ...floorFacts(catalog, catalog.safety), ...floor },
  };
}

const told = (rows: readonly { readonly label: string; readonly value: string }[], label: string) =>
  plain(rows.find((row) => row.label === label)?.value ?? "");

/** The kit list's cautions have a test of their own. */
const noCautions = { localRules: "", lines: [] };

describe("the lay-up page", () => {
  it.each<[string, SpecChoices]>([
    ["plain", {}],
    ["metal", { model: "kerfline-68" }],
    ["touring with protectors", { model: "upleigh-92", core: "paulownia-poplar", tipTailProtectors: true }],
    ["every reinforcement", { reinforcements: catalog.build.reinforcements.map(({ id }) => id), flexRatio: 1.4 }],
  ])("%s: one row a layer, with the size and number that cut list and kit list have", (_, choices) => {
    const facts = factsOf(choices);
    const sheet = composeBuildSheet(facts);
    const kit = composeKitList({ ...facts, cautions: noCautions });
    const layers = laidLayers(facts.solved.build, facts.spec.tipTailProtectors);
    // Sidewalls and spacers come bonded to the core.
    expect(sheet.stack).toHaveLength(layers.length - 2);
    for (const row of sheet.stack) {
      expect(row.lines.length, row.name).toBeGreaterThan(0);
      for (const line of row.lines) {
        // Some lines, as those of extra plies, have one number for several cloths.
        const cuts = sheet.cuts.filter((each) => each.line === line).map(({ cut }) => cut);
        const inKit = kit.rows.filter((each) => each.line === line).map(({ cut }) => cut);
        expect(inKit.length, `${row.name}: line ${line} in the kit`).toBeGreaterThan(0);
        expect(cuts.every((cut) => inKit.includes(cut))).toBe(true);
        if (cuts.length > 0 && row.role !== "core" && row.role !== "base")
          expect(
            cuts.some((cut) => row.extent.includes(cut.replace(/, (under|over).* the core$/, ""))),
            row.name,
          ).toBe(true);
      }
    }
    const onStack = new Set(sheet.stack.flatMap(({ lines }) => lines));
    const pieces = facts.parts.lines.filter(({ layers: of, unit }) => of && (unit === "piece" || unit === "set"));
    expect(pieces.filter(({ line }) => !onStack.has(line)).map(({ code }) => code)).toEqual([]);
  });

  it("lays metal less 2 mm and its foil as large as the cloth", () => {
    const { stack } = composeBuildSheet(factsOf({ model: "kerfline-68" }));
    const of = (name: string) => stack.filter((row) => row.name === name).map(({ extent }) => extent);
    const less = "outline of the ski less 2 mm all round, primed";
    expect(of("Metal sheet")).toEqual([less, less]);
    // 1,680 + 40 by 121 + 24 mm.
    expect(of("Rubber foil")).toEqual(["1720 × 145 mm", "1720 × 145 mm"]);
    expect(of("Fabric")).toEqual(["1720 × 145 mm", "1720 × 145 mm"]);
  });

  it("counts the pieces of both skis on the kit list", () => {
    expect(composeKitList({ ...factsOf({}), cautions: noCautions }).count).toBe(
      "43 lines; 50 pieces stay in the two skis",
    );
  });
});

describe("settings of the bench", () => {
  const sheet = composeBuildSheet(factsOf({}));

  it("press force: 3 bar on the cassette of both skis", () => {
    // (1,780 + 2 · 40) · (2 · 132 + 20 + 2 · 20) mm · 0.3 N/mm² = 180.8 kN.
    expect(told(sheet.press, "Force")).toBe("181 kN on the cassette of both skis, 1860 × 324 mm");
  });

  it("heat-up of this stack, and the demould that follows from it", () => {
    const [, minutes = ""] = /^(\d+) min until .* at 75 °C, plates at 78 °C$/.exec(told(sheet.press, "Heat-up")) ?? [];
    expect(Number(minutes)).toBeGreaterThan(14);
    expect(told(sheet.press, "Demould")).toContain(`not before ${Number(minutes) + 45 + 35} min after close`);
  });

  it("resin that stays, and the margin above it", () => {
    const { stays } = factsOf({}).parts.resin;
    const g = (value = 0) => Math.round(value);
    expect(told(sheet.resin, "Stays in")).toContain(
      `${g(stays?.inClothG)} g in cloth, ${g(stays?.onFacesG)} g on faces`,
    );
    expect(told(sheet.resin, "Stays in")).toContain("25 % more is mixed");
  });

  it("stone by the structure that is ordered", () => {
    expect(told(sheet.finish, "Stone")).toBe("dresser 0.10 mm a turn, 3 passes, linear, Ra 4 to 6 µm");
  });

  it("sidewalls that lean inward, never into the wood", () => {
    const value = told(sheet.finish, "Sidewalls");
    const [, top = "", base = ""] = /at the waist ([\d.]+) mm wide on top, ([\d.]+) below/.exec(value) ?? [];
    expect(Number(base)).toBe(95);
    // Some 14.5 mm high at the waist: 2 · (14.5 − 2.5) · tan 10° = 4.2 mm.
    expect(Math.abs(Number(base) - Number(top) - 4.2)).toBeLessThan(0.4);
    for (const { id, core } of catalog.build.models) {
      const facts = factsOf({ model: id, core: core.blend, flexRatio: 1.4 });
      const [, leanTop = "", leanBase = ""] =
        /at the waist ([\d.]+) mm wide on top, ([\d.]+) below/.exec(
          told(composeBuildSheet(facts).finish, "Sidewalls"),
        ) ?? [];
      expect((Number(leanBase) - Number(leanTop)) / 2).toBeLessThan(facts.solved.build.sidewall.widthMm);
    }
  });

  it("moisture and rest of the strips", () => {
    expect(sheet.core.moisture).toBe("6 to 8 %: L ____  R ____");
    expect(sheet.strips.rest).toBe("; rested 14 days at 35 to 45 % humidity");
  });

  it("are left out, and the floor's usual minutes told, where a release does not say them", () => {
    const { wood: _w, stone: _s, sidewall: _b, classWithinPercent: _c, ...floor } = floorFacts(catalog, catalog.safety);
    const { heating: _h, cassette: _k, ...press } = floor.press;
    const older = composeBuildSheet({ ...factsOf({}), floor: { ...floor, press } });
    expect(older.press.map(({ label }) => label)).not.toContain("Force");
    expect(told(older.press, "Heat-up")).toBe("18 min to 78 °C");
    expect(older.finish.map(({ label }) => label)).not.toContain("Stone");
    expect(older.finish.map(({ label }) => label)).not.toContain("Sidewalls");
    expect([older.core.moisture, older.strips.rest]).toEqual(["", ""]);
  });

  it("an older list of parts has its lay-up told in words, without numbers", () => {
    const facts = factsOf({ tipTailProtectors: true });
    const { stack } = composeBuildSheet({ ...facts, parts: { ...facts.parts, layUp: "words" } });
    expect(stack.flatMap(({ lines }) => lines)).toEqual([]);
    expect(stack.filter(({ extent }) => extent === "whole outline + flash")).toHaveLength(3);
    expect(stack.map(({ name }) => name)).not.toContain("End protection");
  });
});
