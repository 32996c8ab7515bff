/** How much resin one pair needs, by its cloth and the wood it wets (common practice, no source). */
import { fabricById } from "#engine/materials";
import type { PartsContext } from "./context";
import type { ResinBatch } from "./types";

/**
 * Resin = (share × dry cloth inside the outline + faces × g/m² × area) × loss, both skis; hardener by weight. The cloth's
 * flash outside the outline is part of the loss.
 */
export function resinBatch(context: PartsContext): ResinBatch {
  const { rules, catalog, measures } = context;
  const { perDryFabric, wettedFaces, lossFactor, hardenerPer100, system } = rules.resin;
  const facesG = (wettedFaces * catalog.rules.resinAtFacesGM2 * measures.planAreaMm2) / 1e6;
  const resinG = Math.round(2 * (perDryFabric * dryClothG(context) + facesG) * lossFactor);
  return { resinG, hardenerG: Math.round((resinG * hardenerPer100) / 100), system };
}

/** Dry cloth within one ski's outline, g: the lay-up's, the ordered plies and stringers, the mat. */
export function dryClothG({ resolved, solved, catalog, measures, shape }: PartsContext): number {
  const { materials, rules } = catalog;
  const weightGM2 = (id: string) => fabricById(materials, id).arealWeightGM2;
  const fullGM2 = solved.layup.reduce(
    (sum, layer) => sum + (layer.role === "fabric" ? weightGM2(layer.material) : 0),
    0,
  );
  const ordered = resolved.reinforcements.reduce((sumG, { placement }) => {
    if (placement.kind === "metal-pair") return sumG;
    const areaMm2 =
      placement.kind === "stringers"
        ? placement.perFace * placement.bandWidthMm * shape.lengthMm
        : measures.planAreaMm2;
    return sumG + (placement.faces.length * areaMm2 * weightGM2(placement.fabric)) / 1e6;
  }, 0);
  const matMm2 = rules.mat.lengthMm * (shape.waistWidthMm + rules.mat.widthExtraMm);
  return (fullGM2 * measures.planAreaMm2 + weightGM2(rules.mat.fabric) * matMm2) / 1e6 + ordered;
}
