import { type Action, permit } from "#auth";
import type { Tx } from "#data/client";
import { type QuoteRecord, quoteById } from "#data/quotes";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";

export async function findQuote(
  ctx: Context,
  client: Tx,
  action: Action,
  quoteId: string,
): Promise<Outcome<QuoteRecord>> {
  const allowed = permit(ctx.actor, action, { kind: "quote", id: quoteId });
  if (!allowed.ok) return allowed;
  const record = await quoteById(client, quoteId);
  return record === null ? refuse({ code: "not-found", what: "quote", path: "quoteId" }) : accept(record);
}
