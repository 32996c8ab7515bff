import { permit } from "#auth";
import type { QueueSituation } from "#engine/routing";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { currentCatalog } from "#shop/catalogue/current";
import { queueEffect } from "#shop/queue/effect";
import type { QueueEffect } from "#shop/queue/views";
import { type Consequence, consequenceOf, situationWith } from "./consequence";
import { type Remedy, remedies } from "./remedies";
import type { BreakdownInput, BreakdownPreview, RemedyOption } from "./views";

/** Who moves, who crosses a promise, and what each way on would do about it. Nothing is stored. */
export async function previewBreakdown(ctx: Context, input: BreakdownInput): Promise<Outcome<BreakdownPreview>> {
  const allowed = permit(ctx.actor, "incident.report");
  if (!allowed.ok) return allowed;
  const consequence = await consequenceOf(ctx, input);
  return consequence.ok ? accept(await weighed(ctx, consequence.value)) : consequence;
}

/** The effect of what happened, and each option's effect on top of it, against the queue without either. */
export async function weighed(ctx: Context, consequence: Consequence): Promise<BreakdownPreview> {
  let broken: QueueSituation | null = null;
  const effect = await queueEffect(ctx, (situation) => {
    broken = situationWith(situation, consequence);
    return broken;
  });
  if (broken === null) throw new Error("the queue was not asked");
  const options: RemedyOption[] = [];
  for (const remedy of ways(broken, effect, consequence)) {
    const then =
      remedy.changes.length === 0 && remedy.places.length === 0
        ? effect
        : await queueEffect(ctx, (situation) => situationWith(situation, consequence, remedy));
    const still = new Set(then.crossing.map(({ pairId }) => pairId));
    options.push({
      ...remedy,
      crossing: then.crossing,
      saved: effect.crossing.filter(({ pairId }) => !still.has(pairId)).length,
      expectedLate: then.expectedLate.after,
    });
  }
  return { base: consequence.base, effect, options };
}

/** Another colour is an offer: nothing moves before the skier has said yes. */
function ways(situation: QueueSituation, effect: QueueEffect, consequence: Consequence): readonly Remedy[] {
  const [wait, ...others] = remedies(situation, effect, endOf(situation, consequence), currentCatalog().remedies);
  const hasOffer = consequence.base?.pairs.some((pair) => !pair.isServed && pair.alternatives.length > 0) ?? false;
  const offer: Remedy = { way: "offer-colour", changes: [], places: [], costCents: 0 };
  return [...(wait === undefined ? [] : [wait]), ...(hasOffer ? [offer] : []), ...others];
}

function endOf({ now }: QueueSituation, { changes }: Consequence): number {
  return changes.reduce(
    (latest, change) => ("toMinute" in change && change.toMinute !== null ? Math.max(latest, change.toMinute) : latest),
    now,
  );
}
