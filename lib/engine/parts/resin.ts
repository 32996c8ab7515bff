/** How much resin one pair needs: what the cured cloth holds, and a film on every other face that is glued wet. */

import { woodHalfWidthMm } from "#engine/flex";
import { fabricById } from "#engine/materials";
import { materialIdOf, type PartsContext } from "./context";
import { isBondedToCore, type LaidLayer, laidLayers, type SheetLayer } from "./laid-layers";
import type { ResinBatch, WetFaces } from "./types";

/** What a release says of resin decides how it is reckoned; see WetFaces and WettedWood. */
export function resinBatch(context: PartsContext): ResinBatch {
  const { resin } = context.rules;
  return "faces" in resin ? batchByFaces(context, resin.faces) : batchByCloth(context, resin);
}

/**
 * Both skis, mixed: Σ cloth (t·ρ − its dry weight)·area + Σ faces (film · area), and the margin for pots, brushes and flash on
 * top; resin and hardener in their ratio by weight. The film is that of each material (common practice, no source).
 */
function batchByFaces(context: PartsContext, faces: WetFaces): ResinBatch {
  const { hardenerPer100, system } = context.rules.resin;
  const layers = laidLayers(context.solved.build, context.spec.tipTailProtectors).filter(
    (layer) => !isBondedToCore(layer),
  );
  const sum = (of: (layer: LaidLayer) => number) => 2 * layers.reduce((grams, layer) => grams + of(layer), 0);
  const inClothG = sum((layer) => ("layer" in layer && isCloth(layer) ? clothResinG(context, layer.layer) : 0));
  const onFacesG = sum((layer) => facesG(context, layer, faces));
  const mixedG = (inClothG + onFacesG) * (1 + faces.marginPercent / 100);
  const resinG = Math.round(mixedG / (1 + hardenerPer100 / 100));
  const stays = { inClothG, onFacesG, marginPercent: faces.marginPercent };
  return { resinG, hardenerG: Math.round((resinG * hardenerPer100) / 100), system, stays };
}

const isCloth = (layer: LaidLayer): layer is Extract<LaidLayer, { readonly face: unknown }> =>
  layer.role === "fabric" || layer.role === "mat";

/** g of resin in one cured cloth: laminate less dry cloth, over what of it lies inside the outline. */
function clothResinG(context: PartsContext, { material, thicknessMm, extent }: SheetLayer): number {
  const { arealWeightGM2 } = fabricById(context.catalog.materials, materialIdOf(material));
  return (extentMm2(context, extent) * (thicknessMm * material.densityKgM3 - arealWeightGM2)) / 1e6;
}

function extentMm2({ measures, shape }: PartsContext, extent: SheetLayer["extent"]): number {
  if (extent.kind === "full") return measures.planAreaMm2;
  if (extent.kind === "bands") return extent.count * extent.bandWidthMm * shape.lengthMm;
  if (extent.kind === "span") return (extent.toMm - extent.fromMm) * extent.widthMm;
  return (extent.toMountMm - extent.fromMountMm) * (extent.widthMm ?? shape.waistWidthMm);
}

/** g of resin on the faces of one layer that is no cloth: base and topsheet have one, all others two. */
function facesG(context: PartsContext, layer: LaidLayer, films: WetFaces): number {
  const { measures, solved, rules, catalog, widestMm } = context;
  const { plate, edge } = solved.build;
  const grams = (areaMm2: number, filmGM2: number, faces = 2) => (faces * areaMm2 * filmGM2) / 1e6;
  switch (layer.role) {
    case "base":
      return grams(measures.planAreaMm2 - 2 * edge.lengthMm * edge.widthMm, films.plasticGM2, 1);
    case "edges":
      return grams(2 * edge.lengthMm * edge.widthMm, films.metalGM2, 1);
    case "edge-rubber": {
      const lengthMm = 2 * edge.lengthMm + 2 * rules.cut.endRubberLengthMm;
      return grams(lengthMm * catalog.rules.edgeRubber.widthMm, films.rubberGM2);
    }
    case "core": {
      const woodMm2 = woodAreaMm2(context);
      return grams(woodMm2, films.woodGM2) + grams(measures.planAreaMm2 - woodMm2, films.plasticGM2);
    }
    case "plate-rubber":
      return plate ? grams(plate.lengthMm * plate.widthMm, films.rubberGM2) : 0;
    case "plate":
      return plate ? grams(plate.lengthMm * plate.widthMm, films.metalGM2) : 0;
    case "end-patches":
      return grams(2 * rules.cut.endPatchLengthMm * widestMm, films.patchGM2, 1);
    case "metal":
      return grams(measures.planAreaMm2 - measures.perimeterMm * rules.cut.metalInsetMm, films.metalGM2);
    case "rubber":
      return grams(extentMm2(context, layer.layer.extent), films.rubberGM2);
    case "topsheet":
      return grams(measures.planAreaMm2, films.plasticGM2, 1);
    default:
      return 0;
  }
}

const SLICES = 200;

/** Wood seen in plan between sidewalls and spacers. Midpoint sum. */
function woodAreaMm2({ solved: { build } }: PartsContext): number {
  const { coreFromMm, coreToMm } = build;
  const dx = (coreToMm - coreFromMm) / SLICES;
  let area = 0;
  for (let i = 0; i < SLICES; i++) {
    const x = coreFromMm + (i + 0.5) * dx;
    area += 2 * woodHalfWidthMm(build, x) * dx;
  }
  return area;
}

/**
 * Resin = (share × dry cloth inside the outline + faces × g/m² × area) × loss, both skis; hardener by weight on top. The
 * cloth's flash outside the outline is part of the loss. How releases that say nothing of faces were reckoned.
 */
function batchByCloth(
  context: PartsContext,
  resin: { readonly perDryFabric: number; readonly wettedFaces: number; readonly lossFactor: number },
): ResinBatch {
  const { rules, catalog, measures } = context;
  const { hardenerPer100, system } = rules.resin;
  const faces = (resin.wettedFaces * catalog.rules.resinAtFacesGM2 * measures.planAreaMm2) / 1e6;
  const resinG = Math.round(2 * (resin.perDryFabric * dryClothG(context) + faces) * resin.lossFactor);
  return { resinG, hardenerG: Math.round((resinG * hardenerPer100) / 100), system };
}

/** Dry cloth within one ski's outline, g: the model's own, the ordered plies and stringers, the mat. */
function dryClothG(context: PartsContext): number {
  const { materials } = context.catalog;
  return laidLayers(context.solved.build, false)
    .filter(isCloth)
    .reduce((grams, { layer }) => {
      const { arealWeightGM2 } = fabricById(materials, materialIdOf(layer.material));
      return grams + (extentMm2(context, layer.extent) * arealWeightGM2) / 1e6;
    }, 0);
}
