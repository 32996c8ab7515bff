/** What may be done with money, by the order's state: every cell written out. Shop practice, no source. */
import { describe, expect, it } from "vitest";
import { type MoneyAct, moneyActs, moneyAllowed, type OrderState, states } from "#engine/floor";

const y = true;
const n = false;
//                       waiting released building ready shipped delivered cancelled
const table: Readonly<Record<MoneyAct, readonly boolean[]>> = {
  "announce-deposit": [y, n, n, n, n, n, n],
  "take-deposit": [y, n, n, n, n, n, n],
  "take-rush": [y, y, y, y, y, y, n],
  "take-balance": [y, y, y, y, y, y, n],
  "waive-rush": [y, y, y, y, y, y, n],
  "pay-refund": [n, n, n, n, n, n, y],
};

const cells = (Object.keys(table) as MoneyAct[]).flatMap((act) =>
  states.order.map((state, index) => ({ act, state, may: table[act][index] ?? false })),
);

describe("money on an order", () => {
  it.each(cells)("$act while $state: $may", ({ act, state, may }) => {
    const answer = moneyAllowed(act, state);
    expect(answer.ok).toBe(may);
    const code = state === "cancelled" ? "order-closed" : "money-not-now";
    if (!may) expect(answer).toMatchObject({ refusal: { code, state } });
  });

  it("has a row for every act there is", () => {
    expect(Object.keys(moneyActs).sort()).toEqual(Object.keys(table).sort());
    const known: readonly OrderState[] = states.order;
    expect(known).toHaveLength(7);
  });
});
