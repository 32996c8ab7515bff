/** One ski is built again: looked at first, with what it does to the promise, then begun. */

import history from "#content/copy/history.json";
import type { Tx } from "#data/client";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { insertPairHolds } from "#data/holds";
import { moveOrder, orderById } from "#data/orders";
import {
  breakOffOperations,
  endRebuildHolds,
  insertRedoVisits,
  insertSki,
  movePair,
  moveSki,
  setOperationStates,
  updatePair,
  voidTravellers,
} from "#data/pairs";
import { transaction } from "#data/transaction";
import type { StationId } from "#engine/floor";
import { latestVisits } from "#engine/floor";
import { accept, fill, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { eventOf, nameOf } from "#services/record";
import { holdForSki } from "#services/stock/match-other-ski";
import { scrapStripsOf } from "#services/stock/strip-moves";
import { stationRecipe } from "#shop/floor/recipe";
import { positionOf, stationIdTaking, stationNumber } from "#shop/floor/stations";
import { stripLimits } from "#shop/stock/need";
import { oneSkiShare, reworkEffect } from "./rework-effect";
import { type ReworkInput, type WorkedRework, workOutRework } from "./rework-work-out";
import type { ReworkStrips, ReworkView } from "./views";

const w = history.floor;

export interface StartReworkInput extends ReworkInput {
  /** The pair's version on the screen. */
  readonly version: number;
  readonly note: string;
  /** Where the other ski is parked. */
  readonly location?: string;
}

/**
 * What would be done again, with which wood, and what it does to every promise. Refuses `order-closed`,
 * `rework-under-way`, `station-not-reached`.
 */
export async function previewRework(ctx: Context, input: ReworkInput): Promise<Outcome<ReworkView>> {
  const worked = await workOutRework(ctx, ctx.db, input);
  if (!worked.ok) return worked;
  return accept(await viewOf(ctx, input, worked.value));
}

/**
 * Scraps the ski, begins the one in its place and parks the other. The order's promise stays: the effect is logged.
 * Refuses as previewRework does, and `reason-missing`, `changed-meanwhile`.
 */
export async function startRework(ctx: Context, input: StartReworkInput): Promise<Outcome<ReworkView>> {
  const note = input.note.trim();
  const preview = await previewRework(ctx, input);
  if (!preview.ok) return preview;
  if (note === "") return refuse({ code: "reason-missing", path: "note" });
  return transaction(ctx.db, async (tx) => {
    await bumpQueue(tx);
    const worked = await workOutRework(ctx, tx, input);
    if (!worked.ok) return worked;
    const { pair } = worked.value;
    if (pair.version !== input.version || !(await backToWork(tx, pair, note)))
      return refuse({ code: "changed-meanwhile", what: "pair" });
    await endRebuildHolds(tx, pair.id, { at: ctx.now, by: nameOf(ctx.actor) });
    await writeSkis(ctx, tx, input, worked.value);
    await writeVisits(ctx, tx, input, worked.value);
    if (pair.state === "ready") await reopenOrder(ctx, tx, pair.orderId, note);
    await voidTravellers(tx, pair.id, fill(w.builtAgain, { serial: worked.value.scrapped.serial }), ctx.now);
    const strips = await takeWood(ctx, tx, input, worked.value);
    const { own, ready, queue } = preview.value.effect;
    const subject = { kind: "pair", id: pair.id } as const;
    await recordEvents(tx, [
      eventOf(ctx, "ski-scrapped", subject, {
        serial: worked.value.scrapped.serial,
        fault: input.fault,
        note,
        strips: worked.value.needsCore ? stripIds(worked.value, input.side) : [],
      }),
      eventOf(ctx, "rework-started", subject, {
        serial: worked.value.newSerial,
        fault: input.fault,
        from: input.fromStation,
        stations: worked.value.plan.visits.map(({ station }) => station),
        strips,
        letters: worked.value.letters,
        effect: {
          movedWorkingDays: own?.movedWorkingDays ?? null,
          standing: own?.standingAfter ?? null,
          ready,
          crossing: queue.crossing.map(({ serial }) => serial),
          basis: queue.basis,
        },
      }),
    ]);
    return accept({ ...preview.value, version: pair.version + 1 });
  });
}

async function viewOf(ctx: Context, input: ReworkInput, worked: WorkedRework): Promise<ReworkView> {
  const { pair, scrapped, kept, newSerial, plan, letters } = worked;
  return {
    pairId: pair.id,
    serial: pair.serial,
    version: pair.version,
    side: input.side,
    fault: input.fault,
    fromStation: input.fromStation,
    fromNumber: stationNumber(input.fromStation),
    scrappedSerial: scrapped.serial,
    newSerial,
    heldSerial: kept.serial,
    stations: plan.visits.map(({ station, isOneSki }) => {
      const { number, name } = stationRecipe(station);
      return { station, number, name, isOneSki };
    }),
    strips: stripsOf(worked),
    letters,
    effect: await reworkEffect(ctx, worked),
  };
}

function stripsOf({ needsCore, match }: WorkedRework): ReworkStrips | null {
  if (!needsCore) return null;
  if (match === null) return { isFound: false, limitPercent: stripLimits.twinPercent ?? 0 };
  const ids = new Set(Object.values(match.strips).flat());
  const taken = match.records.filter(({ id }) => ids.has(id));
  const bins = [...new Set(taken.map(({ location }) => location))].sort();
  return { isFound: true, count: ids.size, differencePercent: match.differencePercent, bins };
}

function stripIds({ pair }: WorkedRework, side: "L" | "R"): readonly string[] {
  return pair.heldStrips.filter((strip) => strip.side === side).map(({ id }) => id);
}

async function writeSkis(ctx: Context, tx: Tx, input: StartReworkInput, worked: WorkedRework): Promise<void> {
  const { pair, scrapped, kept, build, newSerial } = worked;
  const location = input.location?.trim() || null;
  const reason = input.note;
  const isScrapped = await moveState(tx, { kind: "ski", from: scrapped.state, to: "scrapped", reason }, () =>
    moveSki(tx, scrapped.id, scrapped.state, { state: "scrapped", location: null }),
  );
  const isParked = await moveState(tx, { kind: "ski", from: kept.state, to: "held", reason }, () =>
    moveSki(tx, kept.id, kept.state, { state: "held", location }),
  );
  if (!isScrapped || !isParked) throw new Error(`the skis of ${pair.serial} changed while the queue was locked`);
  await insertSki(tx, { id: ctx.newId(), pairId: pair.id, side: input.side, serial: newSerial, build });
}

async function writeVisits(
  ctx: Context,
  tx: Tx,
  { side, note }: StartReworkInput,
  { pair, plan }: WorkedRework,
): Promise<void> {
  const latest = latestVisits(pair.operations);
  const idsOf = (stations: readonly StationId[]) =>
    latest.filter(({ station }) => stations.includes(station)).map(({ id }) => id);
  await moveState(tx, { kind: "operation", from: "running", to: "redo", reason: note }, () =>
    breakOffOperations(tx, idsOf(plan.brokenOff)),
  );
  await moveState(tx, { kind: "operation", from: "ready", to: "blocked", reason: note }, () =>
    setOperationStates(tx, idsOf(plan.blocked), "ready", "blocked"),
  );
  const visits = plan.visits.map(({ station, visit, state, isOneSki }) => ({
    id: ctx.newId(),
    station,
    position: positionOf(station),
    visit,
    state,
    side: isOneSki ? side : null,
    minutesShare: isOneSki ? oneSkiShare : null,
  }));
  await insertRedoVisits(tx, pair.id, visits);
}

/** The scrapped ski's wood is gone; the new one's is held, or the pair waits for it at the glue-up. */
async function takeWood(ctx: Context, tx: Tx, { side }: ReworkInput, worked: WorkedRework) {
  const { pair, needsCore, match } = worked;
  if (!needsCore) return null;
  await scrapStripsOf(tx, pair.id, side);
  if (match !== null) {
    await holdForSki(tx, pair.id, side, match);
    return { ids: match.strips, differencePercent: match.differencePercent };
  }
  await insertPairHolds(tx, [
    {
      id: ctx.newId(),
      pairId: pair.id,
      reason: "material",
      station: stationIdTaking("strips"),
      expectedOn: null,
      note: fill(w.noStrips, { serial: worked.newSerial, twinPercent: stripLimits.twinPercent ?? "" }),
      incidentId: null,
      madeAt: ctx.now,
      madeByName: nameOf(ctx.actor),
    },
  ]);
  return { ids: null, limitPercent: stripLimits.twinPercent };
}

/** A pair that was ready is built on again. False when it was changed meanwhile. */
async function backToWork(tx: Tx, { id, state, version }: WorkedRework["pair"], reason: string): Promise<boolean> {
  if (state !== "ready") return updatePair(tx, id, version, {});
  return moveState(tx, { kind: "pair", from: state, to: "building", reason }, () =>
    movePair(tx, id, { state, version }, "building"),
  );
}

async function reopenOrder(ctx: Context, tx: Tx, orderId: string, reason: string): Promise<void> {
  const order = await orderById(tx, orderId);
  if (order === null || order.state !== "ready") return;
  const { id, state, version } = order;
  await moveState(
    tx,
    { kind: "order", from: state, to: "building", reason },
    () => moveOrder(tx, id, { state, version }, "building"),
    [eventOf(ctx, "order-building", { kind: "order", id }, { from: state })],
  );
}
