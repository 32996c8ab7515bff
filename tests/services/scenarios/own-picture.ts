/** A skier's own picture on a sheet, with its rights: from here on the pair needs a proof. */
import sharp from "sharp";
import { type Context, type SheetId, saveSheet, stateRights, uploadArtwork } from "#services";
import { must } from "../../support/builders/shop";

export async function ownPicture(desk: Context, sheetId: SheetId, name: string): Promise<void> {
  const bytes = await sharp({ create: { width: 2400, height: 400, channels: 3, background: "#224466" } })
    .png()
    .toBuffer();
  const art = must(await uploadArtwork(desk, { sheetId, fileName: "ridge.png", bytes }));
  must(await stateRights(desk, { artworkId: art.artworkId, basis: "own", name }));
  const graphic = {
    kind: "own",
    artwork: { id: art.artworkId, widthPx: art.widthPx, heightPx: art.heightPx, sha256: art.sha256 },
    placement: { centreXMm: 900, centreYMm: 0, mmPerPixel: 0.15, angleDeg: 0 },
    layout: "same",
    windows: [],
  };
  must(await saveSheet(desk, { sheetId, patch: { "choices.graphic": graphic }, baseVersion: 99 }));
}
