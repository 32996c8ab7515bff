import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { MadeQuote, SheetId } from "../views";

/** Freezes the sheet as it stands. Refuses `contact-missing`, `sheet-incomplete`, `sale-blocked` (by: refusals), `options-conflict`. */
export async function createQuote(ctx: Context, input: { readonly sheetId: SheetId }): Promise<Outcome<MadeQuote>> {
  throw new Error(`createQuote is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
