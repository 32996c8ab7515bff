import { permit } from "#auth";
import { type FailTogether, failTogether } from "#engine/routing";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { completeRuns, liveRuns, previewRuns } from "#shop/queue/runs";

/** How many of the open promises fail together, over the futures that dates are made of; null without an open promise. */
export async function readPromiseRisk(ctx: Context): Promise<Outcome<FailTogether | null>> {
  const allowed = permit(ctx.actor, "promise.read");
  if (!allowed.ok) return allowed;
  const { runs } = await liveRuns(ctx.db, ctx.now);
  await completeRuns(runs, ctx.promiseRuns ?? previewRuns);
  return accept(failTogether(runs));
}
