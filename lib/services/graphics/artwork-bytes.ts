import { artworkImage } from "#data/artwork";
import type { ArtworkId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import type { DocumentBytes } from "#shop/names/views";
import { findArtwork } from "./access";

/** The re-encoded picture, for its skier and staff. */
export async function artworkBytes(
  ctx: Context,
  input: { readonly artworkId: ArtworkId; readonly size: "full" | "preview" },
): Promise<Outcome<DocumentBytes>> {
  const found = await findArtwork(ctx, ctx.db, "artwork.read", input.artworkId);
  if (!found.ok) return found;
  const image = await artworkImage(ctx.db, input.artworkId, input.size);
  if (image === null) return refuse({ code: "not-found", what: "artwork", path: "artworkId" });
  const extension = image.contentType === "image/png" ? "png" : "jpg";
  return accept({ bytes: image.bytes, contentType: image.contentType, fileName: `graphic-${input.size}.${extension}` });
}
