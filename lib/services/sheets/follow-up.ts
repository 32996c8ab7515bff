import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { SheetId, SheetView } from "../views";

/** The call goes on later: when, why, on what number. */
export async function setCallBack(
  ctx: Context,
  input: { readonly sheetId: SheetId; readonly at: Date; readonly reason: string; readonly phone: string },
): Promise<Outcome<SheetView>> {
  throw new Error(`setCallBack is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Puts the sheet before the owner; also the skier's own way to ask a person. */
export async function askReview(
  ctx: Context,
  input: { readonly sheetId: SheetId; readonly note: string },
): Promise<Outcome<SheetView>> {
  throw new Error(`askReview is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Closes the sheet without a quote, with the reason. */
export async function turnDown(
  ctx: Context,
  input: { readonly sheetId: SheetId; readonly reason: string },
): Promise<Outcome<SheetView>> {
  throw new Error(`turnDown is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
