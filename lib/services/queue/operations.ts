import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { OperationId, OperationView } from "../views";

interface OperationInput {
  readonly operationId: OperationId;
  /** The version on the screen: someone else's tick is told, not overwritten. */
  readonly version: number;
}

/** Starts work. Refuses `operation-blocked` (waitingFor), `too-early` (from, minutes), `already-started` (by). */
export async function startOperation(ctx: Context, input: OperationInput): Promise<Outcome<OperationView>> {
  throw new Error(`startOperation is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Ends work and makes ready what follows. */
export async function finishOperation(ctx: Context, input: OperationInput): Promise<Outcome<OperationView>> {
  throw new Error(`finishOperation is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Takes back the last tick, with a reason. */
export async function undoOperation(
  ctx: Context,
  input: OperationInput & { readonly reason: string },
): Promise<Outcome<OperationView>> {
  throw new Error(`undoOperation is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
