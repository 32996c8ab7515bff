import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { DeskOverview, SearchHit } from "../views";

/** What the desk must see this morning. */
export async function deskOverview(ctx: Context): Promise<Outcome<DeskOverview>> {
  throw new Error(`deskOverview is not built yet for ${ctx.actor.kind}`);
}

/** One search over names, phones, numbers and serials; makers find pairs only. */
export async function search(ctx: Context, input: { readonly text: string }): Promise<Outcome<readonly SearchHit[]>> {
  throw new Error(`search is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
