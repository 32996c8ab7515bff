/** Text becomes an id here and nowhere else: read from a column, from a form or from an address. */
import { z } from "zod";
import type {
  ArtworkId,
  ClubId,
  CustomerId,
  FloorChangeId,
  IncidentId,
  NoticeId,
  OperationId,
  OrderId,
  PairId,
  ProofId,
  QuoteId,
  SheetId,
  SkiId,
} from "#engine/units";

/** What has an id, by the name that its id carries. */
export interface IdsByName {
  readonly sheet: SheetId;
  readonly customer: CustomerId;
  readonly quote: QuoteId;
  readonly order: OrderId;
  readonly pair: PairId;
  readonly ski: SkiId;
  readonly operation: OperationId;
  readonly artwork: ArtworkId;
  readonly proof: ProofId;
  readonly incident: IncidentId;
  readonly notice: NoticeId;
  readonly club: ClubId;
  readonly "floor-change": FloorChangeId;
}
export type IdName = keyof IdsByName;

function isId<Name extends IdName>(_name: Name, text: string): text is string & IdsByName[Name] {
  return text !== "";
}

/** @throws RangeError when it is empty; that it names a row is for who reads it */
export function idOf<Name extends IdName>(name: Name, text: string): IdsByName[Name] {
  if (!isId(name, text)) throw new RangeError(`"${text}" is no ${name} id`);
  return text;
}

/** The same as a schema. */
export function idSchema<Name extends IdName>(name: Name) {
  return z
    .string()
    .refine((text) => isId(name, text), { error: `not a ${name} id` })
    .transform((text) => idOf(name, text));
}
