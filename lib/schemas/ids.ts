/**
 * Opaque row ids, one brand an aggregate, so that a quote's id is never passed where an order's is wanted. Text becomes an id
 * here and nowhere else: read from a column, from a form or from an address.
 */
import { z } from "zod";

declare const idBrand: unique symbol;
type Id<Name extends string> = string & { readonly [idBrand]: Name };

/** What has an id, by the name that its id carries. */
export interface IdsByName {
  readonly sheet: Id<"sheet">;
  readonly customer: Id<"customer">;
  readonly quote: Id<"quote">;
  readonly order: Id<"order">;
  readonly pair: Id<"pair">;
  readonly ski: Id<"ski">;
  readonly operation: Id<"operation">;
  readonly artwork: Id<"artwork">;
  readonly proof: Id<"proof">;
  readonly incident: Id<"incident">;
  readonly notice: Id<"notice">;
  readonly club: Id<"club">;
  readonly "floor-change": Id<"floor-change">;
}
export type IdName = keyof IdsByName;

export type SheetId = IdsByName["sheet"];
export type CustomerId = IdsByName["customer"];
export type QuoteId = IdsByName["quote"];
export type OrderId = IdsByName["order"];
export type PairId = IdsByName["pair"];
export type SkiId = IdsByName["ski"];
export type OperationId = IdsByName["operation"];
export type ArtworkId = IdsByName["artwork"];
export type ProofId = IdsByName["proof"];
export type IncidentId = IdsByName["incident"];
export type NoticeId = IdsByName["notice"];
export type ClubId = IdsByName["club"];
export type FloorChangeId = IdsByName["floor-change"];

/** Longer than any id that was ever given. */
const longestId = 200;

function isId<Name extends IdName>(_name: Name, text: string): text is string & IdsByName[Name] {
  return text.length > 0 && text.length <= longestId;
}

/** @throws RangeError when it cannot be an id: empty, or longer than one ever was */
export function idOf<Name extends IdName>(name: Name, text: string): IdsByName[Name] {
  if (!isId(name, text)) throw new RangeError(`"${text.slice(0, 40)}" is not the id of a ${name}`);
  return text;
}

/** The same as a schema. */
export function idSchema<Name extends IdName>(name: Name) {
  return z
    .string()
    .refine((text) => isId(name, text), { error: `not the id of a ${name}` })
    .transform((text) => idOf(name, text));
}
