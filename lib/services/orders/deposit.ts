import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { DepositMethod, Instant, OrderId } from "../views";

export interface RecordDepositInput {
  readonly orderId: OrderId;
  readonly method: DepositMethod;
  readonly reference?: string;
}

/** `demo-card` is received at once, `bank-transfer` and `counter` when staff say so (a skier only announces them), `pay-later` leaves it open. */
export async function recordDeposit(
  ctx: Context,
  input: RecordDepositInput,
): Promise<Outcome<{ readonly orderId: OrderId; readonly paidAt: Instant | null }>> {
  throw new Error(`recordDeposit is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
