/** Places in the queue given by hand: written with what they were, so that a decision can be taken back as a whole. */
import type { Tx } from "#data/client";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { pairById } from "#data/pairs";
import { insertPlanMoves, setPlace } from "#data/plan-moves";
import type { Context } from "#services/context";
import { eventOf, nameOf } from "#services/record";

export interface PlacesToGive {
  readonly decisionId: string;
  readonly reason: string;
  /** A shop minute to rank by; null: by its promise again. */
  readonly places: readonly { readonly pairId: string; readonly placeMinute: number | null }[];
}

/** Writes the places, their moves and an event for each pair, and raises the queue's revision. */
export async function givePlaces(ctx: Context, tx: Tx, { decisionId, reason, places }: PlacesToGive): Promise<void> {
  await bumpQueue(tx);
  for (const { pairId, placeMinute } of places) {
    const pair = await pairById(tx, pairId);
    if (pair === null) throw new Error(`pair ${pairId} is not there`);
    await setPlace(tx, pairId, placeMinute);
    await insertPlanMoves(tx, [
      {
        id: ctx.newId(),
        pairId,
        fromPlace: pair.placeMinute,
        toPlace: placeMinute,
        decisionId,
        reason,
        at: ctx.now,
        byName: nameOf(ctx.actor),
      },
    ]);
    const data = { from: pair.placeMinute, to: placeMinute, reason, decisionId };
    await recordEvents(tx, [eventOf(ctx, "place-given", { kind: "pair", id: pairId }, data)]);
  }
}
