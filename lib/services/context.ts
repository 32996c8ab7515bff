/**
 * What every use case stands on: who asks, what time it is, how new ids are made, and the database. Made once a request.
 */
import type { Actor } from "#auth";
import { db } from "#data/client";
import { newId } from "#data/ids";
import { translated } from "#data/transaction";
import { refreshBooks } from "#shop/catalogue/book-in-force";
import type { ShopContext } from "#shop/context";

/** A guest as far as one is told from another: digests, from which nobody can be found again. */
export interface Visitor {
  /** Whose share of the public doors is used; null where nobody can be told from others. */
  readonly share: string | null;
  /** What orders of one origin have in common. */
  readonly mark: string | null;
}

export interface Context extends ShopContext {
  readonly actor: Actor;
  /** Who a guest is among guests; absent for staff and for the program itself. */
  readonly visitor?: Visitor;
  /** Aborted when whoever asks has gone; absent where nobody waits for an answer. */
  readonly signal?: AbortSignal;
}

type Beside = Pick<Context, "visitor" | "signal">;

/** Opens the database if need be, names who asks, and sees which books are in force. @throws Unavailable */
export async function openContext(actor: Actor, now: Date, beside: Beside = {}): Promise<Context> {
  const client = await db();
  await translated(refreshBooks(client));
  return { actor, now, newId, db: client, ...beside };
}
