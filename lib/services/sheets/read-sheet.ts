import type { Outcome, SheetId } from "#engine/units";
import { accept } from "#engine/units";
import type { Context } from "#services/context";
import { findSheet } from "./find-sheet";
import { sheetView } from "./view";
import type { SheetView } from "./views";

/** The whole sheet. Its skier (by link) and staff may read it. Refuses `not-found`, `not-allowed`. */
export async function readSheet(ctx: Context, input: { readonly sheetId: SheetId }): Promise<Outcome<SheetView>> {
  const found = await findSheet(ctx, ctx.db, "sheet.read", input.sheetId);
  if (!found.ok) return found;
  return accept(await sheetView(ctx.db, found.value, ctx.actor, ctx.now));
}
