/** Composes the labels of one pair. */
import type { BuildSheetFacts, LabelsData } from "../types";
import { modelOf } from "./spec-rows";

export type LabelFacts = Pick<BuildSheetFacts, "shop" | "stamp" | "pair" | "catalog" | "spec">;

/** @throws RangeError when the spec names a model the catalogue does not have */
export function composeLabels({ shop, stamp, pair, catalog, spec }: LabelFacts): LabelsData {
  const model = modelOf(spec, catalog);
  return {
    shop,
    stamp,
    pair,
    title: `${model.name} · ${spec.lengthCm} cm · revision ${model.revision}`,
    mould: model.lengths.find((l) => l.lengthCm === spec.lengthCm)?.mould ?? "none",
  };
}
