import { permit } from "#auth";
import type { Tx } from "#data/client";
import { bumpQueue } from "#data/counters";
import { extraPressChanges } from "#data/floor-changes";
import { moveOrder, orderById } from "#data/orders";
import {
  moveOperation,
  movePair,
  moveSki,
  type OperationChange,
  operationById,
  type PairRecord,
  pairById,
  setOperationStates,
} from "#data/pairs";
import { transaction } from "#data/transaction";
import type { OperationState, OrderState } from "#engine/floor";
import { closedStates, isAtOrAfter, isOneOf, latestVisits, type StationId } from "#engine/floor";
import type { OperationId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { EventFacts } from "#schemas/events";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { eventOf, eventWith, nameOf } from "#services/record";
import { consumeHeldStrips } from "#services/stock/strip-moves";
import { pressNames } from "#shop/floor/presses";
import { floorCatalog, stationRecipe } from "#shop/floor/recipe";
import { isLastStation, mustPrecede, stationIdFor, stationIdTaking, stationNumber } from "#shop/floor/stations";
import { notBefore, operationView } from "#shop/pair/view";
import type { OperationView } from "#shop/pair/views";
import { mayStart } from "./may-start";

export interface OperationInput {
  readonly operationId: OperationId;
  /** The version on the screen: someone else's tick is told, not overwritten. */
  readonly version: number;
}

type Operation = PairRecord["operations"][number];

export interface StartInput extends OperationInput {
  /** Of the presses, where work at one begins. */
  readonly press?: string;
}

/**
 * Starts work. Refuses `operation-blocked` (waitingFor), `too-early` (from), `already-started` (by), `order-closed`, and
 * what {@link mayStart} refuses: held, out of use, no room.
 */
export async function startOperation(ctx: Context, input: StartInput): Promise<Outcome<OperationView>> {
  const facts = (station: StationId, told: Told): EventFacts => ({
    kind: "operation-started",
    data: { station, ...told },
  });
  return move(ctx, input, facts, async (tx, pair, operation) => {
    if (operation.state === "blocked") return refuse(blocked(pair, operation));
    if (operation.state !== "ready") return refuse(ticked(operation));
    const from = notBefore(operation.station, pair);
    if (from !== null && from > ctx.now) return refuse(tooEarly(from, ctx.now));
    const start = await mayStart(ctx, tx, pair, operation, input.press);
    if (!start.ok) return start;
    const { press } = start.value;
    if (operation.station === stationIdTaking("strips")) await consumeHeldStrips(tx, pair.id);
    if (operation.side === null && isJoined(operation.station)) await releaseParkedSki(tx, pair);
    if (pair.state === "released") await follow(ctx, tx, pair, "building");
    const to = "running";
    const change = { startedAt: ctx.now, startedByName: nameOf(ctx.actor) };
    return accept(
      press === null ? { to, change } : { to, change: { ...change, press: press.press }, told: { press: press.name } },
    );
  });
}

/** Ends work and makes ready what follows. Refuses `not-started`, `already-finished` (by). */
export async function finishOperation(ctx: Context, input: OperationInput): Promise<Outcome<OperationView>> {
  const facts = (station: StationId): EventFacts => ({ kind: "operation-finished", data: { station } });
  return move(ctx, input, facts, async (tx, pair, operation) => {
    if (operation.state === "done") return refuse(ticked(operation));
    if (operation.state !== "running") return refuse({ code: "not-started", state: operation.state });
    await openFollowers(tx, pair, operation);
    if (isLastStation(operation.station)) {
      await releaseParkedSki(tx, pair);
      await follow(ctx, tx, pair, "ready");
    }
    const { restMinutes } = stationRecipe(operation.station);
    const nextFrom = restMinutes === 0 ? null : new Date(ctx.now.getTime() + restMinutes * 60_000);
    return accept({ to: "done", change: { finishedAt: ctx.now, finishedByName: nameOf(ctx.actor), nextFrom } });
  });
}

/** Takes back the last tick, with a reason. Refuses `reason-missing`, `followed` when later work has begun on it. */
export async function undoOperation(
  ctx: Context,
  input: OperationInput & { readonly reason: string },
): Promise<Outcome<OperationView>> {
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  const facts = (station: StationId): EventFacts => ({ kind: "operation-undone", data: { station, reason } });
  return move(
    ctx,
    input,
    facts,
    async (tx, pair, operation) => {
      const followers = latestVisits(pair.operations).filter((other) =>
        mustPrecede(other.station).includes(operation.station),
      );
      const again = pair.operations.find(
        (other) => other.station === operation.station && other.visit > operation.visit,
      );
      const begun = again ?? followers.find((other) => other.startedAt !== null);
      if (begun !== undefined) return refuse({ code: "followed", by: stationNumber(begun.station) });
      if (operation.state === "running") {
        return accept({ to: "ready", change: { startedAt: null, startedByName: null, press: null } });
      }
      if (operation.state !== "done") return refuse({ code: "not-started", state: operation.state });
      const waiting = followers.filter(({ state }) => state === "ready").map(({ id }) => id);
      await moveState(tx, { kind: "operation", from: "ready", to: "blocked", reason }, () =>
        setOperationStates(tx, waiting, "ready", "blocked"),
      );
      if (isLastStation(operation.station)) await follow(ctx, tx, pair, "building", reason);
      return accept({ to: "running", change: { finishedAt: null, finishedByName: null, nextFrom: null } });
    },
    reason,
  );
}

interface Decided {
  readonly to: OperationState;
  readonly change: OperationChange;
  /** Told with the event beside the station. */
  readonly told?: Told;
}

interface Told {
  readonly press?: string;
}

async function move(
  ctx: Context,
  input: OperationInput,
  factsOf: (station: StationId, told: Told) => EventFacts,
  decide: (tx: Tx, pair: PairRecord, operation: Operation) => Promise<Outcome<Decided>>,
  reason?: string,
): Promise<Outcome<OperationView>> {
  const allowed = permit(ctx.actor, "pair.work");
  if (!allowed.ok) return allowed;
  return transaction(ctx.db, async (tx) => {
    // The floor's one lock: two ticks that meet are taken one after the other.
    await bumpQueue(tx);
    const stored = await operationById(tx, input.operationId);
    const pair = stored === null ? null : await pairById(tx, stored.pairId);
    const operation = pair?.operations.find((candidate) => candidate.id === input.operationId);
    if (pair == null || operation === undefined)
      return refuse({ code: "not-found", what: "operation", path: "operationId" });
    if (operation.version !== input.version) return refuse(ticked(operation));
    if (isOneOf(closedStates, pair.state)) return refuse({ code: "order-closed", state: pair.state });
    const decided = await decide(tx, pair, operation);
    if (!decided.ok) return decided;
    const { to, change, told } = decided.value;
    const { state, version } = operation;
    const isMoved = await moveState(
      tx,
      { kind: "operation", from: state, to, reason: reason ?? null },
      () => moveOperation(tx, operation.id, { state, version }, to, change),
      [eventWith(ctx, { kind: "pair", id: pair.id }, factsOf(operation.station, told ?? {}))],
    );
    if (!isMoved) return refuse(ticked(operation));
    const after = await pairById(tx, pair.id);
    const moved = after?.operations.find((candidate) => candidate.id === operation.id);
    if (after === null || moved === undefined) throw new Error(`operation ${operation.id} was there a moment ago`);
    return accept(operationView(moved, after, pressNames(floorCatalog(), await extraPressChanges(tx))));
  });
}

/**
 * What waits for nothing else any more can begin. Asked of the whole way before it, not of the stations directly before alone:
 * a pair that was begun when the floor had another order still finds its way.
 */
async function openFollowers(tx: Tx, pair: PairRecord, finished: Operation): Promise<void> {
  const visits = latestVisits(pair.operations);
  const isDone = ({ station, state }: Operation) => station === finished.station || state === "done";
  const isBefore = (earlier: Operation, later: Operation) =>
    earlier.station !== later.station && isAtOrAfter(floorCatalog(), later.station, earlier.station);
  const opened = visits.filter(
    (other) =>
      other.state === "blocked" &&
      isBefore(finished, other) &&
      visits.filter((earlier) => isBefore(earlier, other)).every(isDone),
  );
  await moveState(tx, { kind: "operation", from: "blocked", to: "ready" }, () =>
    setOperationStates(
      tx,
      opened.map((other) => other.id),
      "blocked",
      "ready",
    ),
  );
}

/** From the lay-up on both skis are worked on together; the parked one comes back. */
function isJoined(station: StationId): boolean {
  return isAtOrAfter(floorCatalog(), station, stationIdFor("lay-up"));
}

async function releaseParkedSki(tx: Tx, pair: PairRecord): Promise<void> {
  for (const ski of pair.skis.filter(({ state }) => state === "held"))
    await moveState(tx, { kind: "ski", from: ski.state, to: "good" }, () =>
      moveSki(tx, ski.id, ski.state, { state: "good", location: null }),
    );
}

/** The pair goes on with its work, and the order once all of its pairs have. */
async function follow(
  ctx: Context,
  tx: Tx,
  pair: PairRecord,
  to: Extract<OrderState, "building" | "ready">,
  reason?: string,
): Promise<void> {
  const { state } = pair;
  if (state === to) return;
  const why = reason === undefined ? {} : { reason };
  await moveState(tx, { kind: "pair", from: state, to, ...why }, () => movePair(tx, pair.id, { state }, to));
  const order = await orderById(tx, pair.orderId);
  if (order === null || order.state !== state) return;
  const others = order.pairs.filter((other) => other.id !== pair.id);
  if (to === "ready" && others.some((other) => other.state !== "ready")) return;
  await moveState(
    tx,
    { kind: "order", from: order.state, to, ...why },
    () => moveOrder(tx, order.id, { state: order.state, version: order.version }, to),
    [eventOf(ctx, `order-${to}` as const, { kind: "order", id: order.id }, { from: order.state })],
  );
}

function blocked(pair: PairRecord, operation: Operation) {
  const waitingFor = mustPrecede(operation.station)
    .filter(
      (station) => !latestVisits(pair.operations).some((other) => other.station === station && other.state === "done"),
    )
    .map(stationNumber);
  return { code: "operation-blocked", waitingFor, orderState: pair.state } as const;
}

function tooEarly(from: Date, now: Date) {
  const minutes = Math.ceil((from.getTime() - now.getTime()) / 60_000);
  return { code: "too-early", from: from.toISOString(), minutes } as const;
}

function ticked(operation: Operation) {
  const by = operation.finishedByName ?? operation.startedByName;
  const code = operation.state === "done" ? "already-finished" : "already-started";
  return { code, by, state: operation.state, version: operation.version } as const;
}
