import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { QueueBoard } from "../views";

/** Stations by days with every open pair, the press plan and what waits on whom. */
export async function queueBoard(ctx: Context, input: { readonly days?: number }): Promise<Outcome<QueueBoard>> {
  throw new Error(`queueBoard is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
