/** A pair whose strips are not all there: what can be done, what it does to the promise, and the decision. */

import { permit } from "#auth";
import problems from "#content/copy/problems.json";
import type { Tx } from "#data/client";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { insertPairHolds } from "#data/holds";
import { endMaterialHolds, type PairRecord, pairById, updatePair } from "#data/pairs";
import { transaction } from "#data/transaction";
import type { QueueSituation } from "#engine/routing";
import type { PairId } from "#engine/units";
import { accept, fill, type IsoDate, isoDate, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { findPair } from "#services/orders/find-order";
import { eventOf, nameOf } from "#services/record";
import { allocateStrips, holdSet } from "#services/stock/allocate";
import { holdForSki, matchOtherSki } from "#services/stock/match-other-ski";
import { type WorkedOptions, workOutOptions } from "#services/stock/options";
import { putStripsBack } from "#services/stock/strip-moves";
import type { StripsShortView } from "#services/stock/views";
import { currentCatalog, releasedCatalog } from "#shop/catalogue/current";
import { stationIdTaking } from "#shop/floor/stations";
import { queueEffect } from "#shop/queue/effect";
import type { QueueEffect } from "#shop/queue/views";
import { isPairShort, lackingSide } from "#shop/stock/is-short";
import { farthestDays, isTooFar, shopDay } from "#shop/time/shop-time";

const w = problems.strips;

export interface StripsShortInput {
  readonly pairId: PairId;
  /** The day a batch is expected: what waiting for it would do. */
  readonly expectedOn?: string;
}

export interface DecideStripsInput {
  readonly pairId: PairId;
  readonly version: number;
  /** An option's id. */
  readonly option: string;
  /** Needed to wait. */
  readonly expectedOn?: string;
  readonly reason: string;
}

/** Why, and the ways out. Refuses `invalid-field` (expectedOn). */
export async function stripsShort(ctx: Context, input: StripsShortInput): Promise<Outcome<StripsShortView>> {
  const found = await findPair(ctx, ctx.db, "pair.read", input.pairId);
  if (!found.ok) return found;
  const pair = found.value;
  const isShort = isPairShort(pair);
  const day = dayOf(ctx, input.expectedOn);
  if (!day.ok) return day;
  const effect = isShort ? await queueEffect(ctx, (situation) => waiting(situation, pair.id, day.value)) : null;
  const { why, options } = isShort ? await optionsOf(ctx.db, pair, ctx.now, effect) : { why: [], options: [] };
  const own = effect?.moved.find(({ pairId }) => pairId === pair.id) ?? null;
  return accept({
    pairId: input.pairId,
    serial: pair.serial,
    version: pair.version,
    isShort,
    promisedOn: pair.order.promisedOn,
    why,
    options: options.map(({ option }) => option),
    waiting: day.value === null ? null : own,
    waitsUntil: materialHold(pair)?.expectedOn ?? null,
  });
}

/**
 * Takes one way out. Refuses `reason-missing`, `strips-not-short`, `strip-option-gone`, `changed-meanwhile`,
 * `invalid-field` (expectedOn).
 */
export async function decideStrips(
  ctx: Context,
  input: DecideStripsInput,
): Promise<Outcome<{ readonly serial: string }>> {
  const allowed = permit(ctx.actor, "strips.decide");
  if (!allowed.ok) return allowed;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  const day = dayOf(ctx, input.expectedOn);
  if (!day.ok) return day;
  if (input.option === "wait" && day.value === null)
    return refuse({
      code: "invalid-field",
      path: "expectedOn",
      message: w.noDay,
    });
  return transaction(ctx.db, async (tx) => {
    await bumpQueue(tx);
    const pair = await pairById(tx, input.pairId);
    if (pair === null) return refuse({ code: "not-found", what: "pair", path: "pairId" });
    if (!isPairShort(pair)) return refuse({ code: "strips-not-short", serial: pair.serial });
    const { options } = await optionsOf(tx, pair, ctx.now, null);
    const chosen = options.find(({ option }) => option.id === input.option);
    if (chosen === undefined) return refuse({ code: "strip-option-gone", path: "option" });
    if (pair.version !== input.version || !(await updatePair(tx, pair.id, input.version, {})))
      return refuse({ code: "changed-meanwhile", what: "pair" });
    await endMaterialHolds(tx, pair.id, stationIdTaking("strips"), { at: ctx.now, by: nameOf(ctx.actor) });
    const { option } = chosen;
    if (option.kind === "wait") await holdForBatch(ctx, tx, pair, day.value, reason);
    if (option.kind === "take-from") await putStripsBack(tx, option.fromPairId);
    if (chosen.take !== null) await chosen.take(tx);
    if (option.kind === "take-from") await giveAgain(ctx, tx, option.fromPairId, pair.serial, reason);
    const data = { option, reason, expectedOn: day.value };
    await recordEvents(tx, [eventOf(ctx, "strips-decided", { kind: "pair", id: pair.id }, data)]);
    return accept({ serial: pair.serial });
  });
}

interface TakeableOption {
  readonly option: WorkedOptions["options"][number]["option"];
  /** Holds the set that was found; null where nothing is taken. */
  readonly take: ((tx: Tx) => Promise<void>) | null;
}

/** A ski built again needs wood like the other one's: no other species, no other thickness. */
async function optionsOf(
  client: Tx,
  pair: PairRecord,
  now: Date,
  effect: QueueEffect | null,
): Promise<{ readonly why: WorkedOptions["why"]; readonly options: readonly TakeableOption[] }> {
  const wait: TakeableOption = { option: { id: "wait", kind: "wait" }, take: null };
  const side = lackingSide(pair);
  if (side !== null) {
    const match = await matchOtherSki(client, pair, side, now);
    if (match === null) return { why: [{ code: "off-target" }], options: [wait] };
    const take = (tx: Tx) => holdForSki(tx, pair.id, side, match);
    return { why: [], options: [{ option: { id: "as-ordered", kind: "as-ordered" }, take }, wait] };
  }
  const slackOf = (pairId: string) => effect?.slack.find((each) => each.pairId === pairId)?.before ?? null;
  const { why, options } = await workOutOptions(client, pair, now, slackOf);
  return {
    why,
    options: options.map(({ option, found }) => {
      const match = found?.matched.pairs[0];
      const positions = found?.positions ?? [];
      return { option, take: match === undefined ? null : (tx) => holdSet(tx, pair.id, match, positions) };
    }),
  };
}

function materialHold(pair: PairRecord) {
  return pair.holds.find(({ reason, station }) => reason === "material" && station === stationIdTaking("strips"));
}

async function holdForBatch(ctx: Context, tx: Tx, pair: PairRecord, expectedOn: IsoDate | null, note: string) {
  await insertPairHolds(tx, [
    {
      id: ctx.newId(),
      pairId: pair.id,
      reason: "material",
      station: stationIdTaking("strips"),
      expectedOn,
      note,
      incidentId: null,
      madeAt: ctx.now,
      madeByName: nameOf(ctx.actor),
    },
  ]);
}

/** The pair whose strips were taken gets others, or is short itself from now on. */
async function giveAgain(ctx: Context, tx: Tx, pairId: string, to: string, reason: string): Promise<void> {
  const pair = await pairById(tx, pairId);
  const catalog = pair === null ? null : await releasedCatalog(tx, pair.releaseHash);
  if (pair === null || catalog === null) throw new Error(`pair ${pairId} or its release is not there`);
  const spec = pair.spec;
  const strips = await allocateStrips(tx, { pairId, spec, catalog, now: ctx.now });
  await recordEvents(tx, [eventOf(ctx, "strips-given-away", { kind: "pair", id: pairId }, { to, reason, strips })]);
}

function waiting(situation: QueueSituation, pairId: string, expectedDate: IsoDate | null): QueueSituation {
  if (expectedDate === null) return situation;
  const pairs = situation.pairs.map((pair) => {
    if (pair.pairId !== pairId) return pair;
    const others = pair.waitingOn.filter(
      ({ reason, holdsUpStation }) => reason !== "material" || holdsUpStation !== stationIdTaking("strips"),
    );
    return {
      ...pair,
      waitingOn: [...others, { reason: "material" as const, holdsUpStation: stationIdTaking("strips"), expectedDate }],
    };
  });
  return { ...situation, pairs };
}

function dayOf(ctx: Context, text: string | undefined): Outcome<IsoDate | null> {
  if (text === undefined || text === "") return accept(null);
  const today = shopDay(ctx.now, currentCatalog().shop.timeZone);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || Number.isNaN(Date.parse(text)) || text < today)
    return refuse({ code: "invalid-field", path: "expectedOn", message: fill(w.dayPast, { text, today }) });
  if (isTooFar(isoDate(text), today)) {
    const message = fill(w.dayTooFar, { text, farthestDays, today });
    return refuse({ code: "invalid-field", path: "expectedOn", message });
  }
  return accept(isoDate(text));
}
