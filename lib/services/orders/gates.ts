import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { GatesView, PairId, ProofView, RightsStatement } from "../views";

/** The skier states the rights in the picture; staff may confirm on the phone. */
export async function confirmRights(
  ctx: Context,
  input: { readonly pairId: PairId; readonly basis: RightsStatement["basis"]; readonly name: string },
): Promise<Outcome<GatesView>> {
  throw new Error(`confirmRights is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Sends the proof of the pair's current specification. */
export async function issueProof(
  ctx: Context,
  input: { readonly pairId: PairId; readonly note?: string },
): Promise<Outcome<ProofView>> {
  throw new Error(`issueProof is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** The skier approves exactly the revision they saw. Refuses `proof-changed` with the current revision. */
export async function approveProof(
  ctx: Context,
  input: { readonly pairId: PairId; readonly revision: number; readonly name: string },
): Promise<Outcome<ProofView>> {
  throw new Error(`approveProof is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** The skier asks for changes to the proof. */
export async function askProofChanges(
  ctx: Context,
  input: { readonly pairId: PairId; readonly revision: number; readonly note: string },
): Promise<Outcome<ProofView>> {
  throw new Error(`askProofChanges is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Staff lock measures and options; from then on a change is an edit. */
export async function lockSpecification(ctx: Context, input: { readonly pairId: PairId }): Promise<Outcome<GatesView>> {
  throw new Error(`lockSpecification is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
