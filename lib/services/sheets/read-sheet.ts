import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { SheetId, SheetView } from "../views";

/** The whole sheet. Its skier (by link) and staff may read it. Refuses `not-found`, `not-allowed`. */
export async function readSheet(ctx: Context, input: { readonly sheetId: SheetId }): Promise<Outcome<SheetView>> {
  throw new Error(`readSheet is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
