/** Composes the labels of one pair. */

import { mouldName } from "#papers/build-sheet/compose";
import type { PairFacts, PrintStamp, ShopFacts } from "#papers/parts/facts";
import { pairTitle } from "#papers/parts/spec-rows";
import type { LabelFacts } from "./facts";

/** Labels for the joins where left and right could be mixed up. */
export interface LabelsData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly pair: PairFacts;
  readonly title: string;
  readonly mould: string;
  readonly cautions: LabelFacts["cautions"];
  readonly labelCautions: LabelFacts["labelCautions"];
}

/** @throws RangeError when the spec names a model the catalogue does not have */
export function composeLabels({ shop, stamp, pair, catalog, spec, ...facts }: LabelFacts): LabelsData {
  return {
    shop,
    stamp,
    pair,
    title: pairTitle(spec, catalog),
    mould: mouldName(spec, catalog),
    cautions: facts.cautions,
    labelCautions: facts.labelCautions,
  };
}
