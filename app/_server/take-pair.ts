/** Takes one of the compared pairs onto a sheet: what is saved is worked out here again, never sent by the page. */
import { takingPatch } from "#app/_ui/compare/candidates.ts";
import { refuse } from "#engine/units";
import { activeCatalog, type Context, type SheetId, saveSheet } from "#services";
import { otherSheetOf } from "./other-sheet";

export interface TakePair {
  readonly sheetId: SheetId;
  readonly candidate: string;
  /** The other sheet's link, where the candidate is its pair. */
  readonly other: string;
  /** Of the sheet when the comparison was shown: what changed since is told, not overwritten. */
  readonly version: number;
}

/** Refuses `not-found`, `changed-meanwhile` and whatever saving a sheet refuses. */
export async function takePair(ctx: Context, { sheetId, candidate, other, version }: TakePair) {
  const catalog = await activeCatalog(ctx);
  if (!catalog.ok) return catalog;
  const found = await otherSheetOf(other, sheetId);
  const patch = takingPatch(candidate, found.state === "found" ? found.input : null, catalog.value.engine);
  if (patch === null) return refuse({ code: "not-found", what: "pair" });
  const saved = await saveSheet(ctx, { sheetId, patch, baseVersion: version });
  if (!saved.ok) return saved;
  return saved.value.conflicts.length > 0 ? refuse({ code: "changed-meanwhile", what: "sheet" }) : saved;
}
