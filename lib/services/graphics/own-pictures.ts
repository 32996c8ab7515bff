/** A skier's own picture on both skis, small, for papers that show the pair and do not prove the print. */
import { artworkImage } from "#data/artwork";
import type { Tx } from "#data/client";
import type { BuildCatalog, PairSpec } from "#engine/configuration";
import { shapeAtLength } from "#engine/geometry";
import { type ProofPictures, proofPictures } from "./proof-pictures";

/** Null for a house graphic, and where the shop has the picture no more. @param build of the specification's own release */
export async function ownPictures(db: Tx, spec: PairSpec, build: BuildCatalog): Promise<ProofPictures | null> {
  const { kind, artwork } = spec.graphic;
  const model = build.models.find(({ id }) => id === spec.model);
  if (kind !== "own" || artwork === undefined || model === undefined) return null;
  const picture = await artworkImage(db, artwork.id, "preview");
  return picture && proofPictures(spec, shapeAtLength(model.shape, spec.lengthCm), build, picture.bytes);
}
