/**
 * The frozen zone: press starts of the next working days stand fast, so that kits, resin and moulds can be made ready. A slot
 * is fixed once by the plan, and given back when its time has passed without the pair on the bench. Only an owner may take one
 * away before, with a reason; the clock leaves that pair alone for the rest of the shop's day.
 */

import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { setPressSlot } from "#data/pairs";
import { pairsWithEventSince } from "#data/promises";
import { transaction } from "#data/transaction";
import { isOneOf, standingOperationStates } from "#engine/floor";
import { addWorkingDays, planQueue } from "#engine/routing";
import type { PairId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { findPair } from "#services/orders/find-order";
import { changed } from "#services/orders/gates";
import { eventOf } from "#services/record";
import { floorCatalog } from "#shop/floor/recipe";
import { stationIdFor } from "#shop/floor/stations";
import type { PairInQueue } from "#shop/queue/queued-pairs";
import { plannedSituation } from "#shop/queue/runs";
import { queuedPairs } from "#shop/queue/situation";
import { instantOfShopMinute, shopDay, startOfShopDay } from "#shop/time/shop-time";

const releasedKind = "press-slot-released";

interface SlotChange {
  readonly pair: PairInQueue;
  readonly slot: { readonly at: Date; readonly press: string } | null;
}

/** Run by the clock; running it twice does nothing more. */
export async function freezePressSlots(
  ctx: Context,
): Promise<Outcome<{ readonly fixed: number; readonly given: number }>> {
  if (ctx.actor.kind !== "system") return refuse({ code: "not-allowed", action: "sweep", signIn: false });
  const changes = await slotChanges(ctx);
  if (changes.length === 0) return accept({ fixed: 0, given: 0 });
  return transaction(ctx.db, async (tx) => {
    await bumpQueue(tx);
    let fixed = 0;
    let given = 0;
    for (const { pair, slot } of changes) {
      if (!(await setPressSlot(tx, pair.id, pair.version, slot))) continue;
      if (slot === null) given += 1;
      else fixed += 1;
      const kind = slot === null ? "press-slot-given-back" : "press-slot-fixed";
      const at = (slot?.at ?? pair.pressSlotAt)?.toISOString() ?? null;
      await recordEvents(tx, [eventOf(ctx, kind, { kind: "pair", id: pair.id }, { at, press: slot?.press ?? null })]);
    }
    return accept({ fixed, given });
  });
}

/** Takes a fixed press slot away, so that the pair can be moved. Owner only. Refuses `reason-missing`, `no-press-slot`, `changed-meanwhile`. */
export async function releasePressSlot(
  ctx: Context,
  input: { readonly pairId: PairId; readonly version: number; readonly reason: string },
): Promise<Outcome<{ readonly pairId: PairId }>> {
  const found = await findPair(ctx, ctx.db, "press-slot.release", input.pairId);
  if (!found.ok) return found;
  const pair = found.value;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  if (pair.pressSlotAt === null) return refuse({ code: "no-press-slot", serial: pair.serial });
  const data = { at: pair.pressSlotAt.toISOString(), press: pair.pressSlotPress, reason };
  return transaction(ctx.db, async (tx) => {
    if (!(await setPressSlot(tx, pair.id, input.version, null))) return refuse(changed(pair));
    await bumpQueue(tx);
    await recordEvents(tx, [eventOf(ctx, releasedKind, { kind: "pair", id: pair.id }, data)]);
    return accept({ pairId: input.pairId });
  });
}

async function slotChanges(ctx: Context): Promise<readonly SlotChange[]> {
  const { hours, planning } = floorCatalog();
  const pairs = await queuedPairs(ctx.db);
  const plan = planQueue(await plannedSituation(ctx.db, ctx.now));
  if (!plan.ok) throw new Error(`the queue does not fit the floor: ${plan.refusal.code}`);
  const last = addWorkingDays(hours, shopDay(ctx.now, hours.timeZone), Math.max(0, planning.frozenWorkingDays - 1));
  const startOfDay = startOfShopDay(shopDay(ctx.now, hours.timeZone), hours.timeZone);
  const released = await pairsWithEventSince(ctx.db, releasedKind, startOfDay);
  const planned = new Map(plan.value.pressPlan.map((slot) => [slot.pairId, slot] as const));
  return pairs.flatMap((pair): readonly SlotChange[] => {
    const isPast = pair.pressSlotAt !== null && pair.pressSlotAt <= ctx.now;
    if (pair.pressSlotAt !== null) return isPast || hasBegunLayUp(pair) ? [{ pair, slot: null }] : [];
    if (released.has(pair.id)) return [];
    const slot = planned.get(pair.id);
    if (slot === undefined || slot.date > last || pair.state === "waiting" || hasBegunLayUp(pair)) return [];
    const at = instantOfShopMinute(slot.startMinute, hours.timeZone);
    return at > ctx.now ? [{ pair, slot: { at, press: slot.press } }] : [];
  });
}

function hasBegunLayUp(pair: PairInQueue): boolean {
  const state = pair.operations.filter(({ station }) => station === stationIdFor("lay-up")).at(-1)?.state;
  return state !== undefined && isOneOf(standingOperationStates, state);
}
