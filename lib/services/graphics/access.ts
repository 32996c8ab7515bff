import { type Action, permit, type Subject } from "#auth";
import { type ArtworkRecord, artworkById, subjectsOfSheet } from "#data/artwork";
import type { Tx } from "#data/client";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";

/** The picture, for somebody who may do this to it: by its sheet, a quote made of it, or the order that followed. */
export async function findArtwork(
  ctx: Context,
  client: Tx,
  action: Action,
  artworkId: string,
): Promise<Outcome<ArtworkRecord>> {
  const artwork = await artworkById(client, artworkId);
  const subjects: readonly Subject[] =
    artwork?.sheetId == null
      ? []
      : [{ kind: "sheet", id: artwork.sheetId }, ...(await subjectsOfSheet(client, artwork.sheetId))];
  const answers = subjects.map((subject) => permit(ctx.actor, action, subject));
  const isAllowed = answers.some((answer) => answer.ok);
  if (!isAllowed) {
    const general = permit(ctx.actor, action);
    if (!general.ok) return general;
  }
  return artwork === null ? refuse({ code: "not-found", what: "artwork", path: "artworkId" }) : accept(artwork);
}
