/** A complete spec from what was chosen so far; everything else takes the recommended or the model's own value. */
import { accept, type Outcome, refuse } from "#engine/units";
import {
  baseColourById,
  blendById,
  houseGraphicById,
  type LookupRefusal,
  modelById,
  modelLength,
  plateById,
  reinforcementById,
} from "./lookup";
import type { BuildCatalog, GraphicSpec, Model, PairSpec, SpecChoices } from "./types";

/** What stands when nothing was chosen: from the recommendation, the answers and the finish table. */
export interface SpecDefaults {
  readonly model: string;
  readonly lengthCm: number;
  readonly flexRatio: number;
  readonly finish: PairSpec["finish"];
  readonly mount: PairSpec["mount"];
}

/** Where nobody is asked and only the look counts: bevels and structure are not seen. */
export function lookDefaults(model: string, lengthCm: number): SpecDefaults {
  return {
    model,
    lengthCm,
    flexRatio: 1,
    finish: { baseBevelDeg: 0, sideAngleDeg: 0, detuneTipMm: 0, detuneTailMm: 0, structure: "M" },
    mount: { offsetMm: 0 },
  };
}

/** @returns the spec, or the first item of it that this catalogue does not hold */
export function completeSpec(
  choices: SpecChoices,
  defaults: SpecDefaults,
  catalog: BuildCatalog,
): Outcome<PairSpec, LookupRefusal> {
  const model = modelById(catalog, choices.model ?? defaults.model);
  if (!model.ok) return model;
  const spec: PairSpec = {
    model: model.value.id,
    lengthCm: choices.lengthCm ?? defaults.lengthCm,
    core: choices.core ?? model.value.core.blend,
    reinforcements: [...new Set(choices.reinforcements ?? [])],
    flexRatio: choices.flexRatio ?? defaults.flexRatio,
    graphic: choices.graphic ?? houseGraphicOf(model.value, catalog),
    base: choices.base ?? plainBase(catalog),
    mount: { ...defaults.mount, ...choices.mount },
    finish: choices.finish ?? defaults.finish,
    tipTailProtectors: choices.tipTailProtectors ?? false,
    ...(choices.plate === undefined ? {} : { plate: choices.plate }),
    ...(choices.lightening ? { lightening: true } : {}),
  };
  return checkedItems(spec, model.value, catalog);
}

/** Refuses the first id that the catalogue does not hold. */
function checkedItems(spec: PairSpec, model: Model, catalog: BuildCatalog): Outcome<PairSpec, LookupRefusal> {
  const { graphic, base } = spec;
  const checks = [
    modelLength(model, spec.lengthCm),
    blendById(catalog, spec.core),
    ...spec.reinforcements.map((id, i) => reinforcementById(catalog, id, `reinforcements.${i}`)),
    ...(spec.plate === undefined ? [] : [plateById(catalog, spec.plate)]),
    baseColourById(catalog, base.left, "base.left"),
    baseColourById(catalog, base.right, "base.right"),
    ...(graphic.kind === "house" && graphic.house !== undefined ? [houseGraphicById(catalog, graphic.house)] : []),
  ];
  for (const check of checks) if (!check.ok) return refuse(check.refusal);
  return accept(spec);
}

/** The graphic that the shop gives a model until another is chosen: composed for the pair where the model names one. */
function houseGraphicOf({ houseGraphic }: Model, { houseGraphics }: BuildCatalog): GraphicSpec {
  const own = houseGraphics.find(({ id }) => id === houseGraphic);
  const house = own ?? houseGraphics[0];
  return { kind: "house", ...(house ? { house: house.id } : {}), layout: own ? "continuing" : "same", windows: [] };
}

function plainBase(catalog: BuildCatalog): PairSpec["base"] {
  const [first] = catalog.baseColours;
  if (!first) throw new RangeError("baseColours: the catalogue has none");
  return { left: first.id, right: first.id, inlay: "none" };
}
