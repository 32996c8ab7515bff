import { issueLink, permit, revokeLinks } from "#auth";
import { recordEvents } from "#data/events";
import { transaction } from "#data/transaction";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";

export interface LinkSubjectInput {
  readonly kind: "sheet" | "quote" | "club" | "order" | "pair";
  readonly id: string;
}

/** Revokes the subject's links and makes a new one, told once. Staff only. */
export async function reissueLink(ctx: Context, input: LinkSubjectInput): Promise<Outcome<{ readonly token: string }>> {
  const allowed = permit(ctx.actor, "link.issue");
  if (!allowed.ok) return allowed;
  return transaction(ctx.db, async (tx) => {
    const revoked = await revokeLinks(tx, input, ctx.now);
    const token = await issueLink(tx, input, { id: ctx.newId(), now: ctx.now });
    await recordEvents(tx, [eventOf(ctx, "link-reissued", input, { revoked })]);
    return accept({ token });
  });
}

/** Closes the subject's links: whoever holds one is a stranger from now on. */
export async function revokeLink(
  ctx: Context,
  input: LinkSubjectInput,
): Promise<Outcome<{ readonly revoked: number }>> {
  const allowed = permit(ctx.actor, "link.revoke");
  if (!allowed.ok) return allowed;
  return transaction(ctx.db, async (tx) => {
    const revoked = await revokeLinks(tx, input, ctx.now);
    await recordEvents(tx, [eventOf(ctx, "link-revoked", input, { revoked })]);
    return accept({ revoked });
  });
}
