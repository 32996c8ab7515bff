/** What may be done with money on an order, by its state: one table, as the moves of states.ts are. */
import { accept, type Outcome, refuse } from "#engine/units";
import type { OrderState } from "./states";

const standing = ["waiting", "released", "building", "ready", "shipped", "delivered"] as const;

/**
 * Shop practice, no source. A deposit is what an order waits for, so it is taken before the release and never after. What is
 * still open may come as long as the order stands: an owner may have sent it unpaid. Money goes back once it is cancelled.
 */
export const moneyActs = {
  "announce-deposit": ["waiting"],
  "take-deposit": ["waiting"],
  "take-rush": standing,
  "take-balance": standing,
  "waive-rush": standing,
  "pay-refund": ["cancelled"],
} as const satisfies Readonly<Record<string, readonly OrderState[]>>;

export type MoneyAct = keyof typeof moneyActs;

/** Refuses `order-closed` on a cancelled order, else `money-not-now` (act, state). */
export function moneyAllowed(act: MoneyAct, state: OrderState): Outcome<void> {
  const allowed: readonly OrderState[] = moneyActs[act];
  if (allowed.includes(state)) return accept(undefined);
  return state === "cancelled"
    ? refuse({ code: "order-closed", state })
    : refuse({ code: "money-not-now", act, state });
}
