/** Sign-ins that are going on, and their end by somebody's word. */
import { endsAt, isOver, permit } from "#auth";
import { findStaffForSignIn } from "#data/access";
import type { Tx } from "#data/client";
import { recordEvents } from "#data/events";
import { revokeSessions, type SessionRecord, standingSessions } from "#data/sessions";
import { transaction } from "#data/transaction";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import type { AccountView, SignInView } from "./views";

/** One's own name, short code and sign-ins. */
export async function readMyAccount(ctx: Context): Promise<Outcome<AccountView>> {
  const allowed = permit(ctx.actor, "account.own");
  if (!allowed.ok) return allowed;
  if (ctx.actor.kind !== "staff") return refuse({ code: "not-allowed", action: "account.own", signIn: true });
  const { staffId } = ctx.actor;
  const person = await findStaffForSignIn(ctx.db, { id: staffId });
  if (person === null) return refuse({ code: "staff-unknown", staffId });
  const { name, email, hasFloorCode } = person;
  return accept({ staffId, name, email, hasFloorCode, signIns: signInViews(ctx, await openSignIns(ctx, staffId)) });
}

/** Ends one sign-in: one's own, or anybody's by an owner. Refuses `sign-in-over` when it has ended already. */
export async function endSignIn(ctx: Context, input: { readonly sessionId: string }): Promise<Outcome<void>> {
  const own = permit(ctx.actor, "account.own");
  if (!own.ok) return own;
  const session = (await openSignIns(ctx)).find(({ id }) => id === input.sessionId);
  const isOwn = ctx.actor.kind === "staff" && session?.staff.id === ctx.actor.staffId;
  const allowed = isOwn ? own : permit(ctx.actor, "staff.manage");
  if (!allowed.ok) return allowed;
  if (session === undefined) return refuse({ code: "sign-in-over" });
  return transaction(ctx.db, async (tx) => {
    if ((await end(ctx, tx, session.staff.id, session.id)) === 0) return refuse({ code: "sign-in-over" });
    return accept(undefined);
  });
}

/** Ends every sign-in of somebody. Owners only. */
export async function endSignInsOf(
  ctx: Context,
  input: { readonly staffId: string },
): Promise<Outcome<{ readonly sessions: number }>> {
  const allowed = permit(ctx.actor, "staff.manage");
  if (!allowed.ok) return allowed;
  return transaction(ctx.db, async (tx) => accept({ sessions: await end(ctx, tx, input.staffId) }));
}

async function end(ctx: Context, tx: Tx, staffId: string, id?: string): Promise<number> {
  const sessions = await revokeSessions(tx, { staffId, ...(id === undefined ? {} : { id }) }, ctx.now);
  if (sessions > 0) {
    const subject = { kind: "staff", id: staffId } as const;
    await recordEvents(tx, [eventOf(ctx, "sign-ins-ended", subject, { sessions, why: "asked" })]);
  }
  return sessions;
}

/** Of one person, or of everybody: neither ended nor over by themselves. */
export async function openSignIns(ctx: Context, staffId?: string): Promise<readonly SessionRecord[]> {
  return (await standingSessions(ctx.db, staffId)).filter((session) => !isOver(session, ctx.now));
}

export function signInViews(ctx: Context, sessions: readonly SessionRecord[]): readonly SignInView[] {
  const asking = ctx.actor.kind === "staff" ? ctx.actor.sessionId : null;
  return sessions.map((session) => ({
    sessionId: session.id,
    kind: session.kind,
    device: session.floorName ?? session.deviceName,
    since: session.createdAt.toISOString(),
    lastUsedAt: session.lastSeenAt.toISOString(),
    endsAt: endsAt(session).toISOString(),
    isThis: session.id === asking,
  }));
}
