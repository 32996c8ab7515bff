import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import { type Move, moves, type StatefulKind, type StatesByKind } from "./states";

export interface TransitionRefusal extends Refusal {
  readonly code: "transition-not-allowed" | "transition-needs-reason";
  readonly kind: StatefulKind;
  readonly from: string;
  readonly to: string;
  readonly allowed: readonly string[];
}

function movesOf<K extends StatefulKind>(kind: K): readonly Move<StatesByKind[K]>[] {
  return moves[kind];
}

/** The states that can follow `from`; empty when it is final. */
export function nextStates<K extends StatefulKind>(kind: K, from: StatesByKind[K]): readonly StatesByKind[K][] {
  return movesFrom(kind, from).map((move) => move.to);
}

/** The moves that can be made from `from`, with their verbs. */
export function movesFrom<K extends StatefulKind>(kind: K, from: StatesByKind[K]): readonly Move<StatesByKind[K]>[] {
  return movesOf(kind).filter((move) => move.from === from);
}

/** True when nothing can follow. */
export function isFinal<K extends StatefulKind>(kind: K, state: StatesByKind[K]): boolean {
  return movesFrom(kind, state).length === 0;
}

/**
 * The move from one state to another, or why there is none.
 *
 * @param reason what the person gave as reason; needed where the move leaves the normal course
 */
export function transition<K extends StatefulKind>(
  kind: K,
  from: StatesByKind[K],
  to: StatesByKind[K],
  reason = "",
): Outcome<Move<StatesByKind[K]>, TransitionRefusal> {
  const allowed = nextStates(kind, from);
  const move = movesFrom(kind, from).find((candidate) => candidate.to === to);
  if (move === undefined) return refuse({ code: "transition-not-allowed", kind, from, to, allowed });
  if (move.needsReason && reason.trim() === "") {
    return refuse({ code: "transition-needs-reason", kind, from, to, allowed, path: "reason" });
  }
  return accept(move);
}
