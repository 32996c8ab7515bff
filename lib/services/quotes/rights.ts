import { artworkById } from "#data/artwork";
import type { Tx } from "#data/client";
import type { PairSpec } from "#engine/configuration";
import type { RightsBasis } from "#schemas/stored/index";

/** The rights statement on the spec's own picture, if it was made; null without a picture too. */
export async function rightsOfSpec(client: Tx, spec: PairSpec): Promise<(RightsBasis & { readonly at: Date }) | null> {
  const { artwork } = spec.graphic;
  if (artwork === undefined) return null;
  const record = await artworkById(client, artwork.id);
  if (record === null || record.rights === null || record.rightsAt === null) return null;
  return { ...record.rights, at: record.rightsAt };
}
