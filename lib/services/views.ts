/** Everything a page may be shown, as types: the one door for code that runs in the browser. */
export type {
  ArtworkId,
  ClubId,
  CustomerId,
  FloorChangeId,
  IncidentId,
  Instant,
  NoticeId,
  OperationId,
  OrderId,
  PairId,
  ProofId,
  QuoteId,
  SheetId,
  SkiId,
} from "#engine/units";
export type * from "#services/clubs/views";
export type * from "#services/customers/views";
export type * from "#services/floor/views";
export type * from "#services/learning/views";
export type * from "#services/letters/views";
export type * from "#services/people/views";
export type * from "#services/planning/breakdowns/views";
export type * from "#services/planning/order/views";
export type * from "#services/planning/promises/views";
export type * from "#services/planning/what-if/views";
export type * from "#services/quotes/views";
export type * from "#services/sheets/views";
export type * from "#services/stock/views";
export type * from "#shop/board/views";
export type * from "#shop/floor/views";
export type * from "#shop/money/views";
export type * from "#shop/names/views";
export type * from "#shop/order/views";
export type * from "#shop/pair/views";
export type * from "#shop/queue/views";
