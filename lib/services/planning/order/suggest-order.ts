/** A better order of the queue, looked for by the shop's own computer and applied by the owner alone. */
import { permit } from "#auth";
import { bumpQueue, currentQueueRevision } from "#data/counters";
import { transaction } from "#data/transaction";
import { searchOrder, withPlaces } from "#engine/routing";
import type { PairId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import { idOf } from "#schemas/ids";
import type { Context } from "#services/context";
import { queueEffect } from "#shop/queue/effect";
import { openQueue } from "#shop/queue/queued-pairs";
import { inSlices, plannedSituation } from "#shop/queue/runs";
import { queuedPairs } from "#shop/queue/situation";
import { fixedBecause } from "./fixed-place";
import { givePlaces } from "./places";
import type { SuggestedOrder } from "./views";

/** Plans that are made in the search; each takes some ten milliseconds with thirty pairs. */
const mostTrials = 160;

/**
 * The order found, with its effect on every promise; no places when nothing better was found. An order that pushes a pair
 * over its promise is none.
 */
export async function suggestOrder(ctx: Context): Promise<Outcome<SuggestedOrder>> {
  const allowed = permit(ctx.actor, "queue.order");
  if (!allowed.ok) return allowed;
  const revision = await currentQueueRevision(ctx.db);
  const [situation, pairs] = await Promise.all([plannedSituation(ctx.db, ctx.now), queuedPairs(ctx.db)]);
  const movable = new Set(pairs.filter((pair) => fixedBecause(pair, ctx.now) === null).map(({ id }) => id));
  const search = searchOrder(situation, movable);
  await inSlices(mostTrials, (to) => (search.tryNext() ? to : mostTrials));
  const { places, before, after } = search.best();
  const none = { revision, places: [], before, after: before, effect: null } as const;
  if (places.length === 0) return accept(none);
  const effect = await queueEffect(ctx, (live) => ({ ...live, pairs: withPlaces(live.pairs, places) }));
  if (effect.crossing.length > 0) return accept(none);
  const serials = new Map<string, string>(pairs.map(({ id, serial }) => [id, serial] as const));
  return accept({
    revision,
    places: places.map(({ pairId, placeMinute }) => ({
      pairId: idOf("pair", pairId),
      serial: serials.get(pairId) ?? "",
      placeMinute,
    })),
    before,
    after,
    effect,
  });
}

/** Gives these places. Refuses `reason-missing`, `queue-changed`, `not-found`, `place-fixed`. */
export async function applyOrder(
  ctx: Context,
  input: {
    readonly revision: number;
    readonly places: readonly { readonly pairId: PairId; readonly placeMinute: number }[];
    readonly reason: string;
  },
): Promise<Outcome<{ readonly decisionId: string }>> {
  const allowed = permit(ctx.actor, "queue.reorder");
  if (!allowed.ok) return allowed;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  const changed = (revision: number) => refuse({ code: "queue-changed", revision, value: input.revision });
  return transaction(ctx.db, async (tx) => {
    const seen = await currentQueueRevision(tx);
    if (seen !== input.revision) return changed(seen);
    const raised = (await bumpQueue(tx)) - 1;
    if (raised !== input.revision) return changed(raised);
    const pairs = new Map((await openQueue(tx)).map((pair) => [pair.id, pair] as const));
    for (const { pairId } of input.places) {
      const pair = pairs.get(pairId);
      if (pair === undefined || pair.order.slotLostAt !== null) {
        return refuse({ code: "not-found", what: "pair", path: "places" });
      }
      const why = fixedBecause(pair, ctx.now);
      if (why !== null) return refuse({ code: "place-fixed", serial: pair.serial, why });
    }
    const decisionId = ctx.newId();
    await givePlaces(ctx, tx, { decisionId, reason, places: input.places });
    return accept({ decisionId });
  });
}
