/** What building one ski again does to the promises: the queue as it is against the queue with the redo in it. */
import type { OperationOnFloor, PairOnFloor, QueueSituation } from "#engine/routing";
import { prepareRuns, queueRanges } from "#engine/routing";
import type { Context } from "#services/context";
import { floorCatalog } from "#shop/floor/recipe";
import { stationIdTaking } from "#shop/floor/stations";
import { workedPair } from "#shop/pair/view";
import { queueEffect } from "#shop/queue/effect";
import { pairOnFloor } from "#shop/queue/on-floor";
import { expectedDays } from "#shop/queue/range";
import { completeRuns, plannedSituation, previewRuns } from "#shop/queue/runs";
import type { WorkedRework } from "./rework-work-out";
import type { ReworkView } from "./views";

/** Any futures do: one range is read from them, compared with nothing. */
const effectSeed = 1;

/** One ski of two: half of the pair's minutes. */
export const oneSkiShare = 0.5;

export async function reworkEffect(ctx: Context, worked: WorkedRework): Promise<ReworkView["effect"]> {
  const { pair } = worked;
  const { catalog } = await workedPair(ctx.db, pair);
  const again = withRedo(pairOnFloor(pair, catalog.build, floorCatalog(), ctx.now), worked);
  const change = (situation: QueueSituation): QueueSituation => {
    const isOpen = situation.pairs.some(({ pairId }) => pairId === pair.id);
    const pairs = isOpen
      ? situation.pairs.map((each) => (each.pairId === pair.id ? again : each))
      : [...situation.pairs, again];
    return { ...situation, pairs };
  };
  const queue = await queueEffect(ctx, change);
  const own = queue.moved.find(({ pairId }) => pairId === pair.id) ?? null;
  return { own, ready: own?.after ?? (await readyAgain(ctx, change, pair.id)), queue };
}

/** A pair that was ready is not in the queue's own comparison: its new day is read from the changed queue alone. */
async function readyAgain(
  ctx: Context,
  change: (situation: QueueSituation) => QueueSituation,
  pairId: string,
): Promise<ReworkView["effect"]["ready"]> {
  const prepared = prepareRuns(change(await plannedSituation(ctx.db, ctx.now)), effectSeed);
  if (!prepared.ok) throw new Error(`the queue with the redo does not fit the floor: ${prepared.refusal.code}`);
  await completeRuns(prepared.value, ctx.promiseRuns ?? previewRuns);
  const range = queueRanges(prepared.value).get(pairId);
  return range === undefined ? null : expectedDays(range);
}

function withRedo(pair: PairOnFloor, { plan, needsCore, match }: WorkedRework): PairOnFloor {
  const visits = plan.visits.map(
    ({ station, visit, state, isOneSki }): OperationOnFloor => ({
      station,
      visit,
      state,
      ...(isOneSki ? { minutesShare: oneSkiShare } : {}),
    }),
  );
  const waitsForWood = needsCore && match === null;
  return {
    ...pair,
    operations: [...pair.operations, ...visits],
    waitingOn: waitsForWood
      ? [...pair.waitingOn, { reason: "material", holdsUpStation: stationIdTaking("strips") }]
      : pair.waitingOn,
  };
}
