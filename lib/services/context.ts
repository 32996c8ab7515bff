/**
 * What every use case stands on: who asks, what time it is, how new ids are made, and the database. Made once a request.
 */
import type { Actor } from "#auth";
import { db } from "#data/client";
import { newId } from "#data/ids";
import { translated } from "#data/transaction";
import { refreshBooks } from "#shop/catalogue/book-in-force";
import type { ShopContext } from "#shop/context";

export interface Context extends ShopContext {
  readonly actor: Actor;
}

/** Opens the database if need be, names who asks, and sees which books are in force. @throws Unavailable */
export async function openContext(actor: Actor, now: Date): Promise<Context> {
  const client = await db();
  await translated(refreshBooks(client));
  return { actor, now, newId, db: client };
}
