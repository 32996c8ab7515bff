/** Lines 1 to 12: strips, glue, sidewalls, spacers, plate and mat. */

import { halfOutline, outlineAreaMm2 } from "#engine/geometry";
import { fabricById, sheetById, woodById } from "#engine/materials";
import { clothMassG, line, materialIdOf, mmText, type PartsContext, rectangle, sheetMassG } from "./context";
import { stripBlank } from "./strip-blank";
import type { PartCode, PartLine } from "./types";

const STRIPS = [
  ["strip-c", "C", 1],
  ["strip-i", "I", 2],
  ["strip-m", "M", 2],
  ["strip-o", "O", 2],
] as const satisfies readonly (readonly [PartCode, "C" | "I" | "M" | "O", number])[];

export function coreLines(context: PartsContext): readonly PartLine[] {
  return [...stripLines(context), glueLine(context), ...sideLines(context), ...bindingLines(context)];
}

/** The blank before milling, as long and high as its strips. */
function blankOf({ solved, rules }: PartsContext) {
  return stripBlank(solved, 0, rules);
}

function stripLines(context: PartsContext): PartLine[] {
  const { resolved, rules, catalog, solved, spec } = context;
  const { model, blend } = resolved;
  const grade = spec.graphic.windows.length > 0 ? ", grade W" : "";
  const fromOption = blend.id === model.core.blend ? undefined : blend.id;
  return STRIPS.map(([code, position, each]) => {
    const wood = woodById(catalog.materials, blend.strips[position]);
    const column = solved.build.columns.findIndex((one) => one.position === position);
    const { lengthMm, widthMm, heightMm, planedMm } = stripBlank(solved, column, rules);
    return line(context, code, {
      cut: `${mmText(lengthMm)} × ${mmText(widthMm)} × ${mmText(heightMm)} mm rough, ${mmText(planedMm)} wide when planed`,
      material: `${wood.label}${grade}`,
      lengthMm,
      widthMm,
      thicknessMm: heightMm,
      netMassG: (lengthMm * widthMm * heightMm * wood.densityKgM3) / 1e6,
      each,
      fromOption,
      layers: ["core"],
    });
  });
}

const JOINTS_PER_CORE = 6;

function glueLine(context: PartsContext): PartLine {
  const { lengthMm, heightMm } = blankOf(context);
  const perSkiG = (JOINTS_PER_CORE * lengthMm * heightMm * context.catalog.rules.coreGlueGM2) / 1e6;
  const pair = Math.round(2 * perSkiG);
  return line(context, "core-glue", { cut: `${JOINTS_PER_CORE} joints a ski`, netMassG: pair, pair, layers: ["core"] });
}

function sideLines(context: PartsContext): PartLine[] {
  const { catalog, rules, measures, solved, shape, resolved } = context;
  const { sidewall, spacers } = catalog.rules;
  const { coreFromMm, coreToMm, core } = { ...solved.build, core: solved.core.profile.stations };
  const wall = sheetById(catalog.materials, sidewall.material);
  const spacer = sheetById(catalog.materials, spacers.material);
  const strip = {
    lengthMm: measures.edgeCarryingMm + rules.cut.sidewallExtraLengthMm,
    widthMm: sidewall.widthMm + rules.cut.flashMm,
    thicknessMm: blankOf(context).heightMm,
  };
  const spacerLine = (code: PartCode, end: "tip" | "tail") => {
    const lengthMm = (end === "tip" ? coreFromMm : shape.lengthMm - coreToMm) + spacers.scarfMm;
    const thicknessMm =
      (end === "tip" ? core[0] : core.at(-1))?.thicknessMm ?? resolved.model.core[end === "tip" ? "tipMm" : "tailMm"];
    const outline = halfOutline(shape).filter(({ xMm }) =>
      end === "tip" ? xMm <= lengthMm : xMm >= shape.lengthMm - lengthMm,
    );
    const areaMm2 = outlineAreaMm2(outline);
    return line(context, code, {
      cut: `outline of the ${end} to ${mmText(lengthMm)} mm, scarf of ${mmText(spacers.scarfMm)} included`,
      material: spacer.label,
      lengthMm,
      widthMm: 2 * Math.max(...outline.map((point) => point.halfWidthMm)),
      thicknessMm,
      areaMm2,
      netMassG: sheetMassG(areaMm2, thicknessMm, spacer.densityKgM3),
      each: 1,
      layers: ["spacers"],
    });
  };
  const glueG = rules.use.spacerAdhesiveG;
  return [
    line(context, "sidewall", {
      cut: `${mmText(strip.lengthMm)} × ${mmText(strip.widthMm)} × ${mmText(strip.thicknessMm)} mm, ${mmText(sidewall.widthMm)} wide when trimmed`,
      material: wall.label,
      ...strip,
      netMassG: (strip.lengthMm * strip.widthMm * strip.thicknessMm * wall.densityKgM3) / 1e6,
      each: 2,
      layers: ["sidewalls"],
    }),
    spacerLine("tip-spacer", "tip"),
    spacerLine("tail-spacer", "tail"),
    line(context, "spacer-adhesive", {
      cut: "abraded faces only",
      netMassG: glueG,
      pair: glueG,
      layers: ["sidewalls", "spacers"],
    }),
  ];
}

function bindingLines(context: PartsContext): PartLine[] {
  const { catalog, rules, solved, spec, shape } = context;
  const { plate } = solved.build;
  if (!plate) return [];
  const mat = solved.build.layers.find((layer) => layer.role === "mat");
  if (mat?.role !== "mat" || mat.extent.kind !== "zone") throw new RangeError("build.layers: a plate without its mat");
  const fromOption = spec.mount.offsetMm === 0 ? undefined : "mount";
  const sheet = rectangle(plate.lengthMm, plate.widthMm);
  const extra = rules.cut.plateRubberExtraMm;
  const foil = rectangle(plate.lengthMm + extra, plate.widthMm + extra);
  const rubber = sheetById(catalog.materials, catalog.rules.plate.rubber);
  const fabric = fabricById(catalog.materials, materialIdOf(mat.material));
  const cloth = rectangle(mat.extent.toMountMm - mat.extent.fromMountMm, mat.extent.widthMm ?? shape.waistWidthMm);
  const at = `centred ${mmText(plate.centreMm)} mm from the tip`;
  return [
    line(context, "plate", {
      ...sheet,
      cut: `${sheet.cut}, ${at}`,
      material: `${plate.material.label}, ${plate.thicknessMm} mm`,
      thicknessMm: plate.thicknessMm,
      netMassG: sheetMassG(sheet.areaMm2, plate.thicknessMm, plate.material.densityKgM3),
      each: 1,
      fromOption: spec.plate ?? fromOption,
      layers: ["plate"],
    }),
    line(context, "plate-rubber", {
      ...foil,
      material: `${rubber.label}, ${plate.rubberMm} mm`,
      thicknessMm: plate.rubberMm,
      netMassG: sheetMassG(foil.areaMm2, plate.rubberMm, rubber.densityKgM3),
      each: 1,
      fromOption,
      layers: ["plate-rubber"],
    }),
    line(context, "binding-mat", {
      ...cloth,
      cut: `${cloth.cut}, ${at}`,
      material: fabric.label,
      netMassG: clothMassG(cloth.areaMm2, fabric.arealWeightGM2),
      each: 1,
      fromOption,
      layers: [mat.id],
    }),
  ];
}
