import { describe, expect, it } from "vitest";
import { builtByRelease, builtOnPaper, type MeasuredStrip, predictSki } from "#engine/calibration";
import type { BuildCatalog } from "#engine/configuration";
import type { Corrections } from "#engine/materials";
import { solved, specOf } from "../demo-catalog";
import { nominal } from "./simulated-shop";

const spec = specOf({ model: "midlow-95" });
const none: Corrections = { version: "none", moduli: {}, densities: {}, coreOffsetMm: 0, camberOffsetMm: 0 };
const withBook = (book: Partial<Corrections>): BuildCatalog => ({ ...nominal, corrections: { ...none, ...book } });

function predicted(ski: Parameters<typeof predictSki>[0], catalog = nominal) {
  const values = predictSki(ski, catalog);
  if (!values.ok) throw new Error(JSON.stringify(values.refusal));
  return values.value;
}

const strips = (scale: number): Record<"C" | "I" | "M" | "O", MeasuredStrip> => {
  const strip = (id: string) => {
    const wood = nominal.materials.woods.find((each) => each.id === id);
    // Axial over bending modulus 1.1: Wood Handbook (FPL-GTR-190) ch. 5, from memory.
    return { modulusMpa: 1.1 * (wood?.bendingModulusMpa ?? 0) * scale, densityKgM3: (wood?.densityKgM3 ?? 0) * scale };
  };
  return { C: strip("aspen"), I: strip("ash"), M: strip("aspen"), O: strip("aspen") };
};

describe("predictSki", () => {
  it("predicts the finished ski that an order is computed with", () => {
    const { flexWithPlate, build } = solved(spec);
    const own = predicted({ spec });
    expect(Math.abs(own.springCentreNPerMm / flexWithPlate.springCentreNPerMm - 1)).toBeLessThan(0.001);
    expect(Math.abs(own.springForebodyNPerMm / flexWithPlate.springForebodyNPerMm - 1)).toBeLessThan(0.001);
    expect(Math.abs(own.massKg / flexWithPlate.massKg - 1)).toBeLessThan(0.001);
    expect(own.camberMm).toBe(build.shape.camberMm);
  });

  it("predicts what was built by the models and rules of its day, whatever rule stands there now", () => {
    const short = { ...specOf({ model: "kerfline-68", lengthCm: 150 }), flexRatio: 0.72 };
    const now = predicted({ spec: short });
    const then = predicted({ spec: short, builtBy: builtOnPaper(nominal) });
    // On its own 750 g/m² with a core under 9 mm: heavier by the glass, about 0.45 kg/m² of laminate a face over 0.15 m².
    expect(then.massKg - now.massKg).toBeGreaterThan(0.05);
    const { bench: _bench, cloth: _cloth, ...rules } = nominal.rules;
    expect(then).toEqual(predicted({ spec: short }, { ...nominal, rules }));
    expect(predicted({ spec: short, builtBy: builtByRelease(nominal, "today") })).toEqual(now);
  });

  it("takes strips as the bench measured them, and multiplies them by the factor of their wood", () => {
    const plain = predicted({ spec });
    const same = predicted({ spec, strips: strips(1) });
    expect(same.springCentreNPerMm).toBeCloseTo(plain.springCentreNPerMm, 9);
    const stiffer = predicted({ spec, strips: strips(1.1) });
    expect(stiffer.springCentreNPerMm).toBeGreaterThan(plain.springCentreNPerMm);
    const book = { moduli: { aspen: 1.1, ash: 1.1 }, densities: { aspen: 1.1, ash: 1.1 } };
    const byFactor = predicted({ spec, strips: strips(1) }, withBook(book));
    expect(byFactor.springCentreNPerMm).toBeCloseTo(stiffer.springCentreNPerMm, 9);
    expect(byFactor.massKg).toBeCloseTo(stiffer.massKg, 9);
  });

  it("keeps the core that was milled, whatever book is tried on it", () => {
    const heavier = predicted({ spec }, withBook({ coreOffsetMm: 0.1, camberOffsetMm: -0.7 }));
    const plain = predicted({ spec });
    expect(heavier.camberMm - plain.camberMm).toBeCloseTo(-0.7, 12);
    // Closed form: 0.1 mm more of wood weighs its plan area times its density; ash and aspen are from 426 to 672 kg/m³, and
    // the core covers at most length × shoulder width and at least its own length × (waist − two sidewalls of 7 mm).
    const grams = (heavier.massKg - plain.massKg) * 1000;
    expect(grams).toBeLessThan(0.1 * 1780 * 132 * 672e-6);
    expect(grams).toBeGreaterThan(0.1 * (1780 - 300) * (95 - 14) * 426e-6);
  });

  it("solves the core with the book the ski was built with", () => {
    const soft: Corrections = { ...none, version: "CB-1", moduli: { "triax-750": 0.9 } };
    const catalog = { ...nominal, corrections: soft };
    const thicker = predicted({ spec, builtWith: soft }, catalog);
    const plain = predicted({ spec });
    // Soft glass is made up by wood, so that the ski reads as was meant but for the binding zone, and weighs more.
    expect(Math.abs(thicker.springCentreNPerMm / plain.springCentreNPerMm - 1)).toBeLessThan(0.01);
    expect(thicker.massKg).toBeGreaterThan(plain.massKg);
  });

  it("says which item the catalogue does not hold", () => {
    expect(predictSki({ spec: { ...spec, core: "cork" } }, nominal)).toMatchObject({ ok: false });
  });
});
