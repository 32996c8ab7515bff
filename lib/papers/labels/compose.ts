/** Composes the labels of one pair. */

import { mouldName } from "#papers/build-sheet/compose";
import type { BuildSheetFacts } from "#papers/parts/facts";
import { modelOf } from "#papers/parts/spec-rows";
import type { LabelsData } from "./facts";

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
