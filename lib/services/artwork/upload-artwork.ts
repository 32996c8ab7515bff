import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { ArtworkView, SheetId } from "../views";

export interface UploadArtworkInput {
  readonly sheetId: SheetId;
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

/** Takes JPEG, PNG, WebP or TIFF up to 60 MB and 120 million pixels, told by content; keeps a re-encoded sRGB copy and a preview, never the file's own bytes. Refuses `artwork-too-big`, `artwork-too-many-pixels`, `artwork-type` (svg too), `artwork-unreadable`. */
export async function uploadArtwork(ctx: Context, input: UploadArtworkInput): Promise<Outcome<ArtworkView>> {
  throw new Error(`uploadArtwork is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
