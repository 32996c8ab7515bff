import { permit } from "#auth";
import { artworkById, insertArtwork, keepImages } from "#data/artwork";
import { recordEvents } from "#data/events";
import { sheetById } from "#data/sheets";
import { transaction } from "#data/transaction";
import type { SheetId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import { idOf } from "#schemas/ids";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { eventOf } from "#services/record";
import { artworkView } from "#services/sheets/view";
import type { ArtworkView } from "#services/sheets/views";
import { turnOf, turns } from "#services/turns";
import { decodeArtwork, type PictureInput } from "./decode";

export interface UploadArtworkInput {
  readonly sheetId: SheetId;
  readonly fileName: string;
  /** The file, or its bytes. */
  readonly bytes: PictureInput;
}

const longestName = 120;

/**
 * Takes a picture of the kinds in `sniff.ts` up to 60 MB and 120 million pixels, told by content; keeps a re-encoded sRGB
 * copy and a preview, never the file's own bytes. Refuses what `decodeArtwork` refuses. One picture is decoded at a time,
 * staff's first.
 * @throws Busy when too many wait
 */
export async function uploadArtwork(ctx: Context, input: UploadArtworkInput): Promise<Outcome<ArtworkView>> {
  const subject = { kind: "sheet", id: input.sheetId } as const;
  const allowed = permit(ctx.actor, "artwork.upload", subject);
  if (!allowed.ok) return allowed;
  const sheet = await sheetById(ctx.db, input.sheetId);
  if (sheet === null) return refuse({ code: "not-found", what: "sheet", path: "sheetId" });
  const within = await spend(ctx, "upload");
  if (!within.ok) return within;
  const decoded = await turns().pictures.run(turnOf(ctx), () => decodeArtwork(input.bytes));
  if (!decoded.ok) return decoded;
  const { type, images, ...measured } = decoded.value;
  const kept = await keepImages(measured.sha256, images);
  const id = idOf("artwork", ctx.newId());
  return transaction(ctx.db, async (tx) => {
    const fileName = nameOnly(input.fileName);
    const artwork = { id, sheetId: input.sheetId, fileName, sourceType: type, uploadedAt: ctx.now, ...measured };
    await insertArtwork(tx, artwork, kept);
    await recordEvents(tx, [eventOf(ctx, "artwork-uploaded", subject, { artworkId: id, fileName, ...measured })]);
    const stored = await artworkById(tx, id);
    if (stored === null) throw new Error(`artwork ${id} was stored and is not there`);
    return accept(artworkView(stored));
  });
}

/** The last part of a path, without signs that mean something to a terminal or a file system. */
function nameOnly(fileName: string): string {
  const last = fileName.split(/[/\\]/).at(-1) ?? "";
  const plain = last.replaceAll(/[\p{C}"<>|:*?]/gu, "").trim();
  return (plain === "" ? "picture" : plain).slice(0, longestName);
}
