/**
 * A person is forgotten: orders, quotes, numbers, money and days stay, without who it was. What an order must be kept for (what
 * was sold, for how much, when) does not need the name in this shop; whoever needs it longer exports first.
 */
import words from "#content/copy/customers.json";
import { dropPictures } from "#data/artwork";
import type { Tx } from "#data/client";
import { recordEvents } from "#data/events";
import { forgetRecord, forgetRows, sweepWords } from "#data/forget";
import {
  numbersOfOrders,
  openOrderNumbers,
  othersNamed,
  personKeys,
  revokePersonLinks,
  wordsOfPerson,
} from "#data/persons";
import { transaction } from "#data/transaction";
import type { CustomerId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import { orderNumber } from "#shop/names/numbers";
import { findCustomer } from "./find-customer";
import type { ErasedPerson } from "./views";

/** What stands where a word of theirs stood. */
export const erasedWord = words.erasedWord;

/** Owner only. Refuses `reason-missing`, `customer-gone`, `orders-open` (orders) while one is not delivered or cancelled. */
export async function erasePerson(
  ctx: Context,
  input: { readonly customerId: CustomerId; readonly reason: string },
): Promise<Outcome<ErasedPerson>> {
  const found = await findCustomer(ctx, ctx.db, "person.erase", input.customerId);
  if (!found.ok) return found;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  if (found.value.erasedAt !== null || found.value.mergedIntoId !== null) return refuse({ code: "customer-gone" });
  const done = await transaction(ctx.db, (tx) => eraseInside(ctx, tx, found.value.id, reason));
  if (!done.ok) return done;
  await dropPictures(ctx.db, done.value.files);
  return accept(done.value.erased);
}

export interface ErasedInside {
  readonly erased: ErasedPerson;
  /** Files of their pictures, to be deleted once the transaction has committed (`dropPictures`). */
  readonly files: readonly string[];
}

/** The same in the caller's transaction, after its own look at who may. */
export async function eraseInside(
  ctx: Context,
  tx: Tx,
  customerId: CustomerId,
  reason: string,
): Promise<Outcome<ErasedInside>> {
  const keys = await personKeys(tx, customerId);
  const open = await openOrderNumbers(tx, keys);
  if (open.length > 0) return refuse({ code: "orders-open", orders: open.map((number) => orderNumber({ number })) });
  const { names, contacts } = await wordsOfPerson(tx, keys);
  // A name that somebody else bears too stays where it is not known whose it is.
  const own: string[] = [];
  for (const name of names) if ((await othersNamed(tx, name, keys)) === 0) own.push(name);
  const forgetting = { keys, names, word: erasedWord, at: ctx.now };
  await revokePersonLinks(tx, keys, ctx.now);
  const files = await forgetRows(tx, forgetting);
  await forgetRecord(tx, forgetting);
  await sweepWords(tx, [...own, ...contacts], erasedWord);
  const orders = await numbersOfOrders(tx, keys);
  const erased = {
    orders: orders.map(orderNumber),
    quotes: keys.quoteIds.length,
    sheets: keys.sheetIds.length,
    pictures: keys.artworkIds.length,
  };
  const subject = { kind: "customer", id: customerId } as const;
  await recordEvents(tx, [eventOf(ctx, "person-erased", subject, { reason, ...erased })]);
  return accept({ erased, files });
}
