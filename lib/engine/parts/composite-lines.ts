/** Lines 24 to 31: the glass and metal of the lay-up, and what the ordered reinforcements add. */
import type { LayupLayer, Reinforcement } from "#engine/configuration";
import { fabricById, isDiagonalCloth, sheetById } from "#engine/materials";
import { clothMassG, line, mmText, type PartsContext, rectangle, sheetMassG } from "./context";
import type { PartLine } from "./types";

type Face = "bottom" | "top";

export function compositeLines(context: PartsContext): readonly PartLine[] {
  const { layup } = context.solved;
  const coreAt = layup.findIndex((layer) => layer.role === "core");
  return [
    ...ownLines(context, layup.slice(0, coreAt), "bottom"),
    ...ownLines(context, layup.slice(coreAt + 1), "top"),
    ...context.resolved.reinforcements.flatMap((each) => reinforcementLines(context, each)),
    ...patchLines(context),
  ];
}

/** A cloth as cut: the ski's length and greatest width with flash all round. */
function plyOf({ shape, widestMm, rules }: PartsContext) {
  return rectangle(shape.lengthMm + rules.cut.fabricExtraLengthMm, widestMm + rules.cut.fabricExtraWidthMm);
}

function ownLines(context: PartsContext, layers: readonly LayupLayer[], face: Face): PartLine[] {
  const { materials } = context.catalog;
  return layers.flatMap((layer): PartLine[] => {
    if (layer.role === "fabric") {
      const fabric = fabricById(materials, layer.material);
      const ply = plyOf(context);
      return [
        line(context, face === "bottom" ? "bottom-fabric" : "top-fabric", {
          ...ply,
          material: fabric.label,
          netMassG: clothMassG(ply.areaMm2, fabric.arealWeightGM2),
          each: 1,
        }),
      ];
    }
    return layer.role === "metal" ? [metalLine(context, layer.material, layer.thicknessMm, face)] : [];
  });
}

/** Metal stops at the inner faces of the edges; area by Steiner's formula for a smooth outline, A − P·d + πd². */
function metalLine(
  context: PartsContext,
  material: string,
  thicknessMm: number,
  face: Face,
  fromOption?: string,
): PartLine {
  const { shape, measures, rules, catalog, widestMm } = context;
  const sheet = sheetById(catalog.materials, material);
  const inset = rules.cut.metalInsetMm;
  const areaMm2 = measures.planAreaMm2 - measures.perimeterMm * inset + Math.PI * inset ** 2;
  return line(context, face === "bottom" ? "metal-lower" : "metal-upper", {
    cut: `outline of the ski less ${mmText(inset)} mm all round, primed`,
    material: `${sheet.label}, ${mmText(thicknessMm)} mm`,
    lengthMm: shape.lengthMm - 2 * inset,
    widthMm: widestMm - 2 * inset,
    thicknessMm,
    areaMm2,
    netMassG: sheetMassG(areaMm2, thicknessMm, sheet.densityKgM3),
    each: 1,
    fromOption,
  });
}

function reinforcementLines(context: PartsContext, reinforcement: Reinforcement): PartLine[] {
  const { placement, id, label } = reinforcement;
  const { catalog, shape, resolved } = context;
  if (placement.kind === "metal-pair") {
    // A model with metal of its own already has these two lines.
    if (resolved.model.hasMetal) return [];
    return (["bottom", "top"] as const).map((face) =>
      metalLine(context, placement.sheet, placement.thicknessMm, face, id),
    );
  }
  const fabric = fabricById(catalog.materials, placement.fabric);
  const piece = placement.kind === "stringers" ? rectangle(shape.lengthMm, placement.bandWidthMm) : plyOf(context);
  const each = placement.faces.length * (placement.kind === "stringers" ? placement.perFace : 1);
  const faces = placement.faces.map((face) => (face === "bottom" ? "under" : "over")).join(" and ");
  // A ±45° cloth has a line of its own in the shop's list.
  const code = placement.kind === "stringers" ? "stringers" : isDiagonalCloth(fabric) ? "extra-biax" : "extra-ply";
  return [
    line(context, code, {
      ...piece,
      cut: `${piece.cut}, ${faces} the core`,
      material: fabric.label,
      thicknessMm: fabric.thicknessMm,
      netMassG: clothMassG(piece.areaMm2, fabric.arealWeightGM2),
      each,
      fromOption: id,
      codeSuffix: id,
      labelSuffix: label,
    }),
  ];
}

function patchLines(context: PartsContext): PartLine[] {
  const { spec, rules, widestMm } = context;
  if (!spec.tipTailProtectors) return [];
  const patch = rectangle(rules.cut.endPatchLengthMm, widestMm);
  return [line(context, "end-patch", { ...patch, each: 2, fromOption: "tip-tail-protectors" })];
}
