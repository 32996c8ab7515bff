import { type Action, permit } from "#auth";
import type { Tx } from "#data/client";
import { type SheetRecord, sheetById } from "#data/sheets";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { readable } from "#services/readable";

/** The sheet's row for somebody who may do this with it. A stranger is told "not allowed", never "not there". */
export async function findSheet(
  ctx: Context,
  client: Tx,
  action: "sheet.read" | "sheet.change" | "sheet.quote",
  sheetId: string,
): Promise<Outcome<SheetRecord>> {
  return findSheetFor(ctx, client, action, { kind: "sheet", id: sheetId });
}

/** The same for whoever holds a link to a part of it. */
export async function findSheetFor(
  ctx: Context,
  client: Tx,
  action: Action,
  subject: { readonly kind: "sheet" | "answers"; readonly id: string },
): Promise<Outcome<SheetRecord>> {
  const allowed = permit(ctx.actor, action, subject);
  if (!allowed.ok) return allowed;
  const read = await readable(sheetById(client, subject.id));
  if (!read.ok) return read;
  return read.value === null ? refuse({ code: "not-found", what: "sheet", path: "sheetId" }) : accept(read.value);
}
