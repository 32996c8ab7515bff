/** What the labels of a pair print. */
import type { PairFacts, PrintStamp, ShopFacts } from "#papers/parts/facts";

/** Labels for the joins where left and right could be mixed up. */
export interface LabelsData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly pair: PairFacts;
  readonly title: string;
  readonly mould: string;
}
