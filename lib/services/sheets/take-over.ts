import { permit } from "#auth";
import { recordEvents } from "#data/events";
import { lockOpenSheet, updateSheet } from "#data/sheets";
import { transaction } from "#data/transaction";
import type { SheetId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import { leaseFor, noLease } from "./lease";
import { whyClosed } from "./save-sheet";
import { leaseOf, sheetView } from "./view";
import type { SheetView } from "./views";

/** Staff take the lease of a draft, whoever has it; the former holder sees it on the next save or read. */
export async function takeOverSheet(ctx: Context, input: { readonly sheetId: SheetId }): Promise<Outcome<SheetView>> {
  return changeLease(ctx, input.sheetId, "taken-over");
}

/** Gives the lease back; somebody else's is left alone. */
export async function releaseSheet(ctx: Context, input: { readonly sheetId: SheetId }): Promise<Outcome<SheetView>> {
  return changeLease(ctx, input.sheetId, "put-down");
}

async function changeLease(
  ctx: Context,
  sheetId: SheetId,
  change: "taken-over" | "put-down",
): Promise<Outcome<SheetView>> {
  const allowed = permit(ctx.actor, "call.work");
  if (!allowed.ok) return allowed;
  return transaction(ctx.db, async (tx) => {
    const locked = await lockOpenSheet(tx, sheetId, ctx.now);
    if (locked === null) return refuse(await whyClosed(tx, sheetId));
    const before = leaseOf(locked, ctx.actor, ctx.now);
    if (change === "put-down" && before !== null && !before.isMine) {
      return accept(await sheetView(tx, locked, ctx.actor, ctx.now));
    }
    const record = await updateSheet(tx, sheetId, change === "taken-over" ? leaseFor(ctx) : noLease);
    if (change === "taken-over" && before !== null && !before.isMine) {
      const subject = { kind: "sheet", id: sheetId } as const;
      await recordEvents(tx, [eventOf(ctx, "sheet-taken-over", subject, { from: before.holder })]);
    }
    return accept(await sheetView(tx, record, ctx.actor, ctx.now));
  });
}
