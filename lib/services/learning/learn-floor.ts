/** What the floor's record teaches today, and which books there are. */
import { sha256Of } from "#catalog";
import type { Tx } from "#data/client";
import { allFloorBooks, type FloorBookRow } from "#data/floor-books";
import { type FloorLearning, learnFloor } from "#engine/floor-learning";
import { handbookCatalog } from "#shop/catalogue/current";
import { floorHistory } from "./floor-history";

export interface LearntFloor {
  readonly learning: FloorLearning;
  /** Latest first. */
  readonly books: readonly FloorBookRow[];
  /** Changes with every tick of the days looked at, with every book, and with the content. */
  readonly fingerprint: string;
}

/** The last fit: most readers come with the same data. */
let last: { readonly fingerprint: string; readonly learning: FloorLearning } | undefined;

export function floorVersionOf(number: number): string {
  return `FB-${number}`;
}

export async function learntFloor(client: Tx, now: Date): Promise<LearntFloor> {
  const [history, books] = [await floorHistory(client, now), await allFloorBooks(client)];
  const { floor, floorLearning, hash } = handbookCatalog();
  const number = books[0]?.number ?? 0;
  const fingerprint = sha256Of({ content: hash, settings: floorLearning, history, books: number });
  if (last?.fingerprint !== fingerprint)
    last = { fingerprint, learning: learnFloor(floor, history, floorLearning, floorVersionOf(number + 1)) };
  return { learning: last.learning, books, fingerprint };
}
