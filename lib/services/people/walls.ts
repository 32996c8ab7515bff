/** Screens on the wall: each has a link of its own that reads the floor and nothing else, opened and ended by an owner. */
import { issueLink, linkEnd, permit, revokeLinks } from "#auth";
import { recordEvents } from "#data/events";
import { wallLinks } from "#data/links";
import { transaction } from "#data/transaction";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import type { WallView } from "./views";

/** Opens a screen; its token is told once. Owners only. */
export async function openWall(
  ctx: Context,
  input: { readonly name: string },
): Promise<Outcome<{ readonly wallId: string; readonly token: string }>> {
  const allowed = permit(ctx.actor, "wall.open");
  if (!allowed.ok) return allowed;
  const wallId = ctx.newId();
  const subject = { kind: "wall", id: wallId } as const;
  const { name } = input;
  const until = linkEnd("wall", ctx.now);
  return transaction(ctx.db, async (tx) => {
    const token = await issueLink(tx, subject, { id: ctx.newId(), now: ctx.now, expiresAt: until, wallName: name });
    await recordEvents(tx, [eventOf(ctx, "wall-opened", subject, { name, until: until.toISOString() })]);
    return accept({ wallId, token });
  });
}

/** The screen shows nothing from its next question on. Owners only. Refuses `wall-ended`. */
export async function endWall(ctx: Context, input: { readonly wallId: string }): Promise<Outcome<void>> {
  const allowed = permit(ctx.actor, "wall.open");
  if (!allowed.ok) return allowed;
  const subject = { kind: "wall", id: input.wallId } as const;
  const wall = (await wallLinks(ctx.db)).find(({ subjectId }) => subjectId === input.wallId);
  return transaction(ctx.db, async (tx) => {
    if ((await revokeLinks(tx, subject, ctx.now)) === 0) return refuse({ code: "wall-ended" });
    await recordEvents(tx, [eventOf(ctx, "wall-ended", subject, { name: wall?.wallName ?? "" })]);
    return accept(undefined);
  });
}

export async function openWalls(ctx: Context): Promise<readonly WallView[]> {
  return (await wallLinks(ctx.db)).map(({ subjectId, wallName, createdAt, expiresAt }) => ({
    wallId: subjectId,
    name: wallName ?? "",
    openedAt: createdAt.toISOString(),
    until: (expiresAt ?? createdAt).toISOString(),
    isOver: expiresAt !== null && expiresAt <= ctx.now,
  }));
}
