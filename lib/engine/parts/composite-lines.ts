/**
 * Lines 24 to 31 and the foils on metal: what lies on either side of the core, from the layers of the solved build. Pieces of
 * one size and one cloth are one line, under and over the core together where the shop's list has one line for both.
 */
import { LIGHTENING, POCKET_BRIDGES } from "#engine/configuration";
import { type Fabric, fabricById, isDiagonalCloth, sheetById } from "#engine/materials";
import {
  clothMassG,
  hasLine,
  type LineFacts,
  line,
  materialIdOf,
  mmText,
  type PartsContext,
  rectangle,
  sheetMassG,
} from "./context";
import { type Face, laidLayers, type SheetLayer } from "./laid-layers";
import type { PartCode, PartLine } from "./types";

interface Piece {
  readonly code: PartCode;
  readonly facts: LineFacts & { readonly layers: readonly string[] };
  readonly each: number;
  /** Told in the cut where one line serves both sides. */
  readonly faces: readonly Face[];
}

export function compositeLines(context: PartsContext): readonly PartLine[] {
  const pieces = laidLayers(context.solved.build, context.spec.tipTailProtectors).flatMap((laid) =>
    "face" in laid ? pieceOf(context, laid.layer, laid.face) : [],
  );
  const merged = pieces.reduce<readonly Piece[]>(withPiece, []);
  return [...merged.map((piece, index) => lineOf(context, piece, merged.slice(0, index))), ...patchLines(context)];
}

/** Adds a piece to the one of its kind that is there already, if any. */
function withPiece(pieces: readonly Piece[], piece: Piece): readonly Piece[] {
  const like = pieces.find((other) => isAlike(other, piece));
  if (!like) return [...pieces, piece];
  const both: Piece = {
    ...like,
    each: like.each + piece.each,
    faces: [...new Set([...like.faces, ...piece.faces])],
    facts: { ...like.facts, layers: [...like.facts.layers, ...piece.facts.layers] },
  };
  return pieces.map((other) => (other === like ? both : other));
}

function isAlike(a: Piece, b: Piece): boolean {
  const keys = ["cut", "material", "codeSuffix"] as const;
  return a.code === b.code && keys.every((key) => a.facts[key] === b.facts[key]);
}

function lineOf(context: PartsContext, { code, facts, each, faces }: Piece, before: readonly Piece[]): PartLine {
  const sides = faces.length > 0 ? { cut: `${facts.cut}, ${faces.join(" and ")} the core`, pieceCut: facts.cut } : {};
  // A second cloth on one side has a line of its own, named by its layer.
  const isSecond = before.some((other) => other.code === code && other.facts.codeSuffix === facts.codeSuffix);
  const suffix = isSecond ? { codeSuffix: facts.layers[0] ?? code } : {};
  return line(context, code, { ...facts, ...suffix, ...sides, each });
}

function pieceOf(context: PartsContext, layer: SheetLayer, face: Face): Piece[] {
  if (layer.role === "fabric") return [clothPiece(context, layer, face)];
  if (layer.role === "metal") return [metalPiece(context, layer, face)];
  if (layer.role === "rubber") return foilPiece(context, layer, face);
  return [];
}

/** A sheet as cut where it is trimmed with the ski: the ski's length and greatest width with flash all round. */
function plyOf({ shape, widestMm, rules }: PartsContext) {
  return rectangle(shape.lengthMm + rules.cut.fabricExtraLengthMm, widestMm + rules.cut.fabricExtraWidthMm);
}

function clothPiece(context: PartsContext, { id, extent, material, fromOption }: SheetLayer, face: Face): Piece {
  const { catalog, resolved } = context;
  const fabric = fabricById(catalog.materials, materialIdOf(material));
  const isBand = extent.kind === "bands" || extent.kind === "span";
  const piece = pieceOfCloth(context, extent);
  const each = extent.kind === "bands" ? extent.count : 1;
  const facts = {
    ...piece,
    material: fabric.label,
    netMassG: clothMassG(piece.areaMm2, fabric.arealWeightGM2),
    layers: [id],
  };
  if (fromOption === undefined) {
    return { code: face === "under" ? "bottom-fabric" : "top-fabric", facts, each, faces: [] };
  }
  if (fromOption === LIGHTENING && hasLine(context, "pocket-bridge")) {
    const end = id === POCKET_BRIDGES.fore ? "fore" : "aft";
    const bridge = { ...facts, thicknessMm: fabric.thicknessMm, fromOption, codeSuffix: end, labelSuffix: end };
    return { code: "pocket-bridge", facts: bridge, each, faces: [face] };
  }
  const option = resolved.reinforcements.find((each) => each.id === fromOption) ?? resolved.lightening;
  const label = option?.label ?? fromOption;
  return {
    code: optionCode(isBand, fabric),
    facts: { ...facts, thicknessMm: fabric.thicknessMm, fromOption, codeSuffix: fromOption, labelSuffix: label },
    each,
    faces: [face],
  };
}

function pieceOfCloth(context: PartsContext, extent: SheetLayer["extent"]) {
  if (extent.kind === "bands") return rectangle(context.shape.lengthMm, extent.bandWidthMm);
  if (extent.kind === "span") return rectangle(extent.toMm - extent.fromMm, extent.widthMm);
  return plyOf(context);
}

/** A ±45° cloth has a line of its own in the shop's list. */
function optionCode(isBand: boolean, fabric: Fabric): PartCode {
  if (isBand) return "stringers";
  return isDiagonalCloth(fabric) ? "extra-biax" : "extra-ply";
}

/** Metal stops at the inner faces of the edges; area by Steiner's formula for a smooth outline, A − P·d + πd². */
function metalPiece(context: PartsContext, layer: SheetLayer, face: Face): Piece {
  const { shape, measures, rules, catalog, widestMm } = context;
  const { thicknessMm } = layer;
  const sheet = sheetById(catalog.materials, materialIdOf(layer.material));
  const inset = rules.cut.metalInsetMm;
  const areaMm2 = measures.planAreaMm2 - measures.perimeterMm * inset + Math.PI * inset ** 2;
  return {
    code: face === "under" ? "metal-lower" : "metal-upper",
    facts: {
      cut: `outline of the ski less ${mmText(inset)} mm all round, primed`,
      material: `${sheet.label}, ${mmText(thicknessMm)} mm`,
      lengthMm: shape.lengthMm - 2 * inset,
      widthMm: widestMm - 2 * inset,
      thicknessMm,
      areaMm2,
      netMassG: sheetMassG(areaMm2, thicknessMm, sheet.densityKgM3),
      fromOption: layer.fromOption,
      layers: [layer.id],
    },
    each: 1,
    faces: [],
  };
}

/** The foil between metal and cloth runs over the edges and is trimmed with the ski, like the cloth on it. */
function foilPiece(context: PartsContext, layer: SheetLayer, face: Face): Piece[] {
  const code = face === "under" ? "metal-rubber-lower" : "metal-rubber-upper";
  if (!hasLine(context, code)) return [];
  const { thicknessMm } = layer;
  const rubber = sheetById(context.catalog.materials, materialIdOf(layer.material));
  const ply = plyOf(context);
  const facts = {
    ...ply,
    material: `${rubber.label}, ${thicknessMm} mm`,
    thicknessMm,
    netMassG: sheetMassG(ply.areaMm2, thicknessMm, rubber.densityKgM3),
    fromOption: layer.fromOption,
    layers: [layer.id],
  };
  return [{ code, facts, each: 1, faces: [] }];
}

function patchLines(context: PartsContext): PartLine[] {
  const { spec, rules, widestMm } = context;
  if (!spec.tipTailProtectors) return [];
  const patch = rectangle(rules.cut.endPatchLengthMm, widestMm);
  return [
    line(context, "end-patch", { ...patch, each: 2, fromOption: "tip-tail-protectors", layers: ["end-patches"] }),
  ];
}
