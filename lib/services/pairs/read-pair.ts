import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { PairId, PairView, ScanResult } from "../views";

/** Everything that builds the pair; no price, no address. */
export async function readPair(ctx: Context, input: { readonly pairId: PairId }): Promise<Outcome<PairView>> {
  throw new Error(`readPair is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** A scanned code or a typed serial: TY-0417, TY-0417-L-7. Refuses `serial-check` when the check digit is wrong. */
export async function findPairByCode(ctx: Context, input: { readonly code: string }): Promise<Outcome<ScanResult>> {
  throw new Error(`findPairByCode is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
