import { issueLink } from "../../auth";
import { recordEvents } from "../../data/events";
import { insertSheet } from "../../data/sheets";
import { transaction } from "../../data/transaction";
import { accept, type Outcome } from "../../engine/units";
import type { Context } from "../context";
import { eventOf, nameOf } from "../record";
import type { OpenedSheet, SheetId } from "../views";
import { findSheet } from "./find-sheet";
import { leaseFor } from "./lease";
import { sheetView } from "./view";

/**
 * A quoted sheet stays what its quote was made from; a change begins on a copy of it. Acknowledged flags are not copied:
 * somebody decides again. Staff and the sheet's skier may.
 */
export async function copySheet(ctx: Context, input: { readonly sheetId: SheetId }): Promise<Outcome<OpenedSheet>> {
  const found = await findSheet(ctx, ctx.db, "sheet.change", input.sheetId);
  if (!found.ok) return found;
  const { fields, channel, phoneNormalised, customerId } = found.value;
  const copied = Object.entries(fields)
    .filter(([path, entry]) => !path.startsWith("acks.") && entry.value !== null)
    .map(([path, entry]) => [path, { ...entry, version: 1 }] as const);
  return transaction(ctx.db, async (tx) => {
    const record = await insertSheet(tx, {
      id: ctx.newId(),
      channel,
      fields: Object.fromEntries(copied),
      phoneNormalised,
      customerId,
      ...leaseFor(ctx),
      openedByName: nameOf(ctx.actor),
      now: ctx.now,
    });
    const subject = { kind: "sheet", id: record.id } as const;
    await recordEvents(tx, [eventOf(ctx, "sheet-opened", subject, { channel, copyOf: input.sheetId })]);
    const token = await issueLink(tx, subject, { id: ctx.newId(), now: ctx.now });
    return accept({ sheet: await sheetView(tx, record, ctx.actor, ctx.now), token, wasOpen: false, knownAs: null });
  });
}
