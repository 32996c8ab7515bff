import { type Action, permit } from "#auth";
import type { Tx } from "#data/client";
import { type QuoteRecord, quoteById } from "#data/quotes";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { readable } from "#services/readable";

export async function findQuote(
  ctx: Context,
  client: Tx,
  action: Action,
  quoteId: string,
): Promise<Outcome<QuoteRecord>> {
  const allowed = permit(ctx.actor, action, { kind: "quote", id: quoteId });
  if (!allowed.ok) return allowed;
  const read = await readable(quoteById(client, quoteId));
  if (!read.ok) return read;
  return read.value === null ? refuse({ code: "not-found", what: "quote", path: "quoteId" }) : accept(read.value);
}
