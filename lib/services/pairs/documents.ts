import type { Paper } from "../../documents";
import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { DocumentBytes, PairId, QuoteId } from "../views";

export interface PairDocumentInput {
  readonly pairId: PairId;
  readonly paper: Paper;
}

/** The build sheet as PDF. Each print has its number; a print of an older revision is void. */
export async function buildSheetDocument(ctx: Context, input: PairDocumentInput): Promise<Outcome<DocumentBytes>> {
  throw new Error(`buildSheetDocument is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** The kit list as PDF. */
export async function kitListDocument(ctx: Context, input: PairDocumentInput): Promise<Outcome<DocumentBytes>> {
  throw new Error(`kitListDocument is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** The labels as PDF. */
export async function labelsDocument(ctx: Context, input: PairDocumentInput): Promise<Outcome<DocumentBytes>> {
  throw new Error(`labelsDocument is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** The quote as PDF, exactly as frozen. */
export async function quoteDocument(
  ctx: Context,
  input: { readonly quoteId: QuoteId; readonly paper: Paper },
): Promise<Outcome<DocumentBytes>> {
  throw new Error(`quoteDocument is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
