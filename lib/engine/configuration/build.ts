/**
 * One ski's construction from what was ordered, before its core thickness is known. The bare build is what the flex ratio
 * is about; the finished build adds the binding plate in its pocket at the order's own mount line, and the mat over it.
 */

import type { BuildLayer, PlatePocket, SkiBuild, SpringTest } from "#engine/flex";
import { edgeSpanMm, measure, mountLineMm, type SkiShape, shapeAtLength } from "#engine/geometry";
import { type Corrections, correctedLibrary, fabricById, sheetById } from "#engine/materials";
import { accept, type Outcome, refuse } from "#engine/units";
import { fabricLayer, sheetLayer } from "./layer-materials";
import { stackOf } from "./layup";
import { LIGHTENING, lighteningPockets, pocketBridges } from "./lightening";
import { blendById, type LookupRefusal, modelById, modelLength, plateById, reinforcementById } from "./lookup";
import { stripColumns } from "./strip-columns";
import type {
  BuildCatalog,
  BuildRules,
  CoreBlend,
  FlexSpec,
  LayupLayer,
  LighteningRules,
  Model,
  PairSpec,
  PlateChoice,
  Reinforcement,
} from "./types";

/** What a build is made for: the stiffness-deciding part of a spec, and where its mount line is. */
export type BuildableSpec = FlexSpec & Partial<Pick<PairSpec, "mount" | "plate">>;

/** A spec's own items, found in the catalogue. */
export interface ResolvedSpec {
  readonly model: Model;
  readonly blend: CoreBlend;
  readonly reinforcements: readonly Reinforcement[];
  /** The plate that was ordered; null for the shop's own. */
  readonly plate: PlateChoice | null;
  /** Null for a whole core. */
  readonly lightening: LighteningRules | null;
}

export function resolveSpec(spec: BuildableSpec, catalog: BuildCatalog): Outcome<ResolvedSpec, LookupRefusal> {
  const model = modelById(catalog, spec.model);
  if (!model.ok) return model;
  const length = modelLength(model.value, spec.lengthCm);
  if (!length.ok) return length;
  const blend = blendById(catalog, spec.core);
  if (!blend.ok) return blend;
  const reinforcements: Reinforcement[] = [];
  for (const [i, id] of spec.reinforcements.entries()) {
    const reinforcement = reinforcementById(catalog, id, `reinforcements.${i}`);
    if (!reinforcement.ok) return reinforcement;
    reinforcements.push(reinforcement.value);
  }
  const plate = spec.plate === undefined ? null : plateById(catalog, spec.plate);
  if (plate !== null && !plate.ok) return plate;
  const lightening = spec.lightening ? (catalog.rules.lightening ?? null) : null;
  if (spec.lightening && lightening === null)
    return refuse({ code: "unknown-item", path: "lightening", kind: "lightening", id: LIGHTENING, known: [] });
  return accept({ model: model.value, blend: blend.value, reinforcements, plate: plate?.value ?? null, lightening });
}

/**
 * The finished ski: plate pocket at the order's mount line and mat included.
 *
 * @param layup what lies above and below the core; absent = the model's own, whatever the flex would need
 */
export function skiBuildFor(
  spec: BuildableSpec,
  catalog: BuildCatalog,
  layup?: readonly LayupLayer[],
): Outcome<SkiBuild, LookupRefusal> {
  const resolved = resolveSpec(spec, catalog);
  if (!resolved.ok) return resolved;
  const bare = bareBuildFor(resolved.value, spec.lengthCm, catalog, layup);
  return accept(withBindingZone(bare, resolved.value, spec.mount?.offsetMm ?? 0, catalog));
}

/**
 * The model's own class 3 ski at its reference length, without plate and mat: its EI(x) is the target curve. Always of
 * nominal materials: what measured pairs teach changes the core that is milled for a flex, never the flex that was meant.
 */
export function referenceBuildFor(model: Model, nominalAndMore: BuildCatalog): SkiBuild {
  const { corrections: _learnt, ...catalog } = nominalAndMore;
  const blend = blendById(catalog, model.core.blend);
  if (!blend.ok) throw new RangeError(`models.${model.id}.core.blend: no blend "${model.core.blend}"`);
  return bareBuildFor(
    { model, blend: blend.value, reinforcements: [], plate: null, lightening: null },
    model.shape.refLengthCm,
    catalog,
  );
}

/** Everything but plate and mat, of materials as measured pairs have shown them. */
export function bareBuildFor(
  resolved: ResolvedSpec,
  lengthCm: number,
  given: BuildCatalog,
  layup: readonly LayupLayer[] = resolved.model.layup,
): SkiBuild {
  const catalog = asLearnt(given);
  const { model, blend, reinforcements } = resolved;
  const { materials, rules } = catalog;
  const shape = shapeAtLength(model.shape, lengthCm);
  const { planAreaMm2, edgeCarryingMm, perimeterMm } = measure(shape, { edge: rules.edge });
  const isFull = shape.edgeWrap === "full";
  const steelMm = isFull ? perimeterMm / 2 : edgeCarryingMm;
  const coreFromMm = rules.spacers.tipMm;
  const coreToMm = shape.lengthMm - rules.spacers.tailMm;
  const { lightening } = resolved;
  const wood = { coreFromMm, coreToMm };
  const pockets = lightening ? lighteningPockets(shape, wood, lightening, rules) : [];
  return {
    shape,
    layers: stackOf(model, layup, reinforcements, catalog).flatMap((layer): readonly BuildLayer[] =>
      layer.role === "core" && lightening ? [layer, ...pocketBridges(pockets, lightening, catalog)] : [layer],
    ),
    ...(pockets.length > 0 ? { pockets } : {}),
    columns: stripColumns(blend, model.core.stripWidthMm, catalog),
    sidewall: {
      widthMm: rules.sidewall.widthMm,
      material: sheetLayer(sheetById(materials, rules.sidewall.material)),
    },
    edge: {
      widthMm: rules.edge.widthMm,
      heightMm: rules.edge.heightMm,
      lengthMm: steelMm,
      ...(isFull ? {} : { span: edgeSpanMm(shape, rules.edge) }),
      material: sheetLayer(sheetById(materials, rules.edge.material)),
      anchorMassFactor: rules.edge.anchorMassFactor,
    },
    coreFromMm,
    coreToMm,
    spacer: sheetLayer(sheetById(materials, rules.spacers.material)),
    extraMassG: extraMassG({ planAreaMm2, steelMm, coreLengthMm: coreToMm - coreFromMm, model, catalog }),
    mountFromTipMm: shape.mountFromTipMm,
    springTest: springTestFor(shape, shape.mountFromTipMm, rules),
    ...twistTestFor(shape, shape.mountFromTipMm, rules),
    sections: rules.sections,
    ...(catalog.corrections ? builtAsLearnt(catalog.corrections) : {}),
  };
}

/** The catalogue with its materials corrected by what it has learnt, if anything. */
function asLearnt(catalog: BuildCatalog): BuildCatalog {
  const { corrections, materials } = catalog;
  return corrections ? { ...catalog, materials: correctedLibrary(materials, corrections) } : catalog;
}

/** Where the bench holds and presses a ski, by the shop's setting. @throws RangeError when the load is not between */
function springTestFor(shape: SkiShape, mountMm: number, { springTest }: BuildRules): SpringTest {
  const { supports, load } = springTest;
  const [frontSupportMm, rearSupportMm] =
    supports === "shoulder-heel"
      ? [shape.tipLengthMm, shape.lengthMm - shape.tailLengthMm]
      : [supports.frontFromTipMm, shape.lengthMm - supports.rearFromTailMm];
  const loadMm = load === "mount" ? mountMm : (frontSupportMm + rearSupportMm) / 2;
  if (!(frontSupportMm < loadMm && loadMm < rearSupportMm)) {
    throw new RangeError(`springTest: a load at ${loadMm} mm is not between ${frontSupportMm} and ${rearSupportMm} mm`);
  }
  return { frontSupportMm, rearSupportMm, loadMm };
}

/** Where the bench clamps and turns a ski, by the shop's setting; nothing without one. @throws RangeError when off the ski */
function twistTestFor(shape: SkiShape, mountMm: number, { twistTest }: BuildRules): Pick<SkiBuild, "twistTest"> {
  if (!twistTest) return {};
  const { span, torqueNm, armMm } = twistTest;
  const [clampMm, armAtMm] =
    span === "mount-shoulder"
      ? [mountMm, shape.tipLengthMm]
      : [mountMm - span.clampFromMountMm, mountMm - span.armFromMountMm];
  if (![clampMm, armAtMm].every((x) => x > 0 && x < shape.lengthMm)) {
    throw new RangeError(`twistTest: ${clampMm} and ${armAtMm} mm do not both lie on a ski of ${shape.lengthMm} mm`);
  }
  return { twistTest: { clampMm, armAtMm, torqueNm, armMm } };
}

/** What measured pairs have taught of the mill and of twist. */
function builtAsLearnt({ coreOffsetMm, twist }: Corrections): Pick<SkiBuild, "coreOffsetMm" | "twistFactor"> {
  return twist === undefined ? { coreOffsetMm } : { coreOffsetMm, twistFactor: twist };
}

/** Rough length and height of a core blank over the milled core (common practice, no source). */
const BLANK_EXTRA_LENGTH_MM = 60;
const BLANK_EXTRA_HEIGHT_MM = 2;
const JOINTS_PER_CORE = 6;
const WETTED_FACES = 2;

/**
 * Mass that carries no stiffness, g a ski: resin on the two faces of the core, glue in the six joints of the blank, the
 * rubber over the two edges.
 */
function extraMassG(input: {
  readonly planAreaMm2: number;
  readonly steelMm: number;
  readonly coreLengthMm: number;
  readonly model: Model;
  readonly catalog: BuildCatalog;
}): number {
  const { rules, materials } = input.catalog;
  const resinG = (WETTED_FACES * rules.resinAtFacesGM2 * input.planAreaMm2) / 1e6;
  const jointMm2 = (input.coreLengthMm + BLANK_EXTRA_LENGTH_MM) * (input.model.core.midMm + BLANK_EXTRA_HEIGHT_MM);
  const glueG = (JOINTS_PER_CORE * rules.coreGlueGM2 * jointMm2) / 1e6;
  const rubber = sheetById(materials, rules.edgeRubber.material);
  const rubberMm3 = 2 * input.steelMm * rules.edgeRubber.widthMm * rules.edgeRubber.thicknessMm;
  return resinG + glueG + (rubberMm3 * rubber.densityKgM3) / 1e6;
}

/**
 * Adds plate and mat, centred on the order's mount line; the bench then loads the ski there too.
 *
 * @param offsetMm of the mount line from the model's own, positive towards the tip
 */
export function withBindingZone(
  bare: SkiBuild,
  ordered: Pick<ResolvedSpec, "model" | "plate">,
  offsetMm: number,
  given: BuildCatalog,
): SkiBuild {
  const { rules, materials } = asLearnt(given);
  const { mat } = rules;
  const mountMm = mountLineMm(bare.shape, offsetMm);
  const fabric = fabricById(materials, mat.fabric);
  const matLayer: BuildLayer = {
    role: "mat",
    id: "binding-mat",
    material: fabricLayer(fabric),
    thicknessMm: fabric.thicknessMm,
    extent: {
      kind: "zone",
      fromMountMm: -mat.lengthMm / 2,
      toMountMm: mat.lengthMm / 2,
      widthMm: bare.shape.waistWidthMm + mat.widthExtraMm,
    },
  };
  return {
    ...bare,
    layers: bare.layers.flatMap((layer): BuildLayer[] => (layer.role === "core" ? [layer, matLayer] : [layer])),
    plate: plateFor(bare.shape, ordered, mountMm, { rules, materials }),
    mountFromTipMm: mountMm,
    springTest: springTestFor(bare.shape, mountMm, rules),
    ...twistTestFor(bare.shape, mountMm, rules),
  };
}

/** The binding plate that was ordered, else the shop's own for the model's use, centred on a mount line. */
export function plateFor(
  shape: SkiShape,
  { model, plate: ordered }: { readonly model: Pick<Model, "use">; readonly plate: PlateChoice | null },
  centreMm: number,
  { rules: { plate }, materials }: Pick<BuildCatalog, "rules" | "materials">,
): PlatePocket {
  const own = ordered ?? plate.byUse?.[model.use] ?? plate;
  return {
    material: sheetLayer(sheetById(materials, own.material)),
    thicknessMm: own.thicknessMm,
    rubberMm: plate.rubberMm,
    rubber: sheetLayer(sheetById(materials, plate.rubber)),
    lengthMm: plate.lengthMm,
    widthMm: shape.waistWidthMm - plate.widthInsetMm,
    centreMm,
  };
}
