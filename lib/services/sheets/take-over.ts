import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { SheetId, SheetView } from "../views";

/** Staff take the lease of a draft, whoever has it; the former holder sees it. */
export async function takeOverSheet(ctx: Context, input: { readonly sheetId: SheetId }): Promise<Outcome<SheetView>> {
  throw new Error(`takeOverSheet is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Gives the lease back. */
export async function releaseSheet(ctx: Context, input: { readonly sheetId: SheetId }): Promise<Outcome<SheetView>> {
  throw new Error(`releaseSheet is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
