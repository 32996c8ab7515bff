/** The order of the queue, moved by hand: looked at first, applied with a reason, taken back as a whole. */
import { permit } from "#auth";
import { bumpQueue, currentQueueRevision } from "#data/counters";
import { recordEvents } from "#data/events";
import { markPlanMovesUndone, planMovesOf, recentPlanMoves, setPlace } from "#data/plan-moves";
import { transaction } from "#data/transaction";
import {
  type GivenPlace,
  inQueueOrder,
  placesFor,
  type QueueSituation,
  queueRanges,
  standingOf,
  withPlaces,
} from "#engine/routing";
import type { PairId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf, nameOf } from "#services/record";
import { skiText } from "#shop/names/ski-text";
import { firstName } from "#shop/pair/view";
import { queueEffect } from "#shop/queue/effect";
import type { PairInQueue } from "#shop/queue/queued-pairs";
import { expectedDays } from "#shop/queue/range";
import { completeRuns, liveRuns, plannedSituation, previewRuns } from "#shop/queue/runs";
import { queuedPairs } from "#shop/queue/situation";
import { fixedBecause } from "./fixed-place";
import { givePlaces } from "./places";
import type { MovePreview, QueueOrder, QueuePlace } from "./views";

const shownMoves = 30;

export interface MoveInput {
  readonly pairId: PairId;
  /** Null: behind all others. */
  readonly before: PairId | null;
}

/** The queue in the order in which it is served, and what was moved lately. */
export async function readQueueOrder(ctx: Context): Promise<Outcome<QueueOrder>> {
  const allowed = permit(ctx.actor, "queue.read");
  if (!allowed.ok) return allowed;
  const { runs, revision } = await liveRuns(ctx.db, ctx.now);
  await completeRuns(runs, ctx.promiseRuns ?? previewRuns);
  const ranges = queueRanges(runs);
  const [pairs, moves] = await Promise.all([queuedPairs(ctx.db), recentPlanMoves(ctx.db, shownMoves)]);
  const byId = new Map<string, PairInQueue>(pairs.map((pair) => [pair.id, pair] as const));
  const places = inQueueOrder(runs.situation.pairs).flatMap((onFloor): readonly QueuePlace[] => {
    const pair = byId.get(onFloor.pairId);
    if (pair === undefined) return [];
    const range = ranges.get(pair.id) ?? null;
    return [
      {
        ...placeFacts(pair, ctx.now),
        expected: range === null ? null : expectedDays(range),
        standing: range === null ? "open" : standingOf(onFloor.promise, range.dates),
      },
    ];
  });
  return accept({ revision, places, moves: decisionsOf(moves) });
}

function placeFacts(pair: PairInQueue, now: Date): Omit<QueuePlace, "expected" | "standing"> {
  const spec = pair.spec;
  return {
    pairId: pair.id,
    orderId: pair.orderId,
    serial: pair.serial,
    skierFirstName: firstName(pair.skierName),
    ski: skiText(spec),
    mould: pair.mould,
    promiseClass: pair.order.promiseClass,
    promisedOn: pair.order.promisedOn,
    isByHand: pair.placeMinute !== null,
    fixedBecause: fixedBecause(pair, now),
  };
}

/** One entry a decision, newest first. */
function decisionsOf(moves: Awaited<ReturnType<typeof recentPlanMoves>>): QueueOrder["moves"] {
  const ids = [...new Set(moves.map(({ decisionId }) => decisionId))];
  return ids.map((decisionId) => {
    const own = moves.filter((move) => move.decisionId === decisionId);
    const [first] = own as [(typeof own)[number]];
    return {
      decisionId,
      at: first.at.toISOString(),
      by: first.byName,
      reason: first.reason,
      serials: own.map(({ pair }) => pair.serial),
      undone: first.undoneAt === null ? null : { at: first.undoneAt.toISOString(), by: first.undoneByName ?? "" },
    };
  });
}

/** What the move would do to every promise. Refuses `not-found`, `place-fixed`. */
export async function previewMove(ctx: Context, input: MoveInput): Promise<Outcome<MovePreview>> {
  const allowed = permit(ctx.actor, "queue.order");
  if (!allowed.ok) return allowed;
  const revision = await currentQueueRevision(ctx.db);
  const [situation, pairs] = await Promise.all([plannedSituation(ctx.db, ctx.now), queuedPairs(ctx.db)]);
  const found = placesOfMove(situation, pairs, input, ctx.now);
  if (!found.ok) return found;
  const { places, pair, before } = found.value;
  const effect = await queueEffect(ctx, (live) => ({ ...live, pairs: withPlaces(live.pairs, places) }));
  const position = (list: QueueSituation["pairs"]) =>
    inQueueOrder(list).findIndex((each) => each.pairId === pair.id) + 1;
  return accept({
    pairId: input.pairId,
    serial: pair.serial,
    before: before === null ? null : { pairId: before.id, serial: before.serial },
    fromPosition: position(situation.pairs),
    toPosition: position(withPlaces(situation.pairs, places)),
    revision,
    effect,
  });
}

/**
 * Moves the pair, if the queue is still the one that was looked at. Refuses `not-found`, `place-fixed`, `reason-missing`,
 * `queue-changed`.
 */
export async function applyMove(
  ctx: Context,
  input: MoveInput & { readonly revision: number; readonly reason: string },
): Promise<Outcome<{ readonly decisionId: string }>> {
  const allowed = permit(ctx.actor, "queue.order");
  if (!allowed.ok) return allowed;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  const [situation, pairs] = await Promise.all([plannedSituation(ctx.db, ctx.now), queuedPairs(ctx.db)]);
  const found = placesOfMove(situation, pairs, input, ctx.now);
  if (!found.ok) return found;
  const decisionId = ctx.newId();
  const changed = (revision: number) => refuse({ code: "queue-changed", revision, value: input.revision });
  return transaction(ctx.db, async (tx) => {
    // Looked at before it is raised, so that a refusal tells nobody that the queue has changed.
    const seen = await currentQueueRevision(tx);
    if (seen !== input.revision) return changed(seen);
    const before = (await bumpQueue(tx)) - 1;
    if (before !== input.revision) return changed(before);
    await givePlaces(ctx, tx, { decisionId, reason, places: found.value.places });
    return accept({ decisionId });
  });
}

/** Gives every pair of a decision the place that it had. Refuses `not-found`, `already-undone`, `moved-since`. */
export async function undoMove(
  ctx: Context,
  input: { readonly decisionId: string },
): Promise<Outcome<{ readonly decisionId: string }>> {
  const allowed = permit(ctx.actor, "queue.order");
  if (!allowed.ok) return allowed;
  return transaction(ctx.db, async (tx) => {
    await bumpQueue(tx);
    const moves = await planMovesOf(tx, input.decisionId);
    if (moves.length === 0) return refuse({ code: "not-found", what: "decision", id: input.decisionId });
    const later = (await recentPlanMoves(tx, shownMoves)).find(
      (move) =>
        move.undoneAt === null &&
        move.decisionId !== input.decisionId &&
        moves.some(({ pairId, at }) => pairId === move.pairId && at < move.at),
    );
    if (later !== undefined) return refuse({ code: "moved-since", serial: later.pair.serial, by: later.byName });
    const undone = { at: ctx.now, by: nameOf(ctx.actor) };
    if ((await markPlanMovesUndone(tx, input.decisionId, undone)) === 0) {
      return refuse({ code: "already-undone", by: moves[0]?.undoneByName ?? "" });
    }
    for (const move of moves) await setPlace(tx, move.pairId, move.fromPlace);
    await recordEvents(
      tx,
      moves.map((move) =>
        eventOf(
          ctx,
          "place-undone",
          { kind: "pair", id: move.pairId },
          { from: move.toPlace, to: move.fromPlace, decisionId: input.decisionId },
        ),
      ),
    );
    return accept({ decisionId: input.decisionId });
  });
}

interface FoundMove {
  readonly pair: PairInQueue;
  readonly before: PairInQueue | null;
  readonly places: readonly GivenPlace[];
}

function placesOfMove(
  situation: QueueSituation,
  pairs: readonly PairInQueue[],
  { pairId, before }: MoveInput,
  now: Date,
): Outcome<FoundMove> {
  const pair = pairs.find(({ id }) => id === pairId);
  if (pair === undefined) return refuse({ code: "not-found", what: "pair", path: "pairId" });
  const target = before === null ? null : pairs.find(({ id }) => id === before);
  if (target === undefined || before === pairId) return refuse({ code: "not-found", what: "pair", path: "before" });
  const places = placesFor(situation.pairs, pairId, before);
  const fixed = places
    .map((place) => pairs.find(({ id }) => id === place.pairId))
    .find((moved) => moved !== undefined && moved.id === pairId && fixedBecause(moved, now) !== null);
  if (fixed !== undefined) {
    return refuse({ code: "place-fixed", path: "pairId", serial: fixed.serial, why: fixedBecause(fixed, now) });
  }
  return accept({ pair, before: target, places });
}
