import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { ArtworkId, DocumentBytes } from "../views";

/** The re-encoded picture, for its skier and staff. */
export async function artworkBytes(
  ctx: Context,
  input: { readonly artworkId: ArtworkId; readonly size: "full" | "preview" },
): Promise<Outcome<DocumentBytes>> {
  throw new Error(`artworkBytes is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
