/** What a kit list prints. */
import type { CutRow, PairFacts, PrintStamp, Row, ShopFacts } from "#papers/parts/facts";

export interface KitRow extends CutRow {
  readonly code: string;
  readonly lot: string;
  readonly location: string;
  readonly isMandatory: boolean;
  readonly substitution: string;
}

export interface KitListData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly pair: PairFacts;
  readonly title: string;
  readonly identity: readonly Row[];
  readonly rows: readonly KitRow[];
  readonly resin: readonly Row[];
}
