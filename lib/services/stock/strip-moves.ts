/** Strips that are held for a pair go back to the shelf, into a core, or out with a scrapped ski. */
import type { Tx } from "#data/client";
import { consumeStrips, releaseStrips, scrapSkiStrips } from "#data/strips";
import { moveState } from "#services/move";

/** Puts back every strip of the pair that was not cut. @returns how many came back */
export async function putStripsBack(tx: Tx, pairId: string): Promise<number> {
  let count = 0;
  await moveState(tx, { kind: "strip", from: "reserved", to: "free" }, async () => {
    count = await releaseStrips(tx, pairId);
    return true;
  });
  return count;
}

/** The strips of the pair go into a core. */
export async function consumeHeldStrips(tx: Tx, pairId: string): Promise<void> {
  await moveState(tx, { kind: "strip", from: "reserved", to: "used" }, async () => {
    await consumeStrips(tx, pairId);
    return true;
  });
}

/** The strips of one ski are gone with it. */
export async function scrapStripsOf(tx: Tx, pairId: string, side: "L" | "R"): Promise<void> {
  await moveState(tx, { kind: "strip", from: "reserved", to: "used" }, async () => {
    await scrapSkiStrips(tx, pairId, side);
    return true;
  });
}
