import { permit } from "#auth";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { queueBoardOf } from "#shop/board/board";
import type { QueueBoard } from "#shop/board/views";

const mostDays = 60;

/** Stations by days with every open pair, the press plan and what waits on whom. `days` counts calendar days from today. */
export async function queueBoard(
  ctx: Context,
  input: {
    readonly days?: number;
    /** The screen on the wall that asks, by its link. */
    readonly wallId?: string;
  } = {},
): Promise<Outcome<QueueBoard>> {
  const { wallId } = input;
  const allowed = permit(ctx.actor, "queue.read", wallId === undefined ? undefined : { kind: "wall", id: wallId });
  if (!allowed.ok) return allowed;
  const wanted = input.days ?? 14;
  const days = Number.isFinite(wanted) ? Math.min(Math.max(Math.trunc(wanted), 1), mostDays) : 14;
  return accept(await queueBoardOf(ctx, days));
}
