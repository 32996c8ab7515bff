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
