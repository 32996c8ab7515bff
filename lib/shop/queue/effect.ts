/** What a change of the queue would do to every promise, looked at before anybody agrees to it. Nothing is stored. */
import {
  effectOf,
  type PairEffect,
  prepareRuns,
  type QueueRuns,
  type QueueSituation,
  type SituationEffect,
} from "#engine/routing";
import { currentCatalog } from "#shop/catalogue/current";
import type { ShopContext } from "#shop/context";
import { routeOf } from "#shop/floor/facts";
import { skiText } from "#shop/names/ski-text";
import { firstName } from "#shop/pair/view";
import { plainSpec } from "./plain-spec";
import type { PairInQueue } from "./queued-pairs";
import { completeRuns, inSlices, liveRuns, previewRuns } from "./runs";
import { queuedPairs } from "./situation";
import type { PromiseEffect, QueueEffect } from "./views";

/** Shorter moves are below what a date can show. */
const leastMoveDays = 0.5;

/**
 * Compares the live queue with what `change` makes of it, by the same misfortunes.
 *
 * @throws Error when the changed queue does not fit the floor
 */
export async function queueEffect(
  ctx: ShopContext,
  change: (situation: QueueSituation) => QueueSituation,
): Promise<QueueEffect> {
  const { runs: before, revision, madeAt } = await liveRuns(ctx.db, ctx.now);
  const count = ctx.promiseRuns ?? previewRuns;
  await completeRuns(before, count);
  const prepared = prepareRuns(change(before.situation), before.seed);
  if (!prepared.ok) throw new Error(`the changed queue does not fit the floor: ${JSON.stringify(prepared.refusal)}`);
  const after = prepared.value;
  await completeRuns(after, count);
  const effect = await compared(ctx, before, after, count);
  const pairs = new Map((await queuedPairs(ctx.db)).map((pair) => [pair.id, pair] as const));
  return queueEffectView(effect, pairs, { queueRevision: revision, at: madeAt.toISOString() });
}

async function compared(
  ctx: ShopContext,
  before: QueueRuns,
  after: QueueRuns,
  count: number,
): Promise<SituationEffect> {
  const route = routeOf(plainSpec(ctx.now), currentCatalog().build);
  // The live runs may have more replications than were asked for; the comparison needs equal numbers.
  const level =
    before.replications.length === count ? before : { ...before, replications: before.replications.slice(0, count) };
  let effect: SituationEffect | null = null;
  await inSlices(1, () => {
    effect = effectOf(level, after, { route, waitingOn: [] });
    return 1;
  });
  if (effect === null) throw new Error("the comparison was not made");
  return effect;
}

function queueEffectView(
  effect: SituationEffect,
  pairs: ReadonlyMap<string, PairInQueue>,
  basis: { readonly queueRevision: number; readonly at: string },
): QueueEffect {
  const views = effect.pairs.flatMap((each): readonly PromiseEffect[] => {
    const pair = pairs.get(each.pairId);
    return pair === undefined ? [] : [promiseEffect(each, pair)];
  });
  const isMoved = (each: PromiseEffect) =>
    Math.abs(each.movedWorkingDays) >= leastMoveDays || each.standingBefore !== each.standingAfter;
  const worst = (a: PromiseEffect, b: PromiseEffect) => b.movedWorkingDays - a.movedWorkingDays;
  const crossing = new Set(effect.crossing);
  const rescued = new Set(effect.rescued);
  const { oneMore } = effect;
  return {
    basis: { ...basis, runs: effect.runs, seed: effect.seed },
    moved: views.filter(isMoved).sort(worst),
    crossing: views.filter(({ pairId }) => crossing.has(pairId)).sort(worst),
    rescued: views.filter(({ pairId }) => rescued.has(pairId)).sort(worst),
    pairs: views.length,
    slack: views.flatMap(({ pairId, slackWorkingDays: after, movedWorkingDays }) =>
      after === null ? [] : [{ pairId, before: Math.round((after + movedWorkingDays) * 10) / 10, after }],
    ),
    expectedLate: effect.expectedLate,
    oneMore: oneMore === null ? null : { before: shortRange(oneMore.before), after: shortRange(oneMore.after) },
    changeoverMinutes: effect.changeoverMinutes,
  };
}

function shortRange({ dates, shares, workingDays }: NonNullable<SituationEffect["oneMore"]>["before"]) {
  return { p50: dates.p50, p90: dates.p90, shares: { p50: shares.p50, p90: shares.p90 }, workingDays };
}

function promiseEffect(effect: PairEffect, pair: PairInQueue): PromiseEffect {
  const spec = pair.spec;
  return {
    pairId: pair.id,
    orderId: pair.orderId,
    serial: pair.serial,
    skierFirstName: firstName(pair.skierName),
    ski: skiText(spec),
    promiseClass: pair.order.promiseClass,
    promisedOn: pair.order.promisedOn,
    before: { p50: effect.before.p50, p90: effect.before.p90 },
    after: { p50: effect.after.p50, p90: effect.after.p90, shares: effect.shareAfter },
    movedWorkingDays: effect.movedWorkingDays,
    slackWorkingDays: effect.slackWorkingDays,
    standingBefore: effect.standingBefore,
    standingAfter: effect.standingAfter,
  };
}
