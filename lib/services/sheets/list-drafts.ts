import { permit } from "#auth";
import { listSheets } from "#data/sheets";
import type { SheetState } from "#engine/floor";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { pageOf, sliceOf } from "#services/paging";
import type { DraftRow } from "#services/views";
import { digitsToFind } from "#shop/names/phone";
import type { Page } from "#shop/names/views";
import { draftRow } from "./view";

export interface ListDraftsInput {
  /** Part of a name or a number. */
  readonly text?: string;
  readonly state?: SheetState;
  /** From 1. */
  readonly page?: number;
}

/** Sheets by last change; staff only. */
export async function listDrafts(ctx: Context, input: ListDraftsInput): Promise<Outcome<Page<DraftRow>>> {
  const allowed = permit(ctx.actor, "sheet.list");
  if (!allowed.ok) return allowed;
  const slice = sliceOf(input.page);
  const text = input.text?.trim();
  const found = await listSheets(
    ctx.db,
    {
      ...(input.state === undefined ? {} : { state: input.state }),
      ...(text ? { text, digits: digitsToFind(text) } : {}),
    },
    slice,
  );
  return accept(pageOf(found, (record) => draftRow(record, ctx.actor, ctx.now), input.page));
}
