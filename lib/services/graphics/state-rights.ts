import { setRights } from "#data/artwork";
import { recordEvents } from "#data/events";
import { transaction } from "#data/transaction";
import type { ArtworkId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import { artworkView } from "#services/sheets/view";
import type { ArtworkView } from "#services/sheets/views";
import type { RightsStatement } from "#shop/order/views";
import { findArtwork } from "./access";

export interface StateRightsInput {
  readonly artworkId: ArtworkId;
  readonly basis: RightsStatement["basis"];
  readonly name: string;
}

export const rightsBases: readonly RightsStatement["basis"][] = ["own", "licensed", "public-domain", "commissioned"];

/** What the skier states about the picture on the sheet. After the order it is confirmed with confirmRights. */
export async function stateRights(ctx: Context, input: StateRightsInput): Promise<Outcome<ArtworkView>> {
  const found = await findArtwork(ctx, ctx.db, "rights.confirm", input.artworkId);
  if (!found.ok) return found;
  const name = input.name.trim();
  if (name === "") return refuse({ code: "name-missing", path: "name" });
  if (!rightsBases.includes(input.basis)) {
    return refuse({ code: "invalid-field", path: "basis", value: input.basis, allowed: rightsBases });
  }
  const { sheetId, id } = found.value;
  return transaction(ctx.db, async (tx) => {
    const rights = { basis: input.basis, name };
    await setRights(tx, id, rights, ctx.now);
    const subject = { kind: "sheet", id: sheetId ?? id } as const;
    await recordEvents(tx, [eventOf(ctx, "rights-stated", subject, { artworkId: id, ...rights })]);
    return accept(artworkView({ ...found.value, rights, rightsAt: ctx.now }));
  });
}
