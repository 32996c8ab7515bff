import { permit } from "#auth";
import { versionsOfSheets } from "#data/sheets";
import { accept, type Outcome, type SheetId } from "#engine/units";
import type { Context } from "#services/context";

/** The versions of some sheets, those that are there. For the program itself: it tells pages that were allowed to read theirs. */
export async function sheetVersions(
  ctx: Context,
  input: { readonly sheetIds: readonly SheetId[] },
): Promise<Outcome<ReadonlyMap<SheetId, number>>> {
  const allowed = permit(ctx.actor, "sheet.list");
  if (!allowed.ok) return allowed;
  return accept(await versionsOfSheets(ctx.db, input.sheetIds));
}
