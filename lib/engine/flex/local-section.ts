/**
 * One cross-section of a build, everything known but the core's thickness: the stack under the core, the core's widths and
 * the stack over it. The core's thickness then enters in closed form, so that a solver can try many.
 *
 * How widths are taken:
 * - layers run the whole width; a metal sheet stops at the inner faces of the edges; bands and narrow zones lie at the
 *   centre and are counted by volume (their thickness spread over the whole width), since the layers over them lie down;
 * - edge steel displaces what would lie in its place, up to the underside of the core;
 * - core strips run straight and are weighed by the width that is left of them between the sidewalls;
 * - a plate lies flush in its pocket, rubber under it, wood and sidewall beside it;
 * - a foil of rubber along the whole ski lets what lies outside it slip, over half a wave as long as the bench's span;
 * - in twist the core and the sidewalls carry the shear between the skins.
 *
 * Valid for thin sections bent over many times their thickness. Against full lamination theory the moduli-only section is
 * within 1 % for cloths with fibres on both diagonals; against two-part beam theory the foils are within 1 % of springs.
 */
import { halfWidthAt } from "#engine/geometry";
import { coreShearStiffnessN } from "./core-shear";
import { stripWidthLeftMm } from "./milled-strips";
import { type PlateShare, partlyBonded } from "./plate-bond";
import { bendingLostToFoils, type FoilJoint, momentsOf, momentsSince, torsionLost } from "./soft-foils";
import { springTestOf } from "./spring-test";
import { aboutOwnAxis, type StackMoments, StackSum, shearMoments, type WidthSum, youngMoments } from "./stack-sum";
import type { BuildLayer, FlexStation, LayerMaterial, SkiBuild } from "./types";

type SheetLayer = Exclude<BuildLayer, { readonly role: "core" }>;

export interface LocalSection {
  readonly xMm: number;
  readonly widthMm: number;
  readonly below: StackSum;
  readonly core: WidthSum;
  readonly above: StackSum;
  /** Depth of the plate's pocket here: belongs to the core's thickness but is part of `above`. */
  readonly pocketMm: number;
  /** A plate that a soft foil lets slip. */
  readonly plate?: PlateShare | undefined;
  /** Foils along the whole ski, with what lies outside them. */
  readonly foilBelow?: FoilJoint | undefined;
  readonly foilAbove?: FoilJoint | undefined;
  /** Over which the ski is bent: the bench's span. */
  readonly halfWaveMm: number;
  /** Each of two sidewalls; of no thickness where a spacer fills the end. */
  readonly wall: { readonly thicknessMm: number; readonly shearMpa: number };
}

/** The section at x. @throws RangeError when the build lists no core, or x is off the ski. */
export function localSection(build: SkiBuild, xMm: number): LocalSection {
  const halfMm = halfWidthAt(build.shape, xMm);
  const coreIndex = build.layers.findIndex((layer) => layer.role === "core");
  if (coreIndex < 0) throw new RangeError("build.layers: there is no core among them");
  const below = new StackSum();
  const steelMm = edgeWidthAt(build, xMm, halfMm);
  let foilBelow: FoilJoint | undefined;
  for (let i = 0; i < coreIndex; i++) {
    const layer = build.layers[i];
    if (isFoil(layer)) foilBelow = { ...momentsOf(below), ...foilOf(layer, halfMm) };
    addLayer(below, build, layer, xMm, halfMm, steelMm);
  }
  addSteelMass(below, build, steelMm);
  const core = coreWidths(build, xMm, 0, halfMm);
  const above = new StackSum();
  const plate = addPlate(above, build, xMm, halfMm);
  const pocketMm = above.thicknessMm;
  let foil: { readonly layer: FoilLayer; readonly before: ReturnType<typeof momentsOf> } | undefined;
  for (let i = coreIndex + 1; i < build.layers.length; i++) {
    const layer = build.layers[i];
    addLayer(above, build, layer, xMm, halfMm, 0);
    if (isFoil(layer) && !foil) foil = { layer, before: momentsOf(above) };
  }
  const foilAbove = foil && { ...momentsSince(above, foil.before), ...foilOf(foil.layer, halfMm) };
  const { frontSupportMm, rearSupportMm } = springTestOf(build);
  return {
    xMm,
    widthMm: 2 * halfMm,
    below,
    core,
    above,
    pocketMm,
    plate,
    foilBelow: foilBelow && foilBelow.young.a > 0 ? foilBelow : undefined,
    foilAbove: foilAbove && foilAbove.young.a > 0 ? foilAbove : undefined,
    halfWaveMm: rearSupportMm - frontSupportMm,
    wall: wallAt(build, xMm, halfMm),
  };
}

type FoilLayer = Extract<BuildLayer, { readonly id: string }>;

function isFoil(layer: BuildLayer | undefined): layer is FoilLayer {
  return layer?.role === "rubber" && layer.extent.kind === "full";
}

function foilOf({ material, thicknessMm }: FoilLayer, halfMm: number) {
  return { gw: material.gxyMpa * 2 * halfMm, thicknessMm };
}

function wallAt({ sidewall, coreFromMm, coreToMm }: SkiBuild, xMm: number, halfMm: number): LocalSection["wall"] {
  const isWood = xMm >= coreFromMm && xMm <= coreToMm;
  return { thicknessMm: isWood ? Math.min(sidewall.widthMm, halfMm) : 0, shearMpa: sidewall.material.gxyMpa };
}

/** EI of a section with this core thickness, N·mm². */
export function sectionBendingStiffness(section: LocalSection, coreMm: number): number {
  const solidMm = coreMm - section.pocketMm;
  const moments = youngMoments(section.below, section.core, solidMm, section.above);
  return bondedBending(section, solidMm, moments) - bendingLost(section, solidMm, moments);
}

/** EI with every joint bonded but a plate's on its foil. */
function bondedBending({ below, plate }: LocalSection, solidMm: number, moments: StackMoments): number {
  return plate ? partlyBonded(moments, plate, below.thicknessMm + solidMm + plate.heightMm) : aboutOwnAxis(moments);
}

function bendingLost(section: LocalSection, solidMm: number, moments: StackMoments): number {
  const { below, foilBelow, foilAbove, halfWaveMm } = section;
  const foils = { below: foilBelow, above: foilAbove };
  return bendingLostToFoils(foils, moments, below.thicknessMm + solidMm, halfWaveMm);
}

/** Mass of a section with this core thickness, g per metre. */
export function sectionMassGPerM({ below, core, above, pocketMm }: LocalSection, coreMm: number): number {
  return below.massGPerM + (core.densityWidth * (coreMm - pocketMm)) / 1000 + above.massGPerM;
}

/** What joints that let slip take from a bonded section with this thickness of core, N·mm². */
export function jointLosses(
  section: LocalSection,
  coreMm: number,
): { readonly bendingNmm2: number; readonly torsionNmm2: number } {
  const solidMm = coreMm - section.pocketMm;
  const moments = youngMoments(section.below, section.core, solidMm, section.above);
  return { bendingNmm2: bendingLost(section, solidMm, moments), torsionNmm2: torsionLostAt(section, solidMm) };
}

/** Objects are written out: to spread them here took half the time of a whole solve. */
function torsionLostAt({ below, core, above, foilBelow, foilAbove, wall, widthMm }: LocalSection, solidMm: number) {
  const wallsGw = 2 * wall.thicknessMm * wall.shearMpa;
  return torsionLost({
    below: foilBelow,
    above: foilAbove,
    under: { a: below.ga, s: below.gs, i: below.gi },
    over: { a: above.ga, s: above.gs, i: above.gi },
    widthMm,
    aboveAtMm: below.thicknessMm + solidMm,
    coreMm: solidMm,
    core: { ew: core.ew, gw: Math.max(0, core.gw - wallsGw), densityWidth: core.densityWidth },
    wall,
  });
}

/** Shear stiffness of the core between its skins, N; infinite where there is nothing to shear. */
export function sectionShearStiffnessN({ below, core, above }: LocalSection, solidMm: number): number {
  if (!(solidMm > 0 && below.ea > 0 && above.ea > 0)) return Number.POSITIVE_INFINITY;
  const betweenSkinsMm = below.thicknessMm + solidMm + above.es / above.ea - below.es / below.ea;
  return coreShearStiffnessN(core.gw, betweenSkinsMm, solidMm);
}

/** A station with what only the springs need. */
export interface SectionStation extends FlexStation {
  readonly coreShearStiffnessN: number;
}

/** All values of a section with this core thickness. @throws RangeError when the plate's pocket is as deep as the core. */
export function stationOf(section: LocalSection, coreMm: number): SectionStation {
  const { below, core, above, pocketMm } = section;
  const solidMm = coreMm - pocketMm;
  if (pocketMm > 0 && !(solidMm > 0)) {
    throw new RangeError(
      `plate: its pocket of ${pocketMm} mm at ${section.xMm} mm is as deep as the core, ${coreMm} mm`,
    );
  }
  const young = youngMoments(below, core, solidMm, above);
  const thicknessMm = below.thicknessMm + solidMm + above.thicknessMm;
  const lost = jointLosses(section, coreMm);
  return {
    xMm: section.xMm,
    widthMm: section.widthMm,
    coreMm,
    thicknessMm,
    bendingStiffnessNmm2: bondedBending(section, solidMm, young) - lost.bendingNmm2,
    torsionalStiffnessNmm2: 4 * aboutOwnAxis(shearMoments(below, core, solidMm, above)) - lost.torsionNmm2,
    neutralAxisMm: young.a > 0 ? young.s / young.a : thicknessMm / 2,
    massGPerM: sectionMassGPerM(section, coreMm),
    coreShearStiffnessN: sectionShearStiffnessN(section, solidMm),
  };
}

/** From where to where the edge steel runs: its own span, or as much beyond the shoulder as beyond the heel, within the ski. */
export function edgeSpan({ shape, edge }: SkiBuild): { readonly fromMm: number; readonly toMm: number } {
  if (edge.span) return edge.span;
  const surplus = (edge.lengthMm - shape.sidecutLengthMm) / 2;
  return {
    fromMm: Math.max(0, shape.tipLengthMm - surplus),
    toMm: Math.min(shape.lengthMm, shape.lengthMm - shape.tailLengthMm + surplus),
  };
}

/** Steel of both sides at x, mm. */
function edgeWidthAt(build: SkiBuild, xMm: number, halfMm: number): number {
  const { fromMm, toMm } = edgeSpan(build);
  return xMm >= fromMm && xMm <= toMm ? 2 * Math.min(build.edge.widthMm, halfMm) : 0;
}

function addLayer(
  sum: StackSum,
  build: SkiBuild,
  layer: BuildLayer | undefined,
  xMm: number,
  halfMm: number,
  steelMm: number,
): void {
  if (!layer || layer.role === "core") return;
  const whole = 2 * halfMm;
  const covered = coveredWidth(build, layer, xMm, whole);
  if (covered <= 0) return;
  const isSpread = layer.role !== "base" && layer.extent.kind !== "full";
  const thicknessMm = isSpread && whole > 0 ? (layer.thicknessMm * covered) / whole : layer.thicknessMm;
  const widthMm = isSpread ? whole : covered;
  const besideSteel = Math.max(0, build.edge.heightMm - sum.thicknessMm);
  const low = steelMm > 0 ? Math.min(thicknessMm, besideSteel) : 0;
  if (low > 0) addSlice(sum, low, Math.min(widthMm, whole - steelMm), layer.material, steelMm, build.edge.material);
  if (thicknessMm > low) addSlice(sum, thicknessMm - low, widthMm, layer.material, 0, build.edge.material);
}

function addSlice(
  sum: StackSum,
  thicknessMm: number,
  widthMm: number,
  material: LayerMaterial,
  steelMm: number,
  steel: LayerMaterial,
): void {
  sum.add(
    thicknessMm,
    material.exMpa * widthMm + steel.exMpa * steelMm,
    material.gxyMpa * widthMm + steel.gxyMpa * steelMm,
    material.densityKgM3 * widthMm + steel.densityKgM3 * steelMm,
  );
}

/** Anchors weigh but do not stiffen. */
function addSteelMass(sum: StackSum, { edge }: SkiBuild, steelMm: number): void {
  const heightMm = Math.min(edge.heightMm, sum.thicknessMm);
  sum.massGPerM += ((edge.anchorMassFactor - 1) * steelMm * heightMm * edge.material.densityKgM3) / 1000;
}

function coveredWidth(build: SkiBuild, layer: SheetLayer, xMm: number, wholeMm: number): number {
  if (layer.role === "base") return wholeMm;
  const limit = layer.role === "metal" ? Math.max(0, wholeMm - 2 * build.edge.widthMm) : wholeMm;
  const { extent } = layer;
  if (extent.kind === "full") return limit;
  if (extent.kind === "bands") return Math.min(limit, extent.count * extent.bandWidthMm);
  const fromMount = xMm - build.mountFromTipMm;
  const isInside = fromMount >= extent.fromMountMm && fromMount <= extent.toMountMm;
  return isInside ? Math.min(limit, extent.widthMm ?? limit) : 0;
}

/** What the core's layer holds between these half widths, both sides: strips and sidewalls, or a spacer at the ends. */
function coreWidths(build: SkiBuild, xMm: number, fromHalfMm: number, toHalfMm: number): WidthSum {
  const sum: WidthSum = { ew: 0, gw: 0, densityWidth: 0 };
  const { sidewall } = build;
  if (xMm < build.coreFromMm || xMm > build.coreToMm) {
    addMaterial(sum, build.spacer ?? sidewall.material, 2 * (toHalfMm - fromHalfMm));
    return sum;
  }
  const woodHalfMm = Math.max(fromHalfMm, toHalfMm - sidewall.widthMm);
  build.columns.forEach((column, i) => {
    const widthMm = 2 * stripWidthLeftMm(build.columns, i, woodHalfMm, fromHalfMm);
    if (widthMm === 0) return;
    sum.ew += column.axialModulusMpa * widthMm;
    sum.gw += column.shearModulusMpa * widthMm;
    sum.densityWidth += column.densityKgM3 * widthMm;
  });
  addMaterial(sum, sidewall.material, 2 * (toHalfMm - woodHalfMm));
  return sum;
}

function addMaterial(sum: WidthSum, material: LayerMaterial, widthMm: number): void {
  sum.ew += material.exMpa * widthMm;
  sum.gw += material.gxyMpa * widthMm;
  sum.densityWidth += material.densityKgM3 * widthMm;
}

/** Adds the pocket's two layers, foil and plate with core beside them, where the plate lies. */
function addPlate(sum: StackSum, build: SkiBuild, xMm: number, halfMm: number): PlateShare | undefined {
  const { plate } = build;
  if (!plate || Math.abs(xMm - plate.centreMm) > plate.lengthMm / 2) return undefined;
  const widthMm = Math.min(plate.widthMm, 2 * halfMm);
  const beside = coreWidths(build, xMm, widthMm / 2, halfMm);
  const addPart = (thicknessMm: number, material: LayerMaterial | undefined) => {
    const part = { ...beside };
    if (material) addMaterial(part, material, widthMm);
    sum.add(thicknessMm, part.ew, part.gw, part.densityWidth);
  };
  if (plate.rubberMm > 0) addPart(plate.rubberMm, plate.rubber);
  addPart(plate.thicknessMm, plate.material);
  if (!plate.rubber || plate.rubberMm === 0) return undefined;
  return {
    axialN: plate.material.exMpa * widthMm * plate.thicknessMm,
    heightMm: plate.rubberMm + plate.thicknessMm / 2,
    foilNPerMm2: (plate.rubber.gxyMpa * widthMm) / plate.rubberMm,
    fromMiddleMm: Math.abs(xMm - plate.centreMm),
    halfLengthMm: plate.lengthMm / 2,
  };
}
