/** Private links of skiers: made anew, closed, and let work longer. Each is an event. */
import { issueLink, linkEnd, linkStanding, permit, renewLinks, revokeLinks } from "#auth";
import { recordEvents } from "#data/events";
import { transaction } from "#data/transaction";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import type { LinkStandingView } from "./views";

export interface LinkSubjectInput {
  readonly kind: "sheet" | "answers" | "quote" | "club" | "order" | "pair";
  readonly id: string;
}

/** Links to the answers alone stand in the record of their sheet. */
function recordedAt({ kind, id }: LinkSubjectInput) {
  return { kind: kind === "answers" ? "sheet" : kind, id } as const;
}

/** Revokes the subject's links and makes a new one, told once. Staff only. */
export async function reissueLink(ctx: Context, input: LinkSubjectInput): Promise<Outcome<{ readonly token: string }>> {
  const allowed = permit(ctx.actor, "link.issue");
  if (!allowed.ok) return allowed;
  return transaction(ctx.db, async (tx) => {
    const revoked = await revokeLinks(tx, input, ctx.now);
    const token = await issueLink(tx, input, { id: ctx.newId(), now: ctx.now });
    await recordEvents(tx, [eventOf(ctx, "link-reissued", recordedAt(input), { revoked })]);
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
    await recordEvents(tx, [eventOf(ctx, "link-revoked", recordedAt(input), { revoked })]);
    return accept({ revoked });
  });
}

/** How many links to it work, and until when. Staff only. */
export async function readLinkStanding(ctx: Context, input: LinkSubjectInput): Promise<Outcome<LinkStandingView>> {
  const allowed = permit(ctx.actor, "link.issue");
  if (!allowed.ok) return allowed;
  const { open, over, until } = await linkStanding(ctx.db, input, ctx.now);
  return accept({ open, over, until: until?.toISOString() ?? null });
}

/**
 * Lets the subject's links work for their whole time again, counted from now, those on paper too. Refuses `no-link-to-renew`
 * when there is none or somebody has closed them.
 */
export async function renewLink(ctx: Context, input: LinkSubjectInput): Promise<Outcome<{ readonly until: string }>> {
  const allowed = permit(ctx.actor, "link.issue");
  if (!allowed.ok) return allowed;
  const until = linkEnd(input.kind, ctx.now);
  return transaction(ctx.db, async (tx) => {
    const links = await renewLinks(tx, input, until);
    if (links === 0) return refuse({ code: "no-link-to-renew" });
    await recordEvents(tx, [eventOf(ctx, "link-renewed", recordedAt(input), { links, until: until.toISOString() })]);
    return accept({ until: until.toISOString() });
  });
}

/**
 * A link of its own for a paper that the desk prints for a customer, in the customer's name: only its hash is kept, so a paper
 * printed again has another. Whoever prints may read the subject; the caller has asked.
 */
export async function linkForPaper(ctx: Context, input: LinkSubjectInput): Promise<string> {
  return issueLink(ctx.db, input, { id: ctx.newId(), now: ctx.now });
}
