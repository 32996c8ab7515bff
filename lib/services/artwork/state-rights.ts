import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { ArtworkId, ArtworkView, RightsStatement } from "../views";

/** What the skier states about the picture, before or after the order. */
export async function stateRights(
  ctx: Context,
  input: { readonly artworkId: ArtworkId; readonly basis: RightsStatement["basis"]; readonly name: string },
): Promise<Outcome<ArtworkView>> {
  throw new Error(`stateRights is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
