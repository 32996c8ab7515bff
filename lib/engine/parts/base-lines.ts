/** Lines 13 to 23 and 37: bases, letters, edges, rubber over the edges, base tape. */
import { type BaseColour, letterRow } from "#engine/configuration";
import { edgeSpanMm } from "#engine/geometry";
import { sheetById } from "#engine/materials";
import { baseMaterial } from "./base-roll";
import { line, materialIdOf, mmText, type PartsContext, rectangle, sheetMassG } from "./context";
import type { PartCode, PartLine } from "./types";

export function baseLines(context: PartsContext): readonly PartLine[] {
  return [
    baseLine(context, "left"),
    baseLine(context, "right"),
    ...inlayLines(context),
    ...edgeLines(context),
    ...rubberLines(context),
  ];
}

/** What the base is cut from: the ski's length and greatest width with an allowance all round. */
export function baseBlank({ shape, widestMm, rules }: PartsContext) {
  return rectangle(shape.lengthMm + rules.cut.baseExtraLengthMm, widestMm + rules.cut.baseExtraWidthMm);
}

/**
 * The ski less its edges. Full wrap: Steiner's A − P·w + πw². Partial: a band as wide as the steel along both edges, whose
 * gentle curve changes its area by less than 0.1 %.
 */
function baseAreaMm2({ measures, shape, catalog }: PartsContext): number {
  const { widthMm } = catalog.rules.edge;
  const { planAreaMm2, perimeterMm, edgeCarryingMm } = measures;
  if (shape.edgeWrap === "full") return planAreaMm2 - perimeterMm * widthMm + Math.PI * widthMm ** 2;
  return planAreaMm2 - 2 * edgeCarryingMm * widthMm;
}

function baseLayer({ solved, catalog }: PartsContext) {
  const layer = solved.build.layers.find((each) => each.role === "base");
  if (layer?.role !== "base") throw new RangeError("build.layers: no base");
  return { thicknessMm: layer.thicknessMm, sheet: sheetById(catalog.materials, materialIdOf(layer.material)) };
}

function colourOf({ catalog, spec }: PartsContext, side: "left" | "right"): BaseColour | undefined {
  return catalog.baseColours.find((each) => each.id === spec.base[side]);
}

function baseLine(context: PartsContext, side: "left" | "right"): PartLine {
  const { spec, catalog, shape } = context;
  const blank = baseBlank(context);
  const { thicknessMm, sheet } = baseLayer(context);
  const areaMm2 = baseAreaMm2(context);
  const uncoloured = `${sheet.label}, ${mmText(thicknessMm)} mm`;
  const inset = mmText(catalog.rules.edge.widthMm);
  const where = shape.edgeWrap === "full" ? "all round" : "along the edges";
  return line(context, side === "left" ? "base-left" : "base-right", {
    cut: `outline ${inset} mm inside ${where}, from a blank ${blank.cut}`,
    sheet: uncoloured,
    material: baseMaterial(uncoloured, colourOf(context, side)?.label ?? spec.base[side]),
    lengthMm: blank.lengthMm,
    widthMm: blank.widthMm,
    thicknessMm,
    areaMm2,
    netMassG: sheetMassG(areaMm2, thicknessMm, sheet.densityKgM3),
    ...(side === "left" ? { left: 1 } : { right: 1 }),
    fromOption: spec.base.left === spec.base.right ? undefined : "two-colours",
    layers: ["base"],
  });
}

/**
 * Counterchange: letters are cut from both sheets in one job and exchanged, what leaves one base fills the other; the islands
 * in them go back into their own ski. A drawn inlay, which older orders have, and releases that knew one height only, are told
 * as they were then.
 */
function inlayLines(context: PartsContext): PartLine[] {
  const { spec, rules } = context;
  if (spec.base.inlay === "none") return [];
  const text = (spec.base.inlayText ?? "").trim();
  const { capHeightMm, pieces, place } = lettersOf(context, text);
  const { inlayBackingExtraMm } = rules.cut;
  const fromOption = spec.base.inlay;
  const layers = ["base"];
  const cut = `"${text}", ${mmText(capHeightMm)} mm high${place}, zero kerf, both bases in one job`;
  const letters = (code: PartCode, from: "left" | "right"): PartLine =>
    line(context, code, {
      cut,
      material: `off-cut of the ${from} base, ${colourOf(context, from)?.label ?? spec.base[from]}`,
      widthMm: capHeightMm,
      ...(from === "left" ? { right: pieces } : { left: pieces }),
      fromOption,
      layers,
    });
  const backingMm = capHeightMm + inlayBackingExtraMm;
  return [
    letters("inlay-left-to-right", "left"),
    letters("inlay-right-to-left", "right"),
    line(context, "inlay-backing", {
      cut: `${mmText(backingMm)} mm wide, the letters and ${mmText(inlayBackingExtraMm)} mm`,
      widthMm: backingMm,
      each: 1,
      fromOption,
      layers,
    }),
  ];
}

/** Where the steel lies: past shoulder and heel, or from and to where a rule of the shop reaches the contact points. */
function reachText({ shape, catalog }: PartsContext): string {
  const { edge } = catalog.rules;
  if (edge.pastContactMm === undefined) return `${mmText(edge.beyondSidecutMm / 2)} mm past shoulder and heel`;
  const { fromMm, toMm } = edgeSpanMm(shape, edge);
  return `laid from ${mmText(fromMm)} to ${mmText(toMm)} mm from the tip`;
}

interface CutLetters {
  readonly capHeightMm: number;
  /** Set into each ski. */
  readonly pieces: number;
  readonly place: string;
}

function lettersOf({ spec, catalog, shape, rules }: PartsContext, text: string): CutLetters {
  const letterRules = catalog.rules.baseLetters;
  const row =
    letterRules && spec.base.inlay === "counterchange"
      ? letterRow(text, shape, catalog.rules.edge.widthMm, letterRules)
      : null;
  if (!row) {
    const pieces = [...text].filter((character) => character.trim() !== "").length;
    return { capHeightMm: rules.cut.inlayCapHeightMm, pieces, place: "" };
  }
  const { capHeightMm, fromXMm, toXMm, letters, islands } = row;
  const pieces = islands === 0 ? "" : `, ${islands} ${islands === 1 ? "island" : "islands"} of the own base set back`;
  const place = `, from ${mmText(Math.round(fromXMm))} to ${mmText(Math.round(toXMm))} mm from the tip${pieces}`;
  return { capHeightMm, pieces: letters + islands, place };
}

function edgeLines(context: PartsContext): PartLine[] {
  const { catalog, measures, shape, rules } = context;
  const { edge } = catalog.rules;
  const steel = sheetById(catalog.materials, edge.material);
  const isFull = shape.edgeWrap === "full";
  const lengthMm = isFull ? measures.perimeterMm : 2 * measures.edgeCarryingMm;
  const cut = isFull
    ? `one piece of ${mmText(lengthMm)} mm all round`
    : `two pieces of ${mmText(measures.edgeCarryingMm)} mm, ${reachText(context)}`;
  const barG = (lengthMm * edge.widthMm * edge.heightMm * steel.densityKgM3) / 1e6;
  const facts = {
    cut,
    material: `${steel.label} ${mmText(edge.widthMm)} × ${mmText(edge.heightMm)} mm with anchors`,
    lengthMm,
    widthMm: edge.widthMm,
    thicknessMm: edge.heightMm,
    netMassG: barG * edge.anchorMassFactor,
    layers: ["edges"],
  };
  return [
    line(context, "edge-left", { ...facts, left: 1 }),
    line(context, "edge-right", { ...facts, right: 1 }),
    line(context, "edge-joint", {
      cut: isFull ? "at the tail joint" : "between the edge ends, tip and tail",
      each: isFull ? 1 : 2,
      layers: ["edges"],
    }),
    line(context, "edge-adhesive", {
      cut: "a dot every 100 to 150 mm",
      netMassG: rules.use.edgeAdhesiveG,
      pair: rules.use.edgeAdhesiveG,
      layers: ["edges"],
    }),
  ];
}

function rubberLines(context: PartsContext): PartLine[] {
  const { catalog, measures, shape, rules } = context;
  const { edgeRubber } = catalog.rules;
  const rubber = sheetById(catalog.materials, edgeRubber.material);
  const alongMm = shape.edgeWrap === "full" ? measures.perimeterMm / 2 : measures.edgeCarryingMm;
  const foil = (lengthMm: number) => {
    const strip = rectangle(lengthMm, edgeRubber.widthMm);
    const { thicknessMm } = edgeRubber;
    return {
      ...strip,
      material: `${rubber.label}, ${thicknessMm} mm`,
      thicknessMm,
      netMassG: sheetMassG(strip.areaMm2, thicknessMm, rubber.densityKgM3),
      each: 2,
    };
  };
  const blank = baseBlank(context);
  return [
    line(context, "edge-rubber", { ...foil(alongMm), layers: ["edge-rubber"] }),
    line(context, "end-rubber", { ...foil(rules.cut.endRubberLengthMm), layers: ["edge-rubber"] }),
    line(context, "base-film", { ...blank, each: 1 }),
  ];
}
