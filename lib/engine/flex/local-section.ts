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
 * - cloths and sheets contract across the ski when they are pulled, by their Poisson's ratio, and hold each other back from
 *   it, wood by its modulus across the grain: EI = b/d11 of the whole plate. Narrow parts (steel, bands, walls, plate) count
 *   by their moduli.
 *
 * Valid for thin sections bent over many times their thickness. Bonded, EI is that of lamination theory; what slips is
 * reckoned with the moduli alone, and the two together are within 0.5 % (what contraction adds is a few per cent). Against
 * two-part beam theory the foils are within 1 % of springs. Releases before 30 November 2026 count every layer by its
 * moduli and say so (`thin-skins`).
 */
import { halfWidthAt } from "#engine/geometry";
import { coreShearStiffnessN } from "./core-shear";
import { stripWidthLeftMm } from "./milled-strips";
import { type PlateShare, partlyBonded } from "./plate-bond";
import { bendingLostToFoils, type FoilJoint, momentsOf, momentsSince, torsionLost } from "./soft-foils";
import { springTestOf } from "./spring-test";
import {
  aboutOwnAxis,
  freePlateBending,
  momentsOfWhole,
  type StackMoments,
  StackSum,
  type WidthSum,
} from "./stack-sum";
import type { BuildLayer, FlexStation, LayerMaterial, LighteningPocket, SkiBuild } from "./types";

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
  /** Cloths hold each other back from contracting across the ski. */
  readonly isPlate: boolean;
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
  const core = coreWidths(build, xMm, 0, halfMm).sum();
  const above = new StackSum();
  const plate = addPlate(above, build, xMm, halfMm);
  addHollow(above, build, xMm, halfMm);
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
    isPlate: build.sections !== "thin-skins",
  };
}

/** The sections of one build, each worked out once. */
export type SectionsOf = (xMm: number) => LocalSection;

export function sectionsOf(build: SkiBuild): SectionsOf {
  const known = new Map<number, LocalSection>();
  return (xMm) => {
    const section = known.get(xMm) ?? localSection(build, xMm);
    known.set(xMm, section);
    return section;
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
  const moments = momentsOfWhole(section, solidMm, "young");
  return bondedBending(section, solidMm, moments) - bendingLost(section, solidMm, moments);
}

/** EI with every joint bonded but a plate's on its foil. */
function bondedBending(section: LocalSection, solidMm: number, moments: StackMoments): number {
  const { below, plate, isPlate } = section;
  const bonded = aboutOwnAxis(moments);
  const slipping = plate ? partlyBonded(moments, plate, below.thicknessMm + solidMm + plate.heightMm) : bonded;
  return isPlate ? slipping + freeBending(section, solidMm) - bonded : slipping;
}

function freeBending(section: LocalSection, solidMm: number): number {
  const of = (modulus: "q11" | "q12" | "q22") => momentsOfWhole(section, solidMm, modulus);
  return freePlateBending(of("q11"), of("q12"), of("q22"));
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

/** Torsional stiffness of two skins with a core and walls between, as releases before 30 November 2026 reckoned it, N·mm². */
export function skinsTorsionalStiffness(section: LocalSection, coreMm: number): number {
  const { below, core, above, foilBelow, foilAbove, wall, widthMm, pocketMm } = section;
  const solidMm = coreMm - pocketMm;
  const lost = torsionLost({
    below: foilBelow,
    above: foilAbove,
    under: below.shear,
    over: above.shear,
    widthMm,
    aboveAtMm: below.thicknessMm + solidMm,
    coreMm: solidMm,
    coreGw: Math.max(0, core.gw - 2 * wall.thicknessMm * wall.shearMpa),
    wall,
  });
  return thinStripTorsion(section, solidMm) - lost;
}

/** 4b/d66 of everything bonded, without regard to its edges. */
function thinStripTorsion(section: LocalSection, solidMm: number): number {
  return 4 * aboutOwnAxis(momentsOfWhole(section, solidMm, "shear"));
}

/** Shear stiffness of the core between its skins, N; infinite where there is nothing to shear. */
export function sectionShearStiffnessN({ below, core, above }: LocalSection, solidMm: number): number {
  const [under, over] = [below.young, above.young];
  if (!(solidMm > 0 && under.a > 0 && over.a > 0)) return Number.POSITIVE_INFINITY;
  const betweenSkinsMm = below.thicknessMm + solidMm + over.s / over.a - under.s / under.a;
  return coreShearStiffnessN(core.gw, betweenSkinsMm, solidMm);
}

/** A station before its twist is worked out, with what only springs and twist need. */
export interface SectionStation extends Omit<FlexStation, "torsionalStiffnessNmm2"> {
  readonly coreShearStiffnessN: number;
  /** 4b/d66: what its twist would be without edges and with all joints bonded. */
  readonly thinStripTorsionNmm2: number;
}

/** All values of a section with this core thickness. @throws RangeError when the plate's pocket is as deep as the core. */
export function stationOf(section: LocalSection, coreMm: number): SectionStation {
  const { below, above, pocketMm } = section;
  const solidMm = coreMm - pocketMm;
  if (pocketMm > 0 && !(solidMm > 0)) {
    throw new RangeError(
      `plate: its pocket of ${pocketMm} mm at ${section.xMm} mm is as deep as the core, ${coreMm} mm`,
    );
  }
  const young = momentsOfWhole(section, solidMm, "young");
  const thicknessMm = below.thicknessMm + solidMm + above.thicknessMm;
  return {
    xMm: section.xMm,
    widthMm: section.widthMm,
    coreMm,
    thicknessMm,
    bendingStiffnessNmm2: bondedBending(section, solidMm, young) - bendingLost(section, solidMm, young),
    thinStripTorsionNmm2: thinStripTorsion(section, solidMm),
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
export function edgeWidthAt(build: SkiBuild, xMm: number, halfMm: number): number {
  const { fromMm, toMm } = edgeSpan(build);
  return xMm >= fromMm && xMm <= toMm ? 2 * Math.min(build.edge.widthMm, halfMm) : 0;
}

/** How a layer lies at a place: over this width, its thickness spread over the ski where it covers only a part. */
export interface LaidLayer {
  readonly thicknessMm: number;
  readonly coveredMm: number;
  readonly isSpread: boolean;
}

export function laidLayer(build: SkiBuild, layer: SheetLayer, xMm: number, halfMm: number): LaidLayer | undefined {
  const whole = 2 * halfMm;
  const coveredMm = coveredWidth(build, layer, xMm, whole);
  const isSpread = layer.role !== "base" && layer.extent.kind !== "full";
  // At the very ends a ski has no width left, and all its layers still.
  const isAtPoint = whole === 0 && !isSpread && layer.role !== "metal";
  if (coveredMm <= 0 && !isAtPoint) return undefined;
  const thicknessMm = isSpread ? (layer.thicknessMm * coveredMm) / whole : layer.thicknessMm;
  return { thicknessMm, coveredMm, isSpread };
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
  const laid = laidLayer(build, layer, xMm, halfMm);
  if (!laid) return;
  const { thicknessMm } = laid;
  const whole = 2 * halfMm;
  const widthMm = laid.isSpread ? whole : laid.coveredMm;
  const besideSteel = Math.max(0, build.edge.heightMm - sum.thicknessMm);
  const low = steelMm > 0 ? Math.min(thicknessMm, besideSteel) : 0;
  const isAcross = layer.role === "base" || layer.extent.kind === "full" || layer.extent.kind === "zone";
  const slice = (sliceMm: number, ownMm: number, edgeMm: number) => {
    const width = new WidthOf();
    width.add(layer.material, ownMm, isAcross);
    if (edgeMm > 0) width.add(build.edge.material, edgeMm, false);
    sum.add(sliceMm, width.sum());
  };
  if (low > 0) slice(low, Math.min(widthMm, whole - steelMm), steelMm);
  if (thicknessMm > low) slice(thicknessMm - low, widthMm, 0);
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
  if (extent.kind === "span") return xMm >= extent.fromMm && xMm <= extent.toMm ? Math.min(limit, extent.widthMm) : 0;
  const fromMount = xMm - build.mountFromTipMm;
  const isInside = fromMount >= extent.fromMountMm && fromMount <= extent.toMountMm;
  return isInside ? Math.min(limit, extent.widthMm ?? limit) : 0;
}

/** A part of the core's layer on one side of the centre line. */
export interface CorePart {
  readonly fromMm: number;
  readonly toMm: number;
  readonly modulusMpa: number;
  readonly acrossMpa: number;
  readonly shearMpa: number;
  readonly densityKgM3: number;
}

/** What the core's layer holds between these half widths on one side: strips and a sidewall, or a spacer at the ends. */
export function coreParts(build: SkiBuild, xMm: number, fromHalfMm: number, toHalfMm: number): readonly CorePart[] {
  const { sidewall } = build;
  const of = (fromMm: number, toMm: number, { exMpa, gxyMpa, densityKgM3 }: LayerMaterial): CorePart => ({
    fromMm,
    toMm,
    modulusMpa: exMpa,
    acrossMpa: exMpa,
    shearMpa: gxyMpa,
    densityKgM3,
  });
  if (xMm < build.coreFromMm || xMm > build.coreToMm) {
    return [of(fromHalfMm, toHalfMm, build.spacer ?? sidewall.material)];
  }
  const woodHalfMm = Math.max(fromHalfMm, toHalfMm - sidewall.widthMm);
  const parts: CorePart[] = [];
  let fromMm = fromHalfMm;
  build.columns.forEach((column, i) => {
    const widthMm = stripWidthLeftMm(build.columns, i, woodHalfMm, fromHalfMm);
    if (widthMm === 0) return;
    parts.push({
      fromMm,
      toMm: fromMm + widthMm,
      modulusMpa: column.axialModulusMpa,
      acrossMpa: column.acrossModulusMpa ?? column.axialModulusMpa,
      shearMpa: column.shearModulusMpa,
      densityKgM3: column.densityKgM3,
    });
    fromMm += widthMm;
  });
  if (toHalfMm > woodHalfMm) parts.push(of(woodHalfMm, toHalfMm, sidewall.material));
  return parts;
}

function coreWidths(build: SkiBuild, xMm: number, fromHalfMm: number, toHalfMm: number): WidthOf {
  const width = new WidthOf();
  for (const part of coreParts(build, xMm, fromHalfMm, toHalfMm)) width.addPart(2 * (part.toMm - part.fromMm), part);
  return width;
}

/** A layer being put together from its parts; across the ski they act in series. */
class WidthOf {
  private ew = 0;
  private gw = 0;
  private densityWidth = 0;
  private q11w = 0;
  private q12w = 0;
  private across = 0;
  private widthMm = 0;

  addPart(widthMm: number, { modulusMpa, acrossMpa, shearMpa, densityKgM3 }: Omit<CorePart, "fromMm" | "toMm">): void {
    this.ew += modulusMpa * widthMm;
    this.gw += shearMpa * widthMm;
    this.densityWidth += densityKgM3 * widthMm;
    this.q11w += modulusMpa * widthMm;
    this.across += widthMm / acrossMpa;
    this.widthMm += widthMm;
  }

  /** What lies across the ski by its reduced stiffnesses (Jones eq. 2.66), what is narrow by its moduli. */
  add({ exMpa, eyMpa, nuXy, gxyMpa, densityKgM3 }: LayerMaterial, widthMm: number, isAcross: boolean): void {
    const scale = isAcross ? 1 - (nuXy * nuXy * eyMpa) / exMpa : 1;
    this.ew += exMpa * widthMm;
    this.gw += gxyMpa * widthMm;
    this.densityWidth += densityKgM3 * widthMm;
    this.q11w += (exMpa / scale) * widthMm;
    if (isAcross) this.q12w += ((nuXy * eyMpa) / scale) * widthMm;
    this.across += (widthMm * scale) / eyMpa;
    this.widthMm += widthMm;
  }

  sum(): WidthSum {
    const { ew, gw, densityWidth, q11w, q12w, across, widthMm } = this;
    const q22w = across > 0 ? (widthMm * widthMm) / across : 0;
    return { ew, gw, densityWidth, q11w, q12w, q22w };
  }
}

/** Adds the pocket's two layers, foil and plate with core beside them, where the plate lies. */
function addPlate(sum: StackSum, build: SkiBuild, xMm: number, halfMm: number): PlateShare | undefined {
  const { plate } = build;
  const widthMm = plateWidthAt(build, xMm, halfMm);
  if (!plate || widthMm === 0) return undefined;
  const addPart = (thicknessMm: number, material: LayerMaterial | undefined) => {
    const part = coreWidths(build, xMm, widthMm / 2, halfMm);
    if (material) part.add(material, widthMm, false);
    sum.add(thicknessMm, part.sum());
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

/** Adds a lightening pocket's slice: the core beside it alone. */
function addHollow(sum: StackSum, build: SkiBuild, xMm: number, halfMm: number): void {
  const pocket = hollowAt(build, xMm);
  if (pocket) sum.add(pocket.depthMm, coreWidths(build, xMm, Math.min(pocket.widthMm / 2, halfMm), halfMm).sum());
}

/** The lightening pocket at x, if any. */
export function hollowAt({ pockets = [] }: SkiBuild, xMm: number): LighteningPocket | undefined {
  return pockets.find(({ fromMm, toMm }) => xMm >= fromMm && xMm <= toMm);
}

/** Width of the plate in its pocket at x, mm; 0 where there is none. */
export function plateWidthAt({ plate }: SkiBuild, xMm: number, halfMm: number): number {
  return plate && Math.abs(xMm - plate.centreMm) <= plate.lengthMm / 2 ? Math.min(plate.widthMm, 2 * halfMm) : 0;
}
