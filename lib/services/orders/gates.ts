import type { Tx } from "#data/client";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { queueMessages } from "#data/outbox";
import {
  answerProof,
  insertProof,
  moveProof,
  type PairChange,
  type PairRecord,
  pairById,
  updatePair,
} from "#data/pairs";
import { transaction } from "#data/transaction";
import type { ProofIssueState } from "#engine/floor";
import { transition } from "#engine/floor";
import type { PairId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { EventFacts } from "#schemas/events";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { rightsBases } from "#services/graphics/state-rights";
import { moveState } from "#services/move";
import { regainSlot } from "#services/promises/slots";
import { eventOf, eventWith, messageOf, nameOf } from "#services/record";
import { gatesView } from "#shop/order/gate-facts";
import { proofView } from "#shop/order/view";
import type { GatesView, ProofView, RightsStatement } from "#shop/order/views";
import { startClockIfDue } from "./clock";
import { findPair } from "./find-order";

export interface ConfirmRightsInput {
  readonly pairId: PairId;
  readonly basis: RightsStatement["basis"];
  readonly name: string;
}

/** The skier states the rights in the picture; staff may confirm on the phone. Refuses `not-needed`, `name-missing`. */
export async function confirmRights(ctx: Context, input: ConfirmRightsInput): Promise<Outcome<GatesView>> {
  const found = await findPair(ctx, ctx.db, "rights.confirm", input.pairId);
  if (!found.ok) return found;
  const name = input.name.trim();
  if (name === "") return refuse({ code: "name-missing", path: "name" });
  if (!rightsBases.includes(input.basis)) {
    return refuse({ code: "invalid-field", path: "basis", value: input.basis, allowed: rightsBases });
  }
  if (!found.value.rightsNeeded) return refuse({ code: "not-needed", what: "rights" });
  const rights = { basis: input.basis, name };
  return passGate(ctx, found.value, { kind: "rights-confirmed", data: rights }, { rights, rightsAt: ctx.now });
}

/** Staff lock measures and options; from then on a change is an edit. Refuses `already-locked`. */
export async function lockSpecification(ctx: Context, input: { readonly pairId: PairId }): Promise<Outcome<GatesView>> {
  const found = await findPair(ctx, ctx.db, "order.change", input.pairId);
  if (!found.ok) return found;
  if (found.value.specLockedAt !== null) return refuse({ code: "already-locked", pairId: input.pairId });
  const { specHash, revision } = found.value;
  const facts = { kind: "specification-locked", data: { specHash, revision } } as const;
  return passGate(ctx, found.value, facts, { specLockedAt: ctx.now });
}

/** Sends the proof of the pair's current specification. Refuses `not-needed`, `transition-not-allowed`. */
export async function issueProof(
  ctx: Context,
  input: { readonly pairId: PairId; readonly note?: string },
): Promise<Outcome<ProofView>> {
  const found = await findPair(ctx, ctx.db, "proof.issue", input.pairId);
  if (!found.ok) return found;
  const pair = found.value;
  if (!pair.proofNeeded) return refuse({ code: "not-needed", what: "proof" });
  const move = transition("proof", pair.proofState, "issued");
  if (!move.ok) return move;
  const revision = (pair.proofs.at(-1)?.revision ?? 0) + 1;
  return transaction(ctx.db, async (tx) => {
    const { proofState, version } = pair;
    const subject = { kind: "pair", id: pair.id } as const;
    const isIssued = await moveState(
      tx,
      { kind: "proof", from: proofState, to: "issued" },
      () => moveProof(tx, pair.id, { proofState, version }, "issued"),
      [eventOf(ctx, "proof-issued", subject, { revision, specHash: pair.specHash })],
    );
    if (!isIssued) return refuse(changed(pair));
    await insertProof(tx, {
      id: ctx.newId(),
      pairId: pair.id,
      revision,
      specHash: pair.specHash,
      note: input.note?.trim() || null,
      issuedAt: ctx.now,
      issuedByName: nameOf(ctx.actor),
    });
    await queueMessages(tx, [messageOf(ctx, "proof", "skier", { kind: "order", id: pair.orderId }, { revision })]);
    return accept(await latestProof(tx, pair.id));
  });
}

/** The skier approves exactly the revision they saw. Refuses `proof-changed` with the current revision. */
export async function approveProof(
  ctx: Context,
  input: { readonly pairId: PairId; readonly revision: number; readonly name: string },
): Promise<Outcome<ProofView>> {
  const name = input.name.trim();
  if (name === "") return refuse({ code: "name-missing", path: "name" });
  return answer(ctx, input, { state: "approved", note: null, by: name });
}

/** The skier asks for changes to the proof. */
export async function askProofChanges(
  ctx: Context,
  input: { readonly pairId: PairId; readonly revision: number; readonly note: string },
): Promise<Outcome<ProofView>> {
  const note = input.note.trim();
  if (note === "" || note.length > 2000)
    return refuse({ code: "reason-length", path: "note", length: note.length, min: 1, max: 2000 });
  const within = await spend(ctx, "question");
  if (!within.ok) return within;
  return answer(ctx, input, { state: "changes-asked", note, by: nameOf(ctx.actor) });
}

interface ProofAnswer {
  readonly state: Extract<ProofIssueState, "approved" | "changes-asked">;
  readonly note: string | null;
  readonly by: string;
}

async function answer(
  ctx: Context,
  input: { readonly pairId: PairId; readonly revision: number },
  given: ProofAnswer,
): Promise<Outcome<ProofView>> {
  const found = await findPair(ctx, ctx.db, "proof.answer", input.pairId);
  if (!found.ok) return found;
  const pair = found.value;
  const proof = pair.proofs.at(-1);
  if (proof === undefined || proof.state === "void") return refuse({ code: "no-proof", pairId: pair.id });
  // An edit of what is printed has made the proof void; any other leaves it as good as it was.
  if (proof.revision !== input.revision) {
    return refuse({ code: "proof-changed", path: "revision", value: input.revision, current: proof.revision });
  }
  const move = transition("proof", pair.proofState, given.state);
  if (!move.ok) return move;
  const outcome = await transaction(ctx.db, async (tx): Promise<Outcome<ProofView>> => {
    const { proofState, version } = pair;
    const to = given.state;
    const kind = to === "approved" ? "proof-approved" : "proof-changes-asked";
    const data = { revision: proof.revision, name: given.by, note: given.note };
    const isAnswered = await moveState(
      tx,
      { kind: "proof", from: proofState, to },
      () => moveProof(tx, pair.id, { proofState, version }, to, to === "approved" ? { proofAt: ctx.now } : {}),
      async () => {
        await moveState(tx, { kind: "proof-issue", from: proof.state, to }, () =>
          answerProof(tx, proof.id, { ...given, at: ctx.now }),
        );
        await regainSlot(ctx, tx, { id: pair.orderId, slotLostAt: pair.order.slotLostAt }, "proof");
        await bumpQueue(tx);
        return [eventOf(ctx, kind, { kind: "pair", id: pair.id }, data)];
      },
    );
    if (!isAnswered) return refuse(changed(pair));
    return accept(await latestProof(tx, pair.id));
  });
  if (outcome.ok) await startClockIfDue(ctx, pair.orderId);
  return outcome;
}

async function passGate(
  ctx: Context,
  pair: PairRecord,
  facts: EventFacts,
  change: PairChange,
): Promise<Outcome<GatesView>> {
  if (pair.state === "cancelled") return refuse({ code: "order-closed", state: pair.state });
  const isMoved = await transaction(ctx.db, async (tx) => {
    if (!(await updatePair(tx, pair.id, pair.version, change))) return false;
    await bumpQueue(tx);
    await recordEvents(tx, [eventWith(ctx, { kind: "pair", id: pair.id }, facts)]);
    return true;
  });
  if (!isMoved) return refuse(changed(pair));
  await startClockIfDue(ctx, pair.orderId);
  const now = await pairById(ctx.db, pair.id);
  if (now === null) throw new Error(`pair ${pair.id} was there a moment ago`);
  return accept(gatesView(now.order.depositPaidAt, now));
}

/** Somebody changed the pair between reading and writing: read again and decide again. */
export function changed(pair: { readonly id: string; readonly version: number }) {
  return { code: "changed-meanwhile", what: "pair", id: pair.id, version: pair.version } as const;
}

async function latestProof(tx: Tx, pairId: string): Promise<ProofView> {
  const proof = (await pairById(tx, pairId))?.proofs.at(-1);
  if (proof === undefined) throw new Error(`pair ${pairId} has no proof`);
  return proofView(proof);
}
