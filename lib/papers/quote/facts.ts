/** What a quote is about, as frozen. */
import type { PartialAnswers } from "#engine/assessment";
import type { BuildCatalog, PairSpec } from "#engine/configuration";
import type { FitFlag, Recommendation, TypedMeasures } from "#engine/fit";
import type { Price } from "#engine/pricing";
import type { IsoDate } from "#engine/units";
import type { LocalDateTime, PrintStamp, ShopFacts, SkiPictures, TermFacts } from "#papers/parts/facts";
import type { RangeFacts } from "#papers/parts/told-shares";

export interface QuoteFacts extends TermFacts {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly number: string;
  /** What its code opens: the customer's own page. */
  readonly url: string;
  readonly madeAt: LocalDateTime;
  readonly validUntil: IsoDate;
  readonly seller: string;
  readonly skierName: string;
  /** Null when the skier buys for themself. */
  readonly buyerName: string | null;
  readonly answers: PartialAnswers;
  /** As the measures were said. */
  readonly typed: TypedMeasures;
  readonly fit: {
    readonly recommendation: Recommendation;
    readonly flags: readonly FitFlag[];
    readonly modelName: string;
    readonly flexClassLabel: string;
  };
  readonly flagAcks: readonly { readonly code: string; readonly by: string }[];
  readonly catalog: BuildCatalog;
  readonly spec: PairSpec;
  /** Of a picture of the skier's own, while the shop has it. */
  readonly pictures: SkiPictures | null;
  readonly price: Price;
  /** Half and nine tenths of all runs are ready by these. */
  readonly dates: RangeFacts;
  readonly customerSpecified: readonly string[];
}
