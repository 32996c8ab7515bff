/** Which materials a ski is made of, by id. */
import {
  type BuildableSpec,
  type BuildCatalog,
  type LayupLayer,
  type LookupRefusal,
  resolveSpec,
  skiBuildFor,
} from "#engine/configuration";
import { accept, type Outcome } from "#engine/units";

/** Ids of all woods, cloths and sheets of the finished ski. A build carries labels alone, so it is made with ids for labels. */
export function materialsIn(
  spec: BuildableSpec,
  catalog: BuildCatalog,
  layup?: readonly LayupLayer[],
): Outcome<ReadonlySet<string>, LookupRefusal> {
  const resolved = resolveSpec(spec, catalog);
  if (!resolved.ok) return resolved;
  const byId = <T extends { readonly id: string }>(rows: readonly T[]) =>
    rows.map((row) => ({ ...row, label: row.id }));
  const { woods, fabrics, sheets } = catalog.materials;
  const named = { ...catalog, materials: { woods, fabrics: byId(fabrics), sheets: byId(sheets) } };
  const built = skiBuildFor(spec, named, layup);
  if (!built.ok) return built;
  const { layers, sidewall, edge, spacer, plate } = built.value;
  const parts = [
    ...layers.flatMap((layer) => (layer.role === "core" ? [] : [layer.material])),
    sidewall.material,
    edge.material,
    spacer,
    plate?.material,
    plate?.rubber,
  ];
  return accept(
    new Set([
      ...Object.values(resolved.value.blend.strips),
      ...parts.flatMap((part) => (part ? [part.label] : [])),
      catalog.rules.edgeRubber.material,
    ]),
  );
}
