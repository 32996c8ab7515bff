/** An owner lets work be thrown away: the branches before the lay-up begin again from the strips. */

import type { Tx } from "#data/client";
import { moveOperation, notBegun, type PairRecord, setOperationStates } from "#data/pairs";
import { firstStation, isAtOrAfter, type SpecificationPart, type StationId } from "#engine/floor";
import { moveState } from "#services/move";
import { floorCatalog } from "#shop/floor/recipe";
import { mustPrecede, stationIdFor } from "#shop/floor/stations";

/** From the lay-up on everything is in one piece. */
function isJoined(station: StationId): boolean {
  return isAtOrAfter(floorCatalog(), station, stationIdFor("lay-up"));
}

/** Only a change of shape or core starts over cleanly, and only while nothing is glued together. */
export function canStartAgain(pair: PairRecord, parts: readonly SpecificationPart[]): boolean {
  const hasJoined = pair.operations.some(({ station, startedAt }) => isJoined(station) && startedAt !== null);
  return !hasJoined && pair.state !== "shipped" && parts.some((part) => part === "shape" || part === "core");
}

/** Takes the ticks of the branches back; what they made is scrap or spare. */
export async function startAgain(tx: Tx, pair: PairRecord, reason: string): Promise<void> {
  const release = firstStation(floorCatalog()).id;
  const redone = pair.operations.filter(({ station }) => station !== release && !isJoined(station));
  for (const { id, state, version } of redone.filter((operation) => operation.state !== "blocked")) {
    await moveState(tx, { kind: "operation", from: state, to: "blocked", reason }, () =>
      moveOperation(tx, id, { state, version }, "blocked", notBegun),
    );
  }
  const isReleased = pair.operations.some(({ station, state }) => station === release && state === "done");
  if (!isReleased) return;
  const first = redone.filter(({ station }) => mustPrecede(station).every((earlier) => earlier === release));
  await moveState(tx, { kind: "operation", from: "blocked", to: "ready" }, () =>
    setOperationStates(
      tx,
      first.map((operation) => operation.id),
      "blocked",
      "ready",
    ),
  );
}
