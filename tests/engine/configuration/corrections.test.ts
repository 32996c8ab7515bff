import { describe, expect, it } from "vitest";
import { massOfFlexG, referenceOf, type SolvedSpec, spreadOf } from "#engine/configuration";
import type { Corrections } from "#engine/materials";
import { interpolate } from "#engine/math";
import { catalog, solved, specOf } from "../demo-catalog";

const none: Corrections = { version: "CB-0", moduli: {}, densities: {}, coreOffsetMm: 0, camberOffsetMm: 0 };
const learnt = (change: Partial<Corrections>) => ({ ...catalog.build, corrections: { ...none, ...change } });
const coreAtMount = ({ core, build }: SolvedSpec) =>
  interpolate(
    core.profile.stations.map((station) => station.xMm),
    core.profile.stations.map((station) => station.thicknessMm),
    build.mountFromTipMm,
  );
const nominal = solved(specOf());

describe("corrections in a build", () => {
  it("change nothing when every factor is 1", () => {
    const same = solved(specOf(), learnt({}));
    expect(same.core.profile).toEqual(nominal.core.profile);
    expect(same.flexWithPlate.massKg).toBe(nominal.flexWithPlate.massKg);
  });

  it("of softer glass give a thicker core for the same spring, since the target stays as it was meant", () => {
    const softer = solved(specOf(), learnt({ moduli: { "triax-750": 0.95 } }));
    expect(coreAtMount(softer)).toBeGreaterThan(coreAtMount(nominal) + 0.06);
    expect(softer.flex.springCentreNPerMm / nominal.flex.springCentreNPerMm).toBeCloseTo(1, 2);
    const model = catalog.build.models.find((each) => each.id === "midlow-95");
    if (!model) throw new Error("no midlow-95");
    expect(referenceOf(model, learnt({ moduli: { "triax-750": 0.95 } }))).toEqual(referenceOf(model, catalog.build));
  });

  it("of a mill that leaves 0.1 mm too much lower the programme by as much", () => {
    const less = solved(specOf(), learnt({ coreOffsetMm: 0.1 }));
    expect(coreAtMount(nominal) - coreAtMount(less)).toBeCloseTo(0.1, 6);
    expect(less.flex.springCentreNPerMm / nominal.flex.springCentreNPerMm).toBeCloseTo(1, 3);
  });

  it("of denser glass weigh, and only that", () => {
    const heavier = solved(specOf(), learnt({ densities: { "triax-750": 1.04 } }));
    // Two cloths of 0.656 mm over the plan area at 1776 kg/m³, 4 % more.
    const addedG = 0.04 * 2 * 0.656 * 0.188 * 1776;
    expect(1000 * (heavier.flex.massKg - nominal.flex.massKg)).toBeCloseTo(addedG, 0);
    expect(heavier.core.profile).toEqual(nominal.core.profile);
  });
});

describe("the spread with a book of corrections", () => {
  const spreadWith = (change: Partial<Corrections>) => {
    const build = learnt(change);
    const spread = spreadOf(solved(specOf(), build), build);
    if (!spread) throw new Error("the demo's rules tell no scatter");
    return spread;
  };
  const before = spreadWith({});

  it("narrows to what the fit left unexplained, and never widens", () => {
    const after = spreadWith({ differenceLeft: { spring: 0.008, mass: 0.005 } });
    // Squares add up: only the model's own share, 3 % before, is replaced.
    expect(before.springCentre ** 2 - after.springCentre ** 2).toBeCloseTo(0.03 ** 2 - 0.008 ** 2, 9);
    expect(after.massG).toBeLessThan(before.massG);
    expect(spreadWith({ differenceLeft: { spring: 0.2, mass: 0.2 } })).toEqual(before);
  });
});

describe("massOfFlexG", () => {
  const cost = (flexRatio: number) => {
    const weighs = massOfFlexG(specOf({ flexRatio }), catalog.build);
    if (!weighs.ok) throw new Error(weighs.refusal.code);
    return weighs.value;
  };

  it("is nothing for class 3, more when stiffer, less when softer", () => {
    expect(cost(1)).toBe(0);
    expect(cost(1.15)).toBeGreaterThan(cost(1.05));
    expect(cost(0.85)).toBeLessThan(0);
  });
});
