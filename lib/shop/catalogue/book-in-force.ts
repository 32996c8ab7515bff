/**
 * The books in force, of corrections and for the floor, held in the memory of this process so that the catalogue can be read
 * without waiting. Read anew with every context: an approval in another process is seen by the next request.
 */
import type { Db } from "#data/client";
import { latestFloorBook } from "#data/floor-books";
import { latestBook } from "#data/learning";
import type { FloorBook } from "#engine/floor-learning";
import type { Corrections } from "#engine/materials";

interface Held {
  /** Whose books they are. */
  db?: Db;
  number: number;
  corrections: Corrections | null;
  floorNumber: number;
  floor: FloorBook | null;
  /** Readings of the database begun so far, and the latest one that counted: an older answer never replaces a newer. */
  begun: number;
  counted: number;
}

// On globalThis because a server's bundles may each hold a copy of this module.
const shelf = globalThis as typeof globalThis & { pairwrightBooks?: Held };

function held(): Held {
  shelf.pairwrightBooks ??= { number: 0, corrections: null, floorNumber: 0, floor: null, begun: 0, counted: 0 };
  return shelf.pairwrightBooks;
}

/** Null while the handbook's values count. */
export function correctionsInForce(): Corrections | null {
  return held().corrections;
}

/** Null while the floor's settings count. */
export function floorBookInForce(): FloorBook | null {
  return held().floor;
}

/** Reads the latest books: when a context is opened, and after an approval. */
export async function refreshBooks(db: Db): Promise<void> {
  const state = held();
  state.begun += 1;
  const ticket = state.begun;
  const [book, floorBook] = await Promise.all([latestBook(db), latestFloorBook(db)]);
  if (ticket < state.counted) return;
  state.counted = ticket;
  const [number, floorNumber] = [book?.number ?? 0, floorBook?.number ?? 0];
  // The same book stays the same object, by which cores and routes already worked out are remembered.
  const isSame = state.db === db;
  if (!isSame || state.number !== number) Object.assign(state, { number, corrections: book?.corrections ?? null });
  if (!isSame || state.floorNumber !== floorNumber)
    Object.assign(state, { floorNumber, floor: floorBook?.book ?? null });
  state.db = db;
}
