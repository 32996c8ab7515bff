/**
 * The book of corrections in force, held in the memory of this process so that the catalogue can be read without waiting.
 * Read anew with every context: an approval in another process is seen by the next request.
 */
import type { Db } from "#data/client";
import { latestBook } from "#data/learning";
import type { Corrections } from "#engine/materials";

interface Held {
  /** Whose book it is. */
  db?: Db;
  number: number;
  corrections: Corrections | null;
  /** Readings of the database begun so far, and the latest one that counted: an older answer never replaces a newer. */
  begun: number;
  counted: number;
}

// On globalThis because a server's bundles may each hold a copy of this module.
const shelf = globalThis as typeof globalThis & { pairwrightCorrections?: Held };

function held(): Held {
  shelf.pairwrightCorrections ??= { number: 0, corrections: null, begun: 0, counted: 0 };
  return shelf.pairwrightCorrections;
}

/** Null while the handbook's values count. */
export function correctionsInForce(): Corrections | null {
  return held().corrections;
}

/** Reads the latest book: when a context is opened, and after an approval. */
export async function refreshCorrections(db: Db): Promise<void> {
  const state = held();
  state.begun += 1;
  const ticket = state.begun;
  const book = await latestBook(db);
  if (ticket < state.counted) return;
  state.counted = ticket;
  const number = book?.number ?? 0;
  // The same book stays the same object, by which cores already solved are remembered.
  if (state.db === db && state.number === number) return;
  Object.assign(state, { db, number, corrections: book === null ? null : book.corrections });
}
