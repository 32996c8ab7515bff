/** Composes the labels of one pair. */

import { mouldName } from "#papers/build-sheet/compose";
import type { BuildSheetFacts } from "#papers/parts/facts";
import { pairTitle } from "#papers/parts/spec-rows";
import type { LabelsData } from "./facts";

type LabelFacts = Pick<BuildSheetFacts, "shop" | "stamp" | "pair" | "catalog" | "spec">;

/** @throws RangeError when the spec names a model the catalogue does not have */
export function composeLabels({ shop, stamp, pair, catalog, spec }: LabelFacts): LabelsData {
  return {
    shop,
    stamp,
    pair,
    title: pairTitle(spec, catalog),
    mould: mouldName(spec, catalog),
  };
}
