import type { Instant } from "#engine/units";
/** What an order costs in all and what of it is paid, tax and shipping in. */
export interface OrderMoney {
  /** The accepted price and what was added since. */
  readonly totalCents: number;
  /** The fee of a hard date; null when none was asked for. */
  readonly rush: { readonly taxCents: number; readonly totalCents: number; readonly paidAt: Instant | null } | null;
  /** Received less given back. */
  readonly paidCents: number;
  /** Due before shipping; 0 once cancelled. */
  readonly openCents: number;
}
