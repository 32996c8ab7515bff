/** The plate in the core's pocket. Sizes and uses are the shop's: common practice, no source. */
import { describe, expect, it } from "vitest";
import { conflictsOf, resolveSpec, type SpecChoices, solveSpec } from "#engine/configuration";
import { priceSpec } from "#engine/pricing";
import { catalog, specOf } from "../demo-catalog";

const { build } = catalog;

function built(choices: SpecChoices) {
  const solved = solveSpec(specOf(choices), build);
  if (!solved.ok) throw new Error(JSON.stringify(solved.refusal));
  return solved.value;
}

function conflicts(choices: SpecChoices) {
  const spec = { ...specOf({}), ...choices };
  const resolved = resolveSpec(spec, build);
  if (!resolved.ok) throw new Error(JSON.stringify(resolved.refusal));
  return conflictsOf(spec, resolved.value, build);
}

describe("a magnesium plate", () => {
  const own = built({});
  const magnesium = built({ plate: "magnesium" });

  // Densities 2810 and 1770 kg/m³, moduli 71.7 and 45 GPa: handbook values, see content/catalog/materials.json.
  it("weighs 1770/2810 of the aluminium one of the same sheet", () => {
    const { plate } = own.build;
    if (!plate) throw new Error("a finished ski has a plate");
    const volumeMm3 = plate.lengthMm * plate.widthMm * plate.thicknessMm;
    const lighterG = 1000 * (own.flexWithPlate.massKg - magnesium.flexWithPlate.massKg);
    expect(lighterG).toBeCloseTo(volumeMm3 * (2810 - 1770) * 1e-6, 1);
  });

  it("leaves core and ordered flex alone and makes the finished ski a little softer", () => {
    expect(magnesium.core).toEqual(own.core);
    expect(magnesium.flex).toEqual(own.flex);
    const ratio = magnesium.flexWithPlate.springCentreNPerMm / own.flexWithPlate.springCentreNPerMm;
    expect(ratio).toBeLessThan(1);
    expect(ratio).toBeGreaterThan(0.95);
  });

  it("has its own line in the price", () => {
    const priced = priceSpec(specOf({ plate: "magnesium" }), catalog.priceBook, build, { destination: "collect" });
    const plain = priceSpec(specOf({}), catalog.priceBook, build, { destination: "collect" });
    if (!priced.ok || !plain.ok) throw new Error("both have a price");
    expect(priced.value.lines.find(({ code }) => code === "plate-magnesium")?.lineCents).toBe(5000);
    expect(plain.value.lines.some(({ code }) => code === "plate-magnesium")).toBe(false);
  });

  it("is not put under a touring binding, and a plate that nobody has is refused by its name", () => {
    expect(conflicts({ plate: "magnesium" })).toEqual([]);
    const touring = { ...specOf({ model: "upleigh-92" }), plate: "magnesium" };
    expect(conflicts(touring)).toMatchObject([{ code: "plate-not-for-use", plate: "magnesium", use: "touring" }]);
    // The ways out are the other plates that are for this use; the shop's own stands where none is chosen.
    const [magnesiumPlate] = build.rules.plate.choices ?? [];
    if (!magnesiumPlate) throw new Error("the demo has a plate to choose");
    const withThree = {
      ...build,
      rules: {
        ...build.rules,
        plate: {
          ...build.rules.plate,
          choices: [
            magnesiumPlate,
            { ...magnesiumPlate, id: "light", label: "Light plate", forUses: ["touring"] as const },
            { ...magnesiumPlate, id: "park", label: "Park plate", forUses: ["park"] as const },
          ],
        },
      },
    };
    const resolved = resolveSpec(touring, withThree);
    if (!resolved.ok) throw new Error(resolved.refusal.code);
    expect(conflictsOf(touring, resolved.value, withThree)[0]?.ways).toEqual([
      { code: "other-plate-light", label: "Light plate", choices: { plate: "light" } },
    ]);
    expect(solveSpec({ ...specOf({}), plate: "titanium" }, build)).toMatchObject({
      ok: false,
      refusal: { code: "unknown-item", kind: "plate", id: "titanium", known: ["magnesium"] },
    });
    const stray = priceSpec({ ...specOf({}), plate: "titanium" }, catalog.priceBook, build, { destination: "collect" });
    expect(stray).toMatchObject({ ok: false, refusal: { code: "no-price", path: "plate", item: "titanium" } });
  });
});
