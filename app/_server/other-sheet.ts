/** The sheet behind a private link that somebody pasted into a page, read in the name of that link and no other. */
import { tokenIn } from "#app/_ui/compare/candidates.ts";
import type { OtherSheet } from "#app/_ui/compare/compare-view.tsx";
import { fill, wordOf } from "#app/_ui/words.ts";
import words from "#content/copy/compare.json";
import { idOf } from "#schemas/ids";
import { readSheet, type SheetId } from "#services";
import { findLink } from "./request";

/** @param link as typed; nothing typed is no other sheet */
export async function otherSheetOf(link: string, ownSheetId: SheetId): Promise<OtherSheet> {
  if (link === "") return { state: "none" };
  const token = tokenIn(link);
  if (token === null) return refused("not-a-link");
  const found = await findLink(token);
  if (!found) return refused("not-found");
  const { kind, id } = found.subject;
  if (kind !== "sheet") return refused("not-a-sheet", wordOf(words.kinds, kind));
  if (id === ownSheetId) return refused("same");
  const sheet = await readSheet(found.ctx, { sheetId: idOf("sheet", id) });
  if (!sheet.ok) return refused("not-found");
  const { answers, choices } = sheet.value;
  return { state: "found", input: { answers, choices } };
}

function refused(reason: keyof typeof words.other, kind = ""): OtherSheet {
  return { state: "refused", message: fill(words.other[reason], { kind }) };
}
