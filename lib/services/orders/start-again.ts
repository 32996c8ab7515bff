/** An owner lets work be thrown away: the branches before the lay-up begin again from the strips. */
import type { Tx } from "#data/client";
import { type PairRecord, reopenOperations, setOperationStates } from "#data/pairs";
import type { SpecificationPart } from "#engine/floor";
import { stationsBefore } from "#engine/routing";

const firstJoined = 10;
const branches: readonly number[] = [2, 3, 4, 5, 6, 7, 8, 9];

/** Only a change of shape or core starts over cleanly, and only while nothing is glued together. */
export function canStartAgain(pair: PairRecord, parts: readonly SpecificationPart[]): boolean {
  const isJoined = pair.operations.some(
    (operation) => operation.station >= firstJoined && operation.startedAt !== null,
  );
  return !isJoined && pair.state !== "shipped" && parts.some((part) => part === "shape" || part === "core");
}

/** Takes the ticks of the branches back; what they made is scrap or spare. */
export async function startAgain(tx: Tx, pair: PairRecord): Promise<void> {
  const redone = pair.operations.filter((operation) => branches.includes(operation.station));
  await reopenOperations(
    tx,
    redone.map((operation) => operation.id),
  );
  const isReleased = pair.operations.some((operation) => operation.station === 1 && operation.state === "done");
  if (!isReleased) return;
  const first = redone.filter((operation) => stationsBefore(operation.station).every((station) => station === 1));
  await setOperationStates(
    tx,
    first.map((operation) => operation.id),
    "blocked",
    "ready",
  );
}
