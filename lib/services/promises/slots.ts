/**
 * The life of a place in the queue: an accepted order keeps it unpaid for some working days, a proof that nobody answers
 * lets it slide, and whoever comes back is placed anew, behind those who have a place. Common practice, no source.
 */
import type { Tx } from "#data/client";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { type OrderRecord, updateOrder } from "#data/orders";
import { queueMessages } from "#data/outbox";
import { queuePairsAgain, type SlotOrder, waitingWithSlot } from "#data/promises";
import { transaction } from "#data/transaction";
import { addWorkingDays } from "#engine/routing";
import { accept, type IsoDate, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf, messageOf } from "#services/record";
import { floorCatalog } from "#shop/floor/recipe";
import { addDays, shopDay, startOfShopDay } from "#shop/time/shop-time";

export type SlotLoss = "hold-lapsed" | "proof-late";

/** The last day on which something is waited for: so many working days on. */
export function lastDayToWait(from: Date): IsoDate {
  const { hours, planning } = floorCatalog();
  return addWorkingDays(hours, shopDay(from, hours.timeZone), planning.softHoldWorkingDays);
}

/** The end of that day. */
function waitsUntil(from: Date): Date {
  return startOfShopDay(addDays(lastDayToWait(from), 1), floorCatalog().hours.timeZone);
}

/** Until when an order accepted now keeps its place without a deposit. */
export function softHoldUntil(acceptedAt: Date): Date {
  return waitsUntil(acceptedAt);
}

/** Why an order's place is given up now; null while it is kept. */
export function slotLoss(order: SlotOrder, now: Date): SlotLoss | null {
  if (order.depositPaidAt === null && order.softHoldUntil !== null && order.softHoldUntil <= now) return "hold-lapsed";
  const isIgnored = order.pairs.some((pair) => {
    const proof = pair.proofs.at(-1);
    return proof?.state === "issued" && waitsUntil(proof.issuedAt) <= now;
  });
  return isIgnored ? "proof-late" : null;
}

/**
 * Gives up the places that are due to be given up. The customer is told automatically; the queue moves up. Run by the clock;
 * running it twice does nothing more.
 */
export async function sweepSlots(ctx: Context): Promise<Outcome<{ readonly lost: number }>> {
  if (ctx.actor.kind !== "system") return refuse({ code: "not-allowed", action: "sweep", signIn: false });
  let lost = 0;
  for (const order of await waitingWithSlot(ctx.db)) {
    const reason = slotLoss(order, ctx.now);
    if (reason === null) continue;
    const isMine = await transaction(ctx.db, async (tx) => {
      const change = { slotLostAt: ctx.now, slotLostReason: reason };
      if (!(await updateOrder(tx, order.id, order.version, change))) return false;
      await bumpQueue(tx);
      const subject = { kind: "order", id: order.id } as const;
      await recordEvents(tx, [eventOf(ctx, "slot-lost", subject, { reason })]);
      const recipient = order.customer.email ?? order.customer.phone ?? "desk";
      await queueMessages(tx, [messageOf(ctx, "slot-lost", recipient, subject, { reason })]);
      return true;
    });
    if (isMine) lost += 1;
  }
  return accept({ lost });
}

/** What was missing has come in: a new place behind all others, from now. Called in the transaction that records it. */
export async function regainSlot(
  ctx: Context,
  tx: Tx,
  order: Pick<OrderRecord, "id" | "slotLostAt">,
  why: "deposit" | "proof",
): Promise<void> {
  if (order.slotLostAt === null) return;
  await tx.order.updateMany({
    where: { id: order.id, slotLostAt: { not: null } },
    data: { slotLostAt: null, slotLostReason: null, version: { increment: 1 } },
  });
  await queuePairsAgain(tx, order.id, ctx.now);
  await recordEvents(tx, [eventOf(ctx, "slot-given", { kind: "order", id: order.id }, { why })]);
}
