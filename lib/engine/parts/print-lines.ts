/** Lines 32 to 36: topsheet, its print and what protects it. */
import { sheetById } from "#engine/materials";
import { line, materialIdOf, type PartsContext, rectangle, sheetMassG } from "./context";
import type { PartLine } from "./types";

export function printLines(context: PartsContext): readonly PartLine[] {
  const { shape, widestMm, rules, solved, catalog, spec } = context;
  const { topsheetExtraLengthMm, topsheetExtraWidthMm, printExtraMm, tissueExtraMm } = rules.cut;
  const layer = solved.build.layers.find((each) => each.role === "topsheet");
  if (layer?.role !== "topsheet") throw new RangeError("build.layers: no topsheet");
  const sheet = sheetById(catalog.materials, materialIdOf(layer.material));
  const top = rectangle(shape.lengthMm + topsheetExtraLengthMm, widestMm + topsheetExtraWidthMm);
  const hasWindows = spec.graphic.windows.length > 0;
  const print = rectangle(top.lengthMm + printExtraMm, top.widthMm + printExtraMm);
  const inkMl = Math.round((2 * top.areaMm2 * rules.use.inkMlM2) / 1e6);
  const own = spec.graphic.kind === "own" ? "own-graphic" : undefined;
  return [
    line(context, "topsheet", {
      ...top,
      cut: `${top.cut}${hasWindows ? ", clear under the windows" : ", backed white where printed light"}`,
      material: `${sheet.label}, ${layer.thicknessMm} mm`,
      thicknessMm: layer.thicknessMm,
      netMassG: sheetMassG(top.areaMm2, layer.thicknessMm, sheet.densityKgM3),
      each: 1,
      fromOption: hasWindows ? "window" : undefined,
      layers: [layer.id],
    }),
    line(context, "transfer-print", { ...print, cut: `${print.cut}, left and right marked`, each: 1, fromOption: own }),
    line(context, "sublimation-ink", { cut: "both sheets", pair: inkMl }),
    line(context, "tissue", { ...rectangle(top.lengthMm + tissueExtraMm, top.widthMm + tissueExtraMm), each: 1 }),
    line(context, "topsheet-film", { ...top, each: 1 }),
  ];
}
