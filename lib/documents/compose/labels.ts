/** Composes the labels of one pair. */
import type { BuildSheetFacts, LabelsData } from "../types";
import { mouldName } from "./build-sheet";
import { modelOf } from "./spec-rows";

type LabelFacts = Pick<BuildSheetFacts, "shop" | "stamp" | "pair" | "catalog" | "spec">;

/** @throws RangeError when the spec names a model the catalogue does not have */
export function composeLabels({ shop, stamp, pair, catalog, spec }: LabelFacts): LabelsData {
  const model = modelOf(spec, catalog);
  return {
    shop,
    stamp,
    pair,
    title: `${model.name} · ${spec.lengthCm} cm · revision ${model.revision}`,
    mould: mouldName(spec, catalog),
  };
}
