/** Finding things in the catalogue by the ids that a spec names. Unknown ids are refusals: an old link may still hold one. */
import { accept, type Outcome, refuse } from "#engine/units";
import { ownBlend } from "./own-core";
import type {
  BaseColour,
  BuildCatalog,
  CoreBlend,
  HouseGraphic,
  Model,
  ModelLength,
  PlateChoice,
  Reinforcement,
} from "./types";

export type LookupRefusal =
  | {
      readonly code: "unknown-item";
      readonly path: string;
      readonly kind: "model" | "core" | "reinforcement" | "base" | "graphic" | "plate" | "lightening";
      readonly id: string;
      readonly known: readonly string[];
    }
  | {
      readonly code: "length-not-offered";
      readonly path: string;
      readonly model: string;
      readonly lengthCm: number;
      readonly offeredCm: readonly number[];
    };

export function modelById(catalog: BuildCatalog, id: string): Outcome<Model, LookupRefusal> {
  return byId(catalog.models, id, "model", "model");
}

/** One of the shop's blends, or a core of one's own from the woods that its id says. */
export function blendById(
  catalog: Pick<BuildCatalog, "blends" | "ownCore" | "materials">,
  id: string,
): Outcome<CoreBlend, LookupRefusal> {
  const listed = byId(catalog.blends, id, "core", "core");
  if (listed.ok) return listed;
  const own = ownBlend(id, catalog);
  return own === null ? listed : accept(own);
}

/** What people call a core; an id that this catalogue does not know stands for itself. */
export function coreLabel(id: string, catalog: Pick<BuildCatalog, "blends" | "ownCore" | "materials">): string {
  const blend = blendById(catalog, id);
  return blend.ok ? blend.value.label : id;
}

export function reinforcementById(
  catalog: BuildCatalog,
  id: string,
  path = "reinforcements",
): Outcome<Reinforcement, LookupRefusal> {
  return byId(catalog.reinforcements, id, "reinforcement", path);
}

/** A plate that may be ordered instead of the shop's own. */
export function plateById({ rules }: Pick<BuildCatalog, "rules">, id: string): Outcome<PlateChoice, LookupRefusal> {
  return byId(rules.plate.choices ?? [], id, "plate", "plate");
}

export function baseColourById(catalog: BuildCatalog, id: string, path: string): Outcome<BaseColour, LookupRefusal> {
  return byId(catalog.baseColours, id, "base", path);
}

export function houseGraphicById(catalog: BuildCatalog, id: string): Outcome<HouseGraphic, LookupRefusal> {
  return byId(catalog.houseGraphics, id, "graphic", "graphic.house");
}

/** The model's row for this length: its mould and cassettes. */
export function modelLength(model: Model, lengthCm: number): Outcome<ModelLength, LookupRefusal> {
  const found = model.lengths.find((each) => each.lengthCm === lengthCm);
  if (found) return accept(found);
  const offeredCm = model.lengths.map((each) => each.lengthCm);
  return refuse({ code: "length-not-offered", path: "lengthCm", model: model.id, lengthCm, offeredCm });
}

function byId<T extends { readonly id: string }>(
  items: readonly T[],
  id: string,
  kind: "model" | "core" | "reinforcement" | "base" | "graphic" | "plate",
  path: string,
): Outcome<T, LookupRefusal> {
  const found = items.find((each) => each.id === id);
  if (found) return accept(found);
  return refuse({ code: "unknown-item", path, kind, id, known: items.map((each) => each.id) });
}
