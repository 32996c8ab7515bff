/** Letters in the base: limits of the shop (common practice, no source), sizes worked by hand on the demo's skis. */
import { describe, expect, it } from "vitest";
import { conflictsOf, letterRow, resolveSpec, type SpecChoices } from "#engine/configuration";
import { halfWidthAt, shapeAtLength } from "#engine/geometry";
import { partsFor } from "#engine/parts";
import { catalog, solved, specOf } from "../demo-catalog";

const rules = catalog.build.rules.baseLetters;
if (!rules) throw new Error("the demo says nothing of letters");
const edgeMm = catalog.build.rules.edge.widthMm;
const shapeOf = (id: string, lengthCm: number) => {
  const model = catalog.build.models.find((each) => each.id === id);
  if (!model) throw new Error(id);
  return shapeAtLength(model.shape, lengthCm);
};

describe("a row of letters", () => {
  it("has the shop's height where the base has room, from 60 mm behind the shoulder on", () => {
    // Midlow 95 at 178 cm: shoulder at 175 mm, four letters of 0.9 · 60 mm; O has one island, B two.
    expect(letterRow("BOLT", shapeOf("midlow-95", 178), edgeMm, rules)).toEqual({
      capHeightMm: 60,
      fromXMm: 235,
      toXMm: 451,
      letters: 4,
      islands: 3,
    });
  });

  it("is lower where it comes to a narrow waist, and leaves 6 mm of base to either side of every letter", () => {
    const shape = shapeOf("kerfline-68", 168);
    const row = letterRow("LOWER FENNICK RACERS", shape, edgeMm, rules);
    expect(row?.capHeightMm).toBeLessThan(60);
    for (let x = row?.fromXMm ?? 0; x <= (row?.toXMm ?? 0); x += 5)
      expect(2 * (halfWidthAt(shape, x) - edgeMm - 6)).toBeGreaterThanOrEqual((row?.capHeightMm ?? 0) - 0.1);
    // 64 mm of base at the waist less 6 on either side is 52: nothing that reaches it is higher.
    const waistAt = shape.waistFromTipMm;
    if ((row?.toXMm ?? 0) > waistAt) expect(row?.capHeightMm).toBeLessThanOrEqual(52);
  });

  it("does not fit when even the lowest letters reach the heel", () => {
    // 60 letters of 0.9 · 25 mm are 1,350 mm; between shoulder and heel of 1,461 mm 60 are left free at each end.
    const shape = shapeOf("midlow-95", 178);
    expect(letterRow("I".repeat(59), shape, edgeMm, rules)?.capHeightMm).toBe(25);
    expect(letterRow("I".repeat(60), shape, edgeMm, rules)).toBeNull();
  });

  it("counts islands of the demo's letters, none in the others, no place for a space", () => {
    const row = letterRow("AEIOU 8", shapeOf("midlow-95", 178), edgeMm, rules);
    expect([row?.letters, row?.islands]).toEqual([6, 1 + 1 + 2]);
  });
});

describe("what may be ordered", () => {
  const codes = (choices: SpecChoices, build = catalog.build) => {
    const spec = specOf(choices);
    const resolved = resolveSpec(spec, build);
    if (!resolved.ok) throw new Error(resolved.refusal.code);
    return conflictsOf(spec, resolved.value, build).map(({ code }) => code);
  };
  const drawn = { base: { left: "black", right: "bone", inlay: "complex", inlayText: "two hares" } } as const;

  it("is no drawn inlay, with plain bases as the way out", () => {
    expect(codes(drawn)).toEqual(["drawn-inlay-not-sold"]);
    expect(codes({ base: { left: "black", right: "bone", inlay: "none" } })).toEqual([]);
  });

  it("was one by the releases that sold it, and its parts are still told", () => {
    const { baseLetters: _, ...older } = catalog.build.rules;
    expect(codes(drawn, { ...catalog.build, rules: older })).toEqual([]);
    const spec = specOf(drawn);
    const { lines } = partsFor(spec, solved(spec), catalog.build, catalog.parts);
    expect(lines.find(({ code }) => code === "inlay-left-to-right")?.cut).toContain('"two hares", 60 mm high');
  });

  it("is no row of letters that the ski is too short for", () => {
    const letters = (inlayText: string) =>
      ({ base: { left: "black", right: "bone", inlay: "counterchange", inlayText } }) as const;
    expect(codes(letters("FERN"))).toEqual([]);
    expect(codes(letters("I".repeat(60)))).toEqual(["base-letters-too-long"]);
  });
});
