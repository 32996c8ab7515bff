/** Opaque row ids, one brand an aggregate, so that a quote's id is never passed where an order's is wanted. */
declare const idBrand: unique symbol;
type Id<Name extends string> = string & { readonly [idBrand]: Name };

export type SheetId = Id<"sheet">;
export type CustomerId = Id<"customer">;
export type QuoteId = Id<"quote">;
export type OrderId = Id<"order">;
export type PairId = Id<"pair">;
export type SkiId = Id<"ski">;
export type OperationId = Id<"operation">;
export type ArtworkId = Id<"artwork">;
export type ProofId = Id<"proof">;
export type IncidentId = Id<"incident">;
export type NoticeId = Id<"notice">;
export type ClubId = Id<"club">;
export type FloorChangeId = Id<"floor-change">;

/** An instant as ISO 8601 text in UTC; pages turn it into the shop's clock. */
export type Instant = string;
