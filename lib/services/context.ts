/**
 * What every use case stands on: who asks, what time it is, how new ids are made, and the database. Made once a request.
 */
import type { Actor } from "#auth";
import { type Db, db } from "#data/client";
import { newId } from "#data/ids";
import { translated } from "#data/transaction";
import { refreshCorrections } from "#services/catalogue/book-in-force";

export interface Context {
  readonly actor: Actor;
  readonly now: Date;
  readonly newId: () => string;
  /** How many runs a date is estimated from; absent: as many as it is worth. Fewer make a demo's past quickly. */
  readonly promiseRuns?: number;
  /** For services alone; pages never touch it. */
  readonly db: Db;
}

/** Opens the database if need be, names who asks, and sees which book of corrections is in force. @throws Unavailable */
export async function openContext(actor: Actor, now: Date): Promise<Context> {
  const client = await db();
  await translated(refreshCorrections(client));
  return { actor, now, newId, db: client };
}
