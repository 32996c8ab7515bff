/**
 * The look of a pair as the query of an address: what anybody may see who is sent it, and nothing else. No measures, no name,
 * no price, no picture and no words of the skier's own.
 */
import { accept, type Outcome, refuse } from "#engine/units";
import { completeSpec, lookDefaults } from "./complete-spec";
import type { LookupRefusal } from "./lookup";
import type { BuildCatalog, GraphicLayout, PairSpec } from "./types";

const layouts: readonly GraphicLayout[] = ["same", "mirrored", "continuing", "alternate"];

/** The query of a pair's look; a skier's own picture is left out, the house graphic that the model wears stands in for it. */
export function sharedLook({ model, lengthCm, core, graphic, base }: PairSpec): string {
  const query = new URLSearchParams({ model, length: String(lengthCm), core, left: base.left, right: base.right });
  if (graphic.kind === "house" && graphic.house !== undefined) {
    query.set("house", graphic.house);
    query.set("layout", graphic.layout);
  }
  return query.toString();
}

export type SharedLookRefusal = LookupRefusal | { readonly code: "look-not-read"; readonly path: string };

/** @returns the pair that a query describes, or the first item of it that this catalogue does not hold */
export function readSharedLook(
  query: Pick<URLSearchParams, "get">,
  catalog: BuildCatalog,
): Outcome<PairSpec, SharedLookRefusal> {
  const text = (name: string) => query.get(name) ?? undefined;
  const model = catalog.models.find(({ id }) => id === text("model"));
  if (!model) return refuse({ code: "look-not-read", path: "model" });
  const lengthCm = Number(text("length") ?? model.shape.refLengthCm);
  if (!Number.isFinite(lengthCm)) return refuse({ code: "look-not-read", path: "length" });
  const layout = layouts.find((each) => each === text("layout"));
  const house = text("house");
  const [left, right, core] = [text("left"), text("right"), text("core")];
  const spec = completeSpec(
    {
      model: model.id,
      lengthCm,
      ...(core === undefined ? {} : { core }),
      ...(house === undefined ? {} : { graphic: { kind: "house", house, layout: layout ?? "same", windows: [] } }),
      ...(left === undefined || right === undefined ? {} : { base: { left, right, inlay: "none" } }),
    },
    lookDefaults(model.id, lengthCm),
    catalog,
  );
  return spec.ok ? accept(spec.value) : spec;
}
