/** States that belong together, read from the table of moves: nobody writes such a list by hand. */
import { moves, type OperationState, type OrderState, type StatefulKind, type StatesByKind, states } from "./states";

/** States from which the normal course, without exceptions, still leads through a verb. */
function leadingTo<K extends StatefulKind>(kind: K, verb: string): readonly StatesByKind[K][] {
  const found = new Set<string>();
  const isAhead = (move: (typeof moves)[K][number]) =>
    move.verb === verb || (move.needsReason !== true && found.has(move.to));
  for (let size = -1; found.size > size; ) {
    size = found.size;
    for (const move of moves[kind].filter(isAhead)) found.add(move.from);
  }
  return all(kind).filter((state) => found.has(state));
}

/** States that can be come to by a verb and whatever follows it. */
function since<K extends StatefulKind>(kind: K, verb: string): readonly StatesByKind[K][] {
  const found = new Set<string>(moves[kind].filter((move) => move.verb === verb).map(({ to }) => to));
  for (let size = -1; found.size > size; ) {
    size = found.size;
    for (const { from, to } of moves[kind]) if (found.has(from)) found.add(to);
  }
  return all(kind).filter((state) => found.has(state));
}

function without<T>(list: readonly T[], others: readonly T[]): readonly T[] {
  return list.filter((each) => !others.includes(each));
}

function all<K extends StatefulKind>(kind: K): readonly StatesByKind[K][] {
  const known: { readonly [Kind in StatefulKind]: readonly StatesByKind[Kind][] } = states;
  return known[kind];
}

/** Pairs that still need the floor, waiting ones too. */
export const openPairStates: readonly OrderState[] = leadingTo("pair", "finish");
/** Pairs that are on the floor: released and not finished. */
export const pairStatesOnFloor: readonly OrderState[] = leadingTo("pair", "finish").filter((state) =>
  since("pair", "release").includes(state),
);
/** Orders and pairs that can no longer be cancelled: gone out, or cancelled. */
export const closedStates: readonly OrderState[] = without(
  states.order,
  moves.order.filter(({ verb }) => verb === "cancel").map(({ from }) => from),
);
/** Orders and pairs that have left the shop. */
export const shippedStates: readonly OrderState[] = since("order", "ship");
/** Pairs of which nothing has been built, or nothing is there any more. */
export const unbuiltStates: readonly OrderState[] = without(states.pair, [
  ...leadingTo("pair", "ship").filter((state) => since("pair", "start").includes(state)),
  ...since("pair", "ship"),
]);
/** Work that has been begun at some time, finished or failed. */
export const begunOperationStates: readonly OperationState[] = without(
  states.operation,
  leadingTo("operation", "start"),
);
/** Work that stands: under way or done, and not failed. */
export const standingOperationStates: readonly OperationState[] = without(
  begunOperationStates,
  moves.operation.filter(({ verb }) => verb === "fail").map(({ to }) => to),
);

/** Whether a stored state is one of some; what is stored is text. */
export function isOneOf<State extends string>(list: readonly State[], state: string): state is State {
  return (list as readonly string[]).includes(state);
}
