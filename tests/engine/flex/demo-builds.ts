/** The demo line-up as builds, straight from the table of checks: no catalogue in between. */
import type { BuildLayer, LayerMaterial, SkiBuild, ThicknessProfile } from "#engine/flex";
import { type ModelShape, measure, shapeAtLength } from "#engine/geometry";
import { evenlySpaced } from "#engine/math";
import truth from "../../fixtures/truth/demo-flex.json";

export const demoModels = truth.models;
export type DemoModel = (typeof demoModels)[number];

const { materials } = truth;

/** A material by its moduli alone, as the tables count it: without Poisson's ratio nothing is held back across the ski. */
const material = (label: string, exMpa: number, gxyMpa: number, densityKgM3: number): LayerMaterial => ({
  label,
  exMpa,
  eyMpa: exMpa,
  gxyMpa,
  nuXy: 0,
  densityKgM3,
});
const plain = (label: string, row: { eMpa: number; gMpa: number; densityKgM3: number }) =>
  material(label, row.eMpa, row.gMpa, row.densityKgM3);

export const abs = plain("ABS", materials.abs);
export const steel = plain("steel", materials.steel);
export const aluminium = plain("aluminium", materials.aluminium);
const rubber = plain("rubber", materials.rubber);
const triax = (row: typeof materials.triax750 | typeof materials.triax450) =>
  material("triaxial glass", row.exMpa, row.gxyMpa, row.densityKgM3);
/** Wood shear moduli: E/G = 16 along the grain, Wood Handbook value quoted by Hindman et al. */
const SHEAR_RATIO = 16;

function layer(text: string): BuildLayer {
  const thicknessMm = Number(text.match(/[\d.]+/)?.[0] ?? 0);
  const full = { extent: { kind: "full" } } as const;
  if (text.startsWith("base")) return { role: "base", material: plain("base", materials.base), thicknessMm };
  if (text.startsWith("core")) return { role: "core" };
  if (text.startsWith("rubber")) return { role: "rubber", id: "rubber", material: rubber, thicknessMm, ...full };
  if (text.startsWith("aluminium")) return { role: "metal", id: "sheet", material: aluminium, thicknessMm, ...full };
  if (text.startsWith("topsheet")) {
    return { role: "topsheet", id: "topsheet", material: plain("topsheet", materials.topsheet), thicknessMm, ...full };
  }
  const row = text === "triax750" ? materials.triax750 : materials.triax450;
  return { role: "fabric", id: text, material: triax(row), thicknessMm: row.thicknessMm, ...full };
}

function columns({ core }: DemoModel): SkiBuild["columns"] {
  const half = core.stripWidthMm / 2;
  return (["C", "I", "M", "O"] as const).map((position, i) => {
    const wood = materials.wood[core.stripsFromCentre[position] as keyof typeof materials.wood];
    return {
      position,
      innerMm: i === 0 ? 0 : (2 * i - 1) * half,
      outerMm: (2 * i + 1) * half,
      axialModulusMpa: wood.axialEMpa,
      shearModulusMpa: wood.axialEMpa / SHEAR_RATIO,
      densityKgM3: wood.densityKgM3,
    };
  });
}

/** Masses that carry no stiffness here: glue and edge rubber grow with the edge, resin with the area; plate and mat are added. */
function extraMass(model: DemoModel, lengthCm: number) {
  const extras = model.massExtrasG;
  const here = measure(shapeAtLength(model as ModelShape, lengthCm));
  const reference = measure(shapeAtLength(model as ModelShape, model.refLengthCm));
  const edge = here.edgeCarryingMm / reference.edgeCarryingMm;
  const area = here.planAreaMm2 / reference.planAreaMm2;
  return {
    bare: (extras.edgeRubberG + extras.coreGlueG) * edge + extras.resinAtTwoFacesG * area,
    mounting: extras.bindingMatG + extras.plateG + extras.plateRubberG + extras.pocketWoodG,
    anchors: extras.edgeAnchorsG * edge,
  };
}

/** A bare demo ski (no plate, no mat), its mounting parts counted as mass when `withMountingMass`. */
export function demoBuild(model: DemoModel, lengthCm: number, withMountingMass = false): SkiBuild {
  const shape = shapeAtLength(model as ModelShape, lengthCm);
  const { edgeCarryingMm } = measure(shape);
  const extra = extraMass(model, lengthCm);
  const layers = model.layup.map(layer);
  const underCoreMm = layers
    .slice(
      0,
      layers.findIndex((one) => one.role === "core"),
    )
    .reduce((sum, one) => sum + (one.role === "core" ? 0 : one.thicknessMm), 0);
  const barG = (2 * 2 * Math.min(2, underCoreMm) * edgeCarryingMm * steel.densityKgM3) / 1e6;
  return {
    shape,
    layers,
    columns: columns(model),
    sidewall: { widthMm: materials.abs.sidewallMm, material: abs },
    edge: {
      widthMm: 2,
      heightMm: 2,
      lengthMm: edgeCarryingMm,
      material: steel,
      anchorMassFactor: 1 + extra.anchors / barG,
    },
    coreFromMm: (180 / 1780) * shape.lengthMm,
    coreToMm: (1 - 120 / 1780) * shape.lengthMm,
    extraMassG: extra.bare + (withMountingMass ? extra.mounting : 0),
    mountFromTipMm: shape.mountFromTipMm,
  };
}

/** The designed core of a model, with this thickness in the middle: t = tEnd + (tMid − tEnd)(1 − (1 − u)^power). */
export function designedCore(model: DemoModel, build: SkiBuild, midMm = model.core.midMm): ThicknessProfile {
  const { tipMm, tailMm, flatMm } = model.core;
  const power = Number(model.core.taper.match(/power ([\d.]+)/)?.[1] ?? 1);
  const front = build.mountFromTipMm - flatMm / 2;
  const rear = build.mountFromTipMm + flatMm / 2;
  const us = evenlySpaced(0, 1, power === 1 ? 1 : 24);
  const rise = (endMm: number, u: number) => endMm + (midMm - endMm) * (1 - (1 - u) ** power);
  return {
    stations: [
      ...us.map((u) => ({
        xMm: build.coreFromMm + (front - build.coreFromMm) * u,
        thicknessMm: rise(tipMm, u),
      })),
      ...us.map((u) => ({ xMm: rear + (build.coreToMm - rear) * u, thicknessMm: rise(tailMm, 1 - u) })),
    ],
  };
}
