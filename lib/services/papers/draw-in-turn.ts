import { type DocumentData, type DocumentKind, type Paper, renderDocument } from "#papers";
import type { Context } from "#services/context";
import { turnOf, turns } from "#services/turns";

/** Draws a paper when its turn comes: staff's first, one that waits for each link. @throws Busy when too many wait */
export function drawInTurn<K extends DocumentKind>(
  ctx: Context,
  kind: K,
  data: DocumentData[K],
  paper: Paper,
): Promise<Uint8Array> {
  return turns().papers.run(turnOf(ctx), () => renderDocument(kind, data, paper));
}
