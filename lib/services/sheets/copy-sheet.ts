import { issueLink } from "#auth";
import { artworkById, copyArtwork } from "#data/artwork";
import { recordEvents } from "#data/events";
import { insertSheet, type SheetRecord } from "#data/sheets";
import { transaction } from "#data/transaction";
import type { SheetId } from "#engine/units";
import { accept, type Outcome } from "#engine/units";
import { idOf } from "#schemas/ids";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { eventOf, nameOf } from "#services/record";
import { findSheet } from "./find-sheet";
import { leaseFor } from "./lease";
import { sheetView } from "./view";
import type { OpenedSheet } from "./views";

/**
 * A quoted sheet stays what its quote was made from; a change begins on a copy of it. Acknowledged flags are not copied:
 * somebody decides again. The picture is copied too, so that each sheet's link opens its own picture and no other. Staff and
 * the sheet's skier may.
 */
export async function copySheet(ctx: Context, input: { readonly sheetId: SheetId }): Promise<Outcome<OpenedSheet>> {
  const found = await findSheet(ctx, ctx.db, "sheet.change", input.sheetId);
  if (!found.ok) return found;
  const within = await spend(ctx, "sheet");
  if (!within.ok) return within;
  const { fields, channel, phoneNormalised, customerId } = found.value;
  const copied = Object.entries(fields)
    .filter(([path, entry]) => !path.startsWith("acks.") && entry.value !== null)
    .map(([path, entry]) => [path, { ...entry, version: 1 }] as const);
  const picture = await ownPicture(ctx, found.value);
  return transaction(ctx.db, async (tx) => {
    const record = await insertSheet(tx, {
      id: idOf("sheet", ctx.newId()),
      channel,
      fields: { ...Object.fromEntries(copied), ...picture?.field },
      phoneNormalised,
      customerId,
      ...leaseFor(ctx),
      openedByName: nameOf(ctx.actor),
      now: ctx.now,
    });
    if (picture !== null) await copyArtwork(tx, picture.id, { id: picture.copyId, sheetId: record.id });
    const subject = { kind: "sheet", id: record.id } as const;
    await recordEvents(tx, [eventOf(ctx, "sheet-opened", subject, { channel, copyOf: input.sheetId })]);
    const token = await issueLink(tx, subject, { id: ctx.newId(), now: ctx.now });
    return accept({ sheet: await sheetView(tx, record, ctx.actor, ctx.now), token, wasOpen: false, knownAs: null });
  });
}

const graphicPath = "choices.graphic";

/** The sheet's own picture, and the graphic as it names the copy; null without one. */
async function ownPicture(ctx: Context, { id: sheetId, fields, content }: SheetRecord) {
  const entry = fields[graphicPath];
  const { graphic } = content.choices;
  if (entry === undefined || !graphic?.artwork) return null;
  const { id } = graphic.artwork;
  if ((await artworkById(ctx.db, id))?.sheetId !== sheetId) return null;
  const copyId = ctx.newId();
  const value = { ...graphic, artwork: { ...graphic.artwork, id: copyId } };
  return { id, copyId, field: { [graphicPath]: { ...entry, version: 1, value } } };
}
