import { permit } from "#auth";
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
  const allowed = permit(ctx.actor, action, { kind: "sheet", id: sheetId });
  if (!allowed.ok) return allowed;
  const read = await readable(sheetById(client, sheetId));
  if (!read.ok) return read;
  return read.value === null ? refuse({ code: "not-found", what: "sheet", path: "sheetId" }) : accept(read.value);
}
