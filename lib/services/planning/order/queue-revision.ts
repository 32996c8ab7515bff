/** The queue's revision alone: what a page that follows the queue asks for. */
import { permit } from "#auth";
import { currentQueueRevision } from "#data/counters";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";

export async function queueRevision(ctx: Context): Promise<Outcome<number>> {
  const allowed = permit(ctx.actor, "queue.read");
  return allowed.ok ? accept(await currentQueueRevision(ctx.db)) : allowed;
}
