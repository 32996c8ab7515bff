import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { DraftRow, Page } from "../views";

export interface ListDraftsInput {
  readonly text?: string;
  readonly state?: "open" | "quoted" | "turned-down";
  readonly page?: number;
}

/** Sheets by last change; staff only. */
export async function listDrafts(ctx: Context, input: ListDraftsInput): Promise<Outcome<Page<DraftRow>>> {
  throw new Error(`listDrafts is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
