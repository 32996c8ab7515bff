/** Which pairs lack strips for a core that is still to be glued. */

import type { PairRecord } from "#data/pairs";
import { isOneOf, latestVisits, openPairStates } from "#engine/floor";
import { stationIdTaking } from "#shop/floor/stations";

/** A pair as far as its wood goes: of the queue or whole. */
type StripFacts = Pick<PairRecord, "state"> & {
  readonly heldStrips: readonly Pick<PairRecord["heldStrips"][number], "side">[];
  readonly operations: readonly PairRecord["operations"][number][];
};

/** Seven a ski. */
export const stripsOfPair = 14;

export function isStripsShort(pair: StripFacts): boolean {
  if (!isOneOf(openPairStates, pair.state)) return false;
  return pair.heldStrips.length < stripsOfPair && isCoreUncut(pair);
}

/** The same of a pair by itself: one whose order is not confirmed lacks nothing, as it may take nothing. */
export function isPairShort(pair: PairRecord): boolean {
  return pair.order.confirmedAt !== null && isStripsShort(pair);
}

/** The glue-up that comes next has not begun. */
export function isCoreUncut(pair: StripFacts): boolean {
  const gluing = stationIdTaking("strips");
  const core = latestVisits(pair.operations).find(({ station }) => station === gluing);
  return core !== undefined && core.startedAt === null;
}

/** The side that has no strips while the other one has; null when neither or both lack some. */
export function lackingSide(pair: StripFacts): "L" | "R" | null {
  const count = (side: string) => pair.heldStrips.filter((strip) => strip.side === side).length;
  if (count("L") > 0 && count("R") === 0) return "R";
  return count("R") > 0 && count("L") === 0 ? "L" : null;
}
