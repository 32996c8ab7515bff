import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { SavedSheet, SheetId, SheetView } from "../views";

export interface SaveSheetInput {
  readonly sheetId: SheetId;
  /**
   * Path → value; null clears. Paths: answers.KEY, typed.height, typed.mass, choices.KEY, contact.name|phone|email|address,
   * asked.KEY ("not asked" | "refused"), notes.
   */
  readonly patch: Readonly<Record<string, unknown>>;
  /** The version the values were typed over. */
  readonly baseVersion: number;
}

/** Saves field by field: two fields from two desks both stay; the same field changed since baseVersion is told, not overwritten. Refuses `invalid-field` (path, message, value), `sheet-closed`. */
export async function saveSheet(ctx: Context, input: SaveSheetInput): Promise<Outcome<SavedSheet>> {
  throw new Error(`saveSheet is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Staff write why a flag does not stop them; a sale-blocking flag counts only from an owner. */
export async function acknowledgeFlag(
  ctx: Context,
  input: { readonly sheetId: SheetId; readonly code: string; readonly reason: string },
): Promise<Outcome<SheetView>> {
  throw new Error(`acknowledgeFlag is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
