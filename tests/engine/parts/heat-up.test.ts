/** Heat through a stack against the exact series for a slab, and wood's heat properties against the handbook's tables. */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { solveSpec } from "#engine/configuration";
import { woodConductivityWMK, woodHeatCapacityJKgK } from "#engine/materials";
import { type Heating, type HeatSlab, heatUpMinutes, stackHeatUpMinutes } from "#engine/parts";
import { specOf } from "../demo-catalog";

const wood: HeatSlab = { thicknessMm: 12, conductivityWMK: 0.12, volumetricHeatJM3K: 430 * 1600 };
const heating: Heating = { startC: 20, plateC: 80, plateMinutes: 0, withinC: 3, heats: "both-faces" };

/** H. S. Carslaw & J. C. Jaeger, Conduction of Heat in Solids, 2nd ed. 1959, § 3.3 (from memory): middle of a slab, faces held at once. */
function middleLags(fourier: number): number {
  let sum = 0;
  for (let n = 0; n < 60; n++) {
    const k = 2 * n + 1;
    sum += ((n % 2 === 0 ? 1 : -1) / k) * Math.exp((-(k ** 2) * Math.PI ** 2 * fourier) / 4);
  }
  return (4 / Math.PI) * sum;
}

/** Time until the middle lags by the share of the first difference: bisection of the series. */
function exactMinutes(slab: HeatSlab, share: number, halfMm: number): number {
  let [low, high] = [0, 20];
  for (let i = 0; i < 60; i++) {
    const mid = (low + high) / 2;
    if (middleLags(mid) > share) low = mid;
    else high = mid;
  }
  const diffusivity = slab.conductivityWMK / slab.volumetricHeatJM3K;
  return (high * (halfMm / 1000) ** 2) / diffusivity / 60;
}

describe("heat through a slab", () => {
  it.each([
    [12, 3],
    [12, 12],
    [16, 1],
    [8, 6],
  ])("%d mm from both faces to within %d K, as the series", (thicknessMm, withinC) => {
    const slab = { ...wood, thicknessMm };
    const exact = exactMinutes(slab, withinC / 60, thicknessMm / 2);
    expect(Math.abs(heatUpMinutes([slab], { ...heating, withinC }) / exact - 1)).toBeLessThan(0.03);
  });

  it("from one face alone it is a slab of twice the thickness", () => {
    const exact = exactMinutes(wood, 3 / 60, 12);
    expect(Math.abs(heatUpMinutes([wood], { ...heating, heats: "lower-face" }) / exact - 1)).toBeLessThan(0.03);
  });

  it("a slab cut into layers of its own material is the same slab", () => {
    const thirds = [3, 4, 5].map((thicknessMm) => ({ ...wood, thicknessMm }));
    expect(heatUpMinutes(thirds, heating)).toBeCloseTo(heatUpMinutes([wood], heating), 6);
  });

  it("a sheet of metal on either face and a foil of rubber cost some seconds", () => {
    const half = { ...wood, thicknessMm: 6 };
    const metal = { thicknessMm: 0.4, conductivityWMK: 130, volumetricHeatJM3K: 2810 * 960 };
    const rubber = { thicknessMm: 0.3, conductivityWMK: 0.16, volumetricHeatJM3K: 1000 * 1900 };
    const plain = heatUpMinutes([wood], heating);
    for (const foil of [metal, rubber]) {
      const with2 = heatUpMinutes([foil, half, half, foil], heating);
      expect(with2).toBeGreaterThanOrEqual(plain);
      expect(with2).toBeLessThan(1.25 * plain);
    }
  });

  it("plates that warm slowly end later by less than their own minutes", () => {
    const slow = heatUpMinutes([wood], { ...heating, plateMinutes: 15 });
    expect(slow).toBeGreaterThan(15);
    expect(slow).toBeLessThan(15 + heatUpMinutes([wood], heating));
  });

  it("refuses what is no stack", () => {
    expect(() => heatUpMinutes([], heating)).toThrow(/no layer/);
    expect(() => heatUpMinutes([{ ...wood, thicknessMm: 0 }], heating)).toThrow(/thicknessMm/);
    expect(() => heatUpMinutes([wood], { ...heating, plateC: 20 })).toThrow(/plateC/);
    expect(() => heatUpMinutes([{ ...wood, thicknessMm: 200 }], heating)).toThrow(/3 hours/);
  });
});

// Wood Handbook, FPL-GTR-190 (2010), Tables 4-7 and 4-8, 12 % moisture (from memory), to the digits printed there.
describe("heat in wood", () => {
  it.each([
    ["quaking aspen", 0.4, 0.12],
    ["white ash", 0.63, 0.17],
    ["sugar maple", 0.66, 0.18],
  ])("%s of specific gravity %d conducts %d W/(m·K)", (_, gravity, conductivity) => {
    expect(Math.abs(woodConductivityWMK(gravity * 1000 * 1.12, 12) - conductivity)).toBeLessThan(0.006);
  });

  it.each([
    [0, 27, 1.3],
    [12, 27, 1.7],
    [12, 67, 1.9],
  ])("at %d %% moisture and %d °C takes %d kJ/(kg·K)", (moisture, celsius, capacity) => {
    expect(Math.abs(woodHeatCapacityJKgK(moisture, celsius) / 1000 - capacity)).toBeLessThan(0.06);
  });
});

describe("a ski's own heat-up", () => {
  const catalog = loadCatalog();
  const { heating: rules, dwellC } = catalog.recipe.press;
  const minutes = (choices: Parameters<typeof specOf>[0]) => {
    const ski = solveSpec(specOf(choices), catalog.build);
    if (!ski.ok || !rules) throw new Error("the demo's ski or its press settings are gone");
    return stackHeatUpMinutes(ski.value, rules, dwellC);
  };

  it("grows with the core's thickness", () => {
    expect(minutes({ flexRatio: 1.4 })).toBeGreaterThan(minutes({ flexRatio: 0.75 }));
  });

  it("stays within the floor's own minutes for every model", () => {
    for (const { id, core } of catalog.build.models) {
      const own = minutes({ model: id, core: core.blend });
      expect(own).toBeGreaterThan(rules?.plateMinutes ?? 0);
      expect(own).toBeLessThanOrEqual(catalog.floor.pressProgramme.heatUpMinutes);
    }
  });
});
