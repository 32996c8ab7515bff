/** A core of one's own. Its rules are common practice, no source; densities are the catalogue's, from the Wood Handbook. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  blendById,
  conflictsOf,
  coreIdFor,
  coreLabel,
  ownCoreOf,
  resolveSpec,
  type SpecChoices,
  solveSpec,
} from "#engine/configuration";
import { priceSpec } from "#engine/pricing";
import { buildCandidates } from "#lib/engine/assessment/alternatives-candidates";
import { choiceFields } from "#schemas";
import { catalog, specOf } from "../demo-catalog";

const { build } = catalog;
const rules = build.ownCore;
if (rules === undefined) throw new Error("the demo shop builds cores of one's own");

function conflicts(choices: SpecChoices, of = build) {
  const spec = { ...specOf({}), ...choices };
  const resolved = resolveSpec(spec, of);
  if (!resolved.ok) throw new Error(JSON.stringify(resolved.refusal));
  return conflictsOf(spec, resolved.value, of);
}

const own = "own:poplar.maple.aspen.paulownia";

describe("a core of one's own", () => {
  it("says its four woods in its id, and reads back", () => {
    const wood = fc.constantFrom(...rules.woods);
    const core = fc.record({ strips: fc.record({ C: wood, I: wood, M: wood, O: wood }), isWindowGrade: fc.boolean() });
    fc.assert(
      fc.property(core, (each) => {
        const id = coreIdFor(each, build);
        const blend = blendById(build, id);
        expect(blend.ok && blend.value).toMatchObject(each);
        expect(choiceFields.core.safeParse(id).success).toBe(true);
      }),
    );
  });

  it("is the shop's own blend where the woods are the same, so nobody pays for a name", () => {
    const strips = { C: "aspen", I: "ash", M: "aspen", O: "aspen" };
    expect(coreIdFor({ strips, isWindowGrade: false }, build)).toBe("aspen-ash");
    expect(coreIdFor({ strips, isWindowGrade: true }, build)).toBe("aspen-ash-window");
    expect(coreIdFor({ strips: { ...strips, O: "ash" }, isWindowGrade: false }, build)).toBe("own:aspen.ash.aspen.ash");
  });

  it.each([
    "own:",
    "own:ash",
    "own:ash.ash.ash",
    "own:ash.ash.ash.ash.ash",
    "own:ash.ash.ash.ash:",
    "Own:ash.ash.ash.ash",
    "own:ash.ash.ash.a b",
  ])("takes %j for no core", (text) => {
    expect(ownCoreOf(text)).toBeNull();
    expect(choiceFields.core.safeParse(text).success).toBe(false);
  });

  it("refuses a wood that this shop keeps no strips of, and every own core in a release from before", () => {
    expect(blendById(build, "own:balsa.ash.aspen.aspen")).toMatchObject({
      ok: false,
      refusal: { code: "unknown-item", kind: "core" },
    });
    const { ownCore: _none, ...before } = build;
    expect(blendById(before, own).ok).toBe(false);
    expect(coreLabel(own, before)).toBe(own);
  });

  it("is named by its woods from the middle outwards", () => {
    expect(coreLabel(own, build)).toBe("Core of your own: White poplar, Sugar maple, Quaking aspen, Paulownia");
  });

  it("is priced by its own line, selected wood by another", () => {
    const linesOf = (core: string) => {
      const priced = priceSpec(specOf({ core }), catalog.priceBook, build, { destination: "collect" });
      return priced.ok ? priced.value.lines.map(({ code, lineCents }) => [code, lineCents]) : null;
    };
    expect(linesOf(own)).toContainEqual(["core-own", 6000]);
    expect(linesOf("own:aspen.ash.birch.aspen:window")).toContainEqual(["core-own-window", 14_000]);
  });

  it("is solved to the flex asked for: lighter wood needs a thicker core and weighs less", () => {
    const built = (core: string) => {
      const solved = solveSpec(specOf({ core, flexRatio: 1.05 }), build);
      if (!solved.ok) throw new Error(JSON.stringify(solved.refusal));
      return solved.value;
    };
    const [light, standard, heavy] = [
      built("own:paulownia.poplar.paulownia.paulownia"),
      built("aspen-ash"),
      built("own:maple.maple.maple.maple"),
    ];
    for (const each of [light, standard, heavy]) expect(each.core.achievedRatio).toBeCloseTo(1.05, 1);
    expect(light.flexWithPlate.massKg).toBeLessThan(standard.flexWithPlate.massKg);
    expect(heavy.flexWithPlate.massKg).toBeGreaterThan(standard.flexWithPlate.massKg);
    const thickest = ({ core }: typeof light) => Math.max(...core.profile.stations.map((each) => each.thicknessMm));
    expect(thickest(light)).toBeGreaterThan(thickest(heavy));
  });

  it("stands among the builds of the same flex", () => {
    const spec = specOf({ core: own });
    const model = build.models.find((each) => each.id === spec.model);
    if (!model) throw new Error("no model");
    expect(buildCandidates(spec, model, build).candidates.map((each) => each.core)).toContain(own);
    expect(buildCandidates(specOf({}), model, build).candidates.map((each) => each.core)).not.toContain(own);
  });
});

describe("what of an own core is refused", () => {
  it("light wood beside the middle, where the binding's screws go, with the least dense woods that hold them", () => {
    const [conflict, ...others] = conflicts({ core: "own:ash.aspen.aspen.aspen" });
    expect(others).toEqual([]);
    expect(conflict).toMatchObject({ code: "own-core-screw-hold", densityKgM3: 426, leastKgM3: 430 });
    expect(conflict?.ways.map(({ choices }) => choices.core)).toEqual([
      "own:ash.poplar.aspen.aspen",
      "own:ash.cherry.aspen.aspen",
      "own:ash.ash.aspen.aspen",
    ]);
    for (const { choices } of conflict?.ways ?? []) expect(conflicts(choices)).toEqual([]);
  });

  it("nothing at the limit itself", () => {
    const at = { ...build, ownCore: { ...rules, leastScrewDensityKgM3: 440 } };
    expect(conflicts({ core: "own:ash.poplar.aspen.ash" }, at)).toEqual([]);
    const above = { ...build, ownCore: { ...rules, leastScrewDensityKgM3: 440.1 } };
    expect(conflicts({ core: "own:ash.poplar.aspen.ash" }, above)[0]?.code).toBe("own-core-screw-hold");
  });

  it("resinous wood where the shop's glue does not hold it, once a place, with woods of like stiffness", () => {
    const resin = { ...build, ownCore: { ...rules, woods: [...rules.woods, "douglas-fir"] } };
    const found = conflicts({ core: "own:douglas-fir.ash.aspen.douglas-fir" }, resin);
    expect(found.map(({ code, position }) => [code, position])).toEqual([
      ["own-core-glue", "C"],
      ["own-core-glue", "O"],
    ]);
    for (const { ways } of found) {
      expect(ways).toHaveLength(3);
      expect(
        ways.every(({ choices }) => blendById(build, choices.core ?? "").ok || choices.core?.includes("fir")),
      ).toBe(true);
    }
    const [first] = found;
    const [way] = first?.ways ?? [];
    expect(conflicts({ core: way?.choices.core ?? "" }, resin).map(({ position }) => position)).toEqual(["O"]);
  });

  it("to be seen, wood that the shop does not select; at the screws the ways stay dense", () => {
    const found = conflicts({ core: "own:aspen.beech.paulownia.aspen:window" });
    expect(found.map(({ code, position }) => [code, position])).toEqual([
      ["own-core-not-selected", "I"],
      ["own-core-not-selected", "M"],
    ]);
    const atScrews = found[0]?.ways.map(({ choices }) => ownCoreOf(choices.core ?? "")?.strips.I) ?? [];
    expect([...atScrews].sort()).toEqual(["ash", "cherry", "maple"]);
    expect(found[1]?.ways).toHaveLength(3);
  });

  it("a window over unselected wood, with the same woods selected as the first way out", () => {
    const graphic = {
      kind: "house",
      house: "contour-lines",
      layout: "same",
      windows: [{ fromXMm: 400, toXMm: 600, halfWidthMm: 15 }],
    } as const;
    const [conflict] = conflicts({ graphic, core: "own:aspen.ash.cherry.aspen" });
    expect(conflict?.code).toBe("window-needs-clean-core");
    expect(conflict?.ways[0]?.choices.core).toBe("own:aspen.ash.cherry.aspen:window");
    const [unfit] = conflicts({ graphic, core: "own:aspen.ash.paulownia.aspen" });
    expect(unfit?.ways.some(({ choices }) => choices.core?.startsWith("own:"))).toBe(false);
  });
});
