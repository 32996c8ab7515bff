import { permit } from "#auth";
import type { Tx } from "#data/client";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { extraPressChanges } from "#data/floor-changes";
import { orderById, updateOrder } from "#data/orders";
import {
  moveOperation,
  moveSki,
  type OperationChange,
  operationById,
  type PairRecord,
  pairById,
  setOperationStates,
  setPairState,
} from "#data/pairs";
import { consumeStrips } from "#data/strips";
import { transaction } from "#data/transaction";
import { latestVisits } from "#engine/lifecycle";
import { stationsBefore } from "#engine/routing";
import type { OperationId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { EventFacts } from "#schemas/events";
import type { Context } from "#services/context";
import { eventOf, eventWith, nameOf } from "#services/record";
import { pressNames } from "#shop/floor/presses";
import { floorCatalog, stationRecipe } from "#shop/floor/recipe";
import { coreStation, lastStation } from "#shop/floor/stations";
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
  const facts = (station: number, told: Told): EventFacts => ({
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
    if (operation.station === coreStation) await consumeStrips(tx, pair.id);
    if (operation.side === null && operation.station >= joinStation) await releaseParkedSki(tx, pair);
    if (pair.state === "released") await moveOrder(ctx, tx, pair, "released", "building");
    const change = { state: "running", startedAt: ctx.now, startedByName: nameOf(ctx.actor) };
    return accept(
      press === null ? { change } : { change: { ...change, press: press.press }, told: { press: press.name } },
    );
  });
}

/** Ends work and makes ready what follows. Refuses `not-started`, `already-finished` (by). */
export async function finishOperation(ctx: Context, input: OperationInput): Promise<Outcome<OperationView>> {
  const facts = (station: number): EventFacts => ({ kind: "operation-finished", data: { station } });
  return move(ctx, input, facts, async (tx, pair, operation) => {
    if (operation.state === "done") return refuse(ticked(operation));
    if (operation.state !== "running") return refuse({ code: "not-started", state: operation.state });
    await openFollowers(tx, pair, operation);
    if (operation.station === lastStation) {
      await releaseParkedSki(tx, pair);
      await moveOrder(ctx, tx, pair, "building", "ready");
    }
    const { restMinutes } = stationRecipe(operation.station);
    const nextFrom = restMinutes === 0 ? null : new Date(ctx.now.getTime() + restMinutes * 60_000);
    return accept({ change: { state: "done", finishedAt: ctx.now, finishedByName: nameOf(ctx.actor), nextFrom } });
  });
}

/** Takes back the last tick, with a reason. Refuses `reason-missing`, `followed` when later work has begun on it. */
export async function undoOperation(
  ctx: Context,
  input: OperationInput & { readonly reason: string },
): Promise<Outcome<OperationView>> {
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  const facts = (station: number): EventFacts => ({ kind: "operation-undone", data: { station, reason } });
  return move(ctx, input, facts, async (tx, pair, operation) => {
    const followers = latestVisits(pair.operations).filter((other) =>
      stationsBefore(other.station).includes(operation.station),
    );
    const again = pair.operations.find((other) => other.station === operation.station && other.visit > operation.visit);
    const begun = again ?? followers.find((other) => other.startedAt !== null);
    if (begun !== undefined) return refuse({ code: "followed", by: begun.station });
    if (operation.state === "running") {
      return accept({ change: { state: "ready", startedAt: null, startedByName: null, press: null } });
    }
    if (operation.state !== "done") return refuse({ code: "not-started", state: operation.state });
    await setOperationStates(
      tx,
      followers.map((other) => other.id),
      "ready",
      "blocked",
    );
    if (operation.station === lastStation) await moveOrder(ctx, tx, pair, "ready", "building");
    return accept({ change: { state: "running", finishedAt: null, finishedByName: null, nextFrom: null } });
  });
}

interface Decided {
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
  factsOf: (station: number, told: Told) => EventFacts,
  decide: (tx: Tx, pair: PairRecord, operation: Operation) => Promise<Outcome<Decided>>,
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
    if (["cancelled", "shipped", "delivered"].includes(pair.state))
      return refuse({ code: "order-closed", state: pair.state });
    const decided = await decide(tx, pair, operation);
    if (!decided.ok) return decided;
    const { change, told } = decided.value;
    const from = { state: operation.state, version: operation.version };
    if (!(await moveOperation(tx, operation.id, from, change))) return refuse(ticked(operation));
    const subject = { kind: "pair", id: pair.id } as const;
    await recordEvents(tx, [eventWith(ctx, subject, factsOf(operation.station, told ?? {}))]);
    const after = await pairById(tx, pair.id);
    const moved = after?.operations.find((candidate) => candidate.id === operation.id);
    if (after === null || moved === undefined) throw new Error(`operation ${operation.id} was there a moment ago`);
    return accept(operationView(moved, after, pressNames(floorCatalog(), await extraPressChanges(tx))));
  });
}

/** What waits only for this operation can begin. */
async function openFollowers(tx: Tx, pair: PairRecord, finished: Operation): Promise<void> {
  const isDone = (station: number) =>
    station === finished.station ||
    latestVisits(pair.operations).some((other) => other.station === station && other.state === "done");
  const opened = latestVisits(pair.operations).filter(
    (other) =>
      other.state === "blocked" &&
      stationsBefore(other.station).includes(finished.station) &&
      stationsBefore(other.station).every(isDone),
  );
  await setOperationStates(
    tx,
    opened.map((other) => other.id),
    "blocked",
    "ready",
  );
}

/** From the lay-up on both skis are worked on together; the parked one comes back. */
const joinStation = 10;

async function releaseParkedSki(tx: Tx, pair: PairRecord): Promise<void> {
  for (const ski of pair.skis.filter(({ state }) => state === "held"))
    await moveSki(tx, ski.id, "held", { state: "good", location: null });
}

type BuildState = "released" | "building" | "ready";

async function moveOrder(ctx: Context, tx: Tx, pair: PairRecord, from: BuildState, to: BuildState): Promise<void> {
  await setPairState(tx, pair.id, from, to);
  const order = await orderById(tx, pair.orderId);
  if (order === null || order.state !== from) return;
  const others = order.pairs.filter((other) => other.id !== pair.id);
  if (to === "ready" && others.some((other) => other.state !== "ready")) return;
  await updateOrder(tx, order.id, order.version, { state: to });
  const kind = `order-${to}` as const;
  await recordEvents(tx, [eventOf(ctx, kind, { kind: "order", id: order.id }, { from })]);
}

function blocked(pair: PairRecord, operation: Operation) {
  const waitingFor = stationsBefore(operation.station).filter(
    (station) => !latestVisits(pair.operations).some((other) => other.station === station && other.state === "done"),
  );
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
