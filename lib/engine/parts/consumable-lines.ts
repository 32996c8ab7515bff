/** Lines 38 to 53: resin and what is used up, tags, protectors, packing and papers. */
import { line, mmText, type PartsContext, rectangle } from "./context";
import type { PartLine, ResinBatch } from "./types";

export function consumableLines(context: PartsContext, resin: ResinBatch): readonly PartLine[] {
  return [...resinLines(context, resin), ...finishLines(context), ...packingLines(context)];
}

function resinLines(context: PartsContext, resin: ResinBatch): PartLine[] {
  const { rules, shape } = context;
  const fillerG = Math.round((resin.resinG * rules.use.fillerPercentOfResin) / 100);
  const film = rectangle(shape.lengthMm + rules.cut.releaseFilmExtraLengthMm, rules.cut.releaseFilmWidthMm);
  return [
    line(context, "resin", { cut: "loss included, in small pots", netMassG: resin.resinG, pair: resin.resinG }),
    line(context, "hardener", {
      cut: `${rules.resin.hardenerPer100} to 100 of resin by weight`,
      netMassG: resin.hardenerG,
      pair: resin.hardenerG,
    }),
    line(context, "filler", { cut: "as needed", netMassG: fillerG, pair: fillerG }),
    line(context, "release-film", { ...film, each: 2 }),
    line(context, "flash-tape", { cut: "", pair: 1 }),
    line(context, "lay-up-sundries", { cut: "", pair: 1 }),
  ];
}

function finishLines(context: PartsContext): PartLine[] {
  const { rules, measures, shape, spec } = context;
  const waxG = Math.round((2 * measures.planAreaMm2 * rules.use.waxGM2) / 1e6);
  const protectors: PartLine[] = spec.tipTailProtectors
    ? [
        line(context, "protectors", {
          cut: `to the ends of the outline, tail ${mmText(shape.heelWidthMm)} mm`,
          widthMm: shape.heelWidthMm,
          each: 2,
          fromOption: "tip-tail-protectors",
          layers: ["end-patches"],
        }),
      ]
    : [];
  return [
    line(context, "serial-tag", { ...rectangle(30, 8), each: 1 }),
    ...protectors,
    line(context, "edge-sealer", {
      cut: "all round after trimming",
      netMassG: rules.use.edgeSealerG,
      pair: rules.use.edgeSealerG,
    }),
    line(context, "abrasives", { cut: "", pair: 1 }),
    line(context, "wax", { cut: "hot base wax and travel wax", netMassG: waxG, pair: waxG }),
  ];
}

function packingLines(context: PartsContext): PartLine[] {
  const { rules, measures } = context;
  const { cartonExtraLengthMm, cartonWidthMm, cartonHeightMm } = rules.cut;
  const lengthMm = Math.ceil(measures.projectedLengthMm + cartonExtraLengthMm);
  return [
    line(context, "straps", { cut: "", pair: 2 }),
    line(context, "end-caps", { cut: "", each: 2 }),
    line(context, "carton", {
      cut: `${lengthMm} × ${mmText(cartonWidthMm)} × ${mmText(cartonHeightMm)} mm inside`,
      lengthMm,
      widthMm: cartonWidthMm,
      thicknessMm: cartonHeightMm,
      pair: 1,
    }),
    line(context, "papers", { cut: "", pair: 1 }),
    line(context, "shipping-label", { cut: "", pair: 1 }),
  ];
}
