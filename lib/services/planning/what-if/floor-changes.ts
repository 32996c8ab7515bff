/** What is different about the floor now or later, and taking it back. */
import { permit } from "#auth";
import problems from "#content/copy/problems.json";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { type FloorChangeRecord, floorChangesInForce, withdrawFloorChange } from "#data/floor-changes";
import { transaction, translated } from "#data/transaction";
import type { FloorChangeId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf, nameOf } from "#services/record";
import type { FloorChangeView } from "./views";

const w = problems.whatIf;

/** Oldest first. */
export async function listFloorChanges(ctx: Context): Promise<Outcome<readonly FloorChangeView[]>> {
  const allowed = permit(ctx.actor, "what-if.ask");
  if (!allowed.ok) return allowed;
  return accept((await translated(floorChangesInForce(ctx.db, ctx.now))).map(changeView));
}

/** Takes a change back, with a reason. Refuses `reason-missing`, `changed-meanwhile` when somebody was first. */
export async function withdrawChange(
  ctx: Context,
  input: { readonly floorChangeId: FloorChangeId; readonly reason: string },
): Promise<Outcome<void>> {
  const allowed = permit(ctx.actor, "what-if.apply");
  if (!allowed.ok) return allowed;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  const id = input.floorChangeId;
  return transaction(ctx.db, async (tx) => {
    await bumpQueue(tx);
    if (!(await withdrawFloorChange(tx, id, { at: ctx.now, by: nameOf(ctx.actor), reason }))) {
      return refuse({ code: "changed-meanwhile", what: w.change, id });
    }
    await recordEvents(tx, [eventOf(ctx, "floor-change-withdrawn", { kind: "floor", id }, { reason })]);
    return accept(undefined);
  });
}

function changeView(change: FloorChangeRecord): FloorChangeView {
  return {
    floorChangeId: change.id,
    kind: change.data.kind,
    fromAt: change.fromAt?.toISOString() ?? null,
    toAt: change.toAt?.toISOString() ?? null,
    reason: change.reason,
    source: change.source,
    costCents: change.costCents,
    madeAt: change.madeAt.toISOString(),
    madeBy: change.madeByName,
  };
}
