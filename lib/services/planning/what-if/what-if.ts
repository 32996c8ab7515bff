/** Questions that change nothing, and the three of them that can be made so. */

import { permit } from "#auth";
import problems from "#content/copy/problems.json";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { transaction } from "#data/transaction";
import { isOneOf, standingOperationStates } from "#engine/floor";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import { queueEffect } from "#shop/queue/effect";
import { queuedPairs } from "#shop/queue/situation";
import { storeFloorChange } from "../breakdowns/store-change";
import { checkedWhatIf } from "./check";
import { costCentsPerWeek, floorChangesOf, situationIf } from "./situation-if";
import type { WhatIfAnswer, WhatIfInput } from "./views";

const w = problems.whatIf;

const applicable: ReadonlySet<WhatIfInput["kind"]> = new Set(["hire", "second-press", "closure"]);

/** What it would do to every promise and to one more pair. Refuses `invalid-field`. Nothing is stored. */
export async function askWhatIf(ctx: Context, input: WhatIfInput): Promise<Outcome<WhatIfAnswer>> {
  const allowed = permit(ctx.actor, "what-if.ask");
  if (!allowed.ok) return allowed;
  const checked = checkedWhatIf(ctx, input);
  if (!checked.ok) return checked;
  const begun = new Set(
    (await queuedPairs(ctx.db))
      .filter(({ operations }) => operations.some(({ state }) => isOneOf(standingOperationStates, state)))
      .map(({ id }) => id),
  );
  const effect = await queueEffect(ctx, (situation) => situationIf(ctx, situation, input, begun));
  return accept({
    effect,
    costCentsPerWeek: costCentsPerWeek(input),
    ordersRescued: new Set(effect.rescued.map(({ orderId }) => orderId)).size,
    canApply: applicable.has(input.kind),
  });
}

/**
 * Makes a hire, a press or a closure so: every date reckons with it from now on.
 *
 * @param input.changeId made with the form, so that a form sent twice is one change
 */
export async function applyWhatIf(
  ctx: Context,
  input: { readonly changeId: string; readonly whatIf: WhatIfInput; readonly reason: string },
): Promise<Outcome<void>> {
  const allowed = permit(ctx.actor, "what-if.apply");
  if (!allowed.ok) return allowed;
  const { whatIf } = input;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  if (!applicable.has(whatIf.kind)) {
    const message = w.onlyAsked;
    return refuse({ code: "invalid-field", path: "kind", message });
  }
  const checked = checkedWhatIf(ctx, whatIf);
  if (!checked.ok) return checked;
  return transaction(ctx.db, async (tx) => {
    await bumpQueue(tx);
    if ((await tx.floorChange.findUnique({ where: { id: input.changeId } })) !== null) return accept(undefined);
    for (const change of floorChangesOf(whatIf, input.changeId)) {
      await storeFloorChange(ctx, tx, change, {
        id: input.changeId,
        reason,
        incidentId: null,
        source: "what-if",
        costCents: costCentsPerWeek(whatIf),
      });
    }
    const subject = { kind: "floor", id: input.changeId } as const;
    await recordEvents(tx, [eventOf(ctx, "floor-changed", subject, { ...whatIf, reason })]);
    return accept(undefined);
  });
}
