import { permit } from "#auth";
import { recordEvents } from "#data/events";
import { lockOpenSheet, updateSheet } from "#data/sheets";
import { transaction } from "#data/transaction";
import { assessSheet } from "#engine/assessment";
import type { SheetId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf, nameOf } from "#services/record";
import { engineOn } from "#shop/catalogue/current";
import { inputOf, mayBeLifted, stoppedBy } from "./assess-sheet";
import { checkReason } from "./follow-up";
import { whyClosed } from "./save-sheet";
import { sheetView } from "./view";
import type { SheetView } from "./views";

/**
 * The owner lets a stopped sheet be quoted, with a reason that is kept against every flag that stops it now; what is asked
 * for stays what it was. A missing answer or options that clash no word can lift. Refuses `reason-length`, `health-words`
 * (words), `nothing-to-allow`, `sheet-closed`.
 */
export async function allowSale(
  ctx: Context,
  input: { readonly sheetId: SheetId; readonly reason: string },
): Promise<Outcome<SheetView>> {
  const allowed = permit(ctx.actor, "quote.override");
  if (!allowed.ok) return allowed;
  const reason = checkReason(input.reason, "reason");
  if (!reason.ok) return reason;
  return transaction(ctx.db, async (tx) => {
    const locked = await lockOpenSheet(tx, input.sheetId, ctx.now);
    if (locked === null) return refuse(await whyClosed(tx, input.sheetId));
    const assessment = assessSheet(await inputOf(tx, locked), engineOn(ctx.now));
    const stops = stoppedBy(assessment, locked.content.flagAcks).filter(mayBeLifted);
    const codes = [...new Set(stops.map(({ code }) => code))];
    if (codes.length === 0) return refuse({ code: "nothing-to-allow" });
    const entry = {
      value: { reason: reason.value, byOwner: true },
      version: locked.version,
      by: nameOf(ctx.actor),
      at: ctx.now.toISOString(),
    };
    const record = await updateSheet(tx, locked.id, {
      fields: { ...locked.fields, ...Object.fromEntries(codes.map((code) => [`acks.${code}`, entry])) },
      reviewAskedAt: null,
      reviewNote: null,
    });
    const subject = { kind: "sheet", id: locked.id } as const;
    await recordEvents(tx, [eventOf(ctx, "sale-allowed", subject, { codes, reason: reason.value })]);
    return accept(await sheetView(tx, record, ctx.actor, ctx.now));
  });
}
