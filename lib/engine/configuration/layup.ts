/**
 * The stack of one ski from the base up: the model's own lay-up with the ordered reinforcements in their places.
 * An extra ply lies on the core's side of the glass of its face; metal lies on the wood with rubber between it and the glass.
 */

import type { BuildLayer } from "#engine/flex";
import { fabricById, sheetById } from "#engine/materials";
import { fabricLayer, sheetLayer } from "./layer-materials";
import type { BuildCatalog, LayupLayer, Model, Reinforcement } from "./types";

type Face = "bottom" | "top";

/**
 * @param layup the model's own, or with other cloth in its place
 * @throws RangeError when the lay-up has no core or the catalogue lacks one of its materials
 */
export function stackOf(
  model: Model,
  layup: readonly LayupLayer[],
  reinforcements: readonly Reinforcement[],
  catalog: BuildCatalog,
): readonly BuildLayer[] {
  const coreAt = layup.findIndex((layer) => layer.role === "core");
  if (coreAt < 0) throw new RangeError(`models.${model.id}.layup: no core`);
  const own = (layers: readonly LayupLayer[], face: Face) =>
    layers.map((layer, i) => ownLayer(layer, `${face}-${i}`, catalog));
  const below = own(layup.slice(0, coreAt), "bottom");
  const above = own(layup.slice(coreAt + 1), "top");
  const lastGlass = below.findLastIndex((layer) => layer.role === "fabric") + 1;
  const glassAt = Math.max(
    0,
    above.findIndex((layer) => layer.role === "fabric"),
  );
  const metal = addedMetal(model, reinforcements, catalog);
  return [
    ...below.slice(0, lastGlass),
    ...extraPlies(reinforcements, "bottom", catalog),
    ...below.slice(lastGlass),
    ...metal("bottom").reverse(),
    { role: "core" },
    ...metal("top"),
    ...above.slice(0, glassAt),
    ...extraPlies(reinforcements, "top", catalog),
    ...above.slice(glassAt),
  ];
}

function ownLayer(layer: LayupLayer, id: string, { materials }: BuildCatalog): BuildLayer {
  if (layer.role === "core") return layer;
  if (layer.role === "fabric") {
    const fabric = fabricById(materials, layer.material);
    const { thicknessMm } = fabric;
    return { role: "fabric", id, material: fabricLayer(fabric), thicknessMm, extent: { kind: "full" } };
  }
  const material = sheetLayer(sheetById(materials, layer.material));
  const { role, thicknessMm } = layer;
  return role === "base"
    ? { role, material, thicknessMm }
    : { role, id, material, thicknessMm, extent: { kind: "full" } };
}

function extraPlies(reinforcements: readonly Reinforcement[], face: Face, { materials }: BuildCatalog): BuildLayer[] {
  return reinforcements.flatMap(({ id, placement }): BuildLayer[] => {
    if (placement.kind === "metal-pair" || !placement.faces.includes(face)) return [];
    const fabric = fabricById(materials, placement.fabric);
    const extent =
      placement.kind === "stringers"
        ? ({ kind: "bands", count: placement.perFace, bandWidthMm: placement.bandWidthMm } as const)
        : ({ kind: "full" } as const);
    const { thicknessMm } = fabric;
    const material = fabricLayer(fabric);
    return [{ role: "fabric", id: `${id}-${face}`, material, thicknessMm, extent, fromOption: id }];
  });
}

/** Layers of an ordered metal pair on one face, from the wood outward; none on a model that has its own metal. */
function addedMetal(model: Model, reinforcements: readonly Reinforcement[], catalog: BuildCatalog) {
  const { materials, rules } = catalog;
  return (face: Face): BuildLayer[] => {
    if (model.hasMetal) return [];
    return reinforcements.flatMap(({ id, placement }): BuildLayer[] => {
      if (placement.kind !== "metal-pair") return [];
      const sheet = sheetLayer(sheetById(materials, placement.sheet));
      const rubber = sheetLayer(sheetById(materials, rules.edgeRubber.material));
      const extent = { kind: "full" } as const;
      return [
        {
          role: "metal",
          id: `${id}-${face}`,
          material: sheet,
          thicknessMm: placement.thicknessMm,
          extent,
          fromOption: id,
        },
        {
          role: "rubber",
          id: `${id}-rubber-${face}`,
          material: rubber,
          thicknessMm: placement.rubberMm,
          extent,
          fromOption: id,
        },
      ];
    });
  };
}
