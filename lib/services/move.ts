/** The one way in which a state changes. */
import type { Tx } from "#data/client";
import { type NewEvent, recordEvents } from "#data/events";
import { type StatefulKind, type StatesByKind, transition } from "#engine/floor";

export interface StateMove<K extends StatefulKind> {
  readonly kind: K;
  /** As it is stored. */
  readonly from: string;
  readonly to: StatesByKind[K];
  /** Why the normal course is left, where the move leaves it. */
  readonly reason?: string | null;
}

/**
 * Asks the table whether there is such a move, writes it on the condition that nobody was first, and records what happened,
 * all in the caller's transaction. What a person can ask for in vain is refused by the use case before.
 *
 * @param write false when somebody was first
 * @param events what is told of it; of a move that follows from another one nothing is told beside that
 * @returns false when somebody was first: then nothing is told
 * @throws Error when the table has no such move, or it needs a reason that is not given
 */
export async function moveState<K extends StatefulKind>(
  tx: Tx,
  { kind, from, to, reason }: StateMove<K>,
  write: () => Promise<boolean>,
  events: readonly NewEvent[] | (() => Promise<readonly NewEvent[]>) = [],
): Promise<boolean> {
  const move = transition(kind, from as StatesByKind[K], to, reason ?? "");
  if (!move.ok) throw new Error(`${kind} ${from} > ${to}: ${move.refusal.code}`);
  if (!(await write())) return false;
  const told = typeof events === "function" ? await events() : events;
  if (told.length > 0) await recordEvents(tx, told);
  return true;
}
