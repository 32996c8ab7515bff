/** What an order costs and what of it is paid: the accepted price, and what was added since. */
import type { OrderRecord } from "#data/orders";
import type { OrderMoney } from "./views";

interface Payments {
  readonly payments: readonly Pick<OrderRecord["payments"][number], "kind" | "state" | "cents" | "receivedAt">[];
}
type MoneyFacts = Payments & Pick<OrderRecord, "state" | "totalCents" | "rushCents">;

/** Received less given back. */
export function paidCents({ payments }: Payments): number {
  return payments
    .filter((payment) => payment.state === "received")
    .reduce((sum, payment) => sum + (payment.kind === "refund" ? -payment.cents : payment.cents), 0);
}

export function orderMoney(record: MoneyFacts): OrderMoney {
  const asked = record.payments.find(({ kind, state }) => kind === "rush" && state !== "waived");
  const rush =
    asked === undefined
      ? null
      : {
          // Rows of before the fee bore tax hold the fee alone.
          taxCents: Math.max(0, asked.cents - (record.rushCents ?? asked.cents)),
          totalCents: asked.cents,
          paidAt: asked.receivedAt?.toISOString() ?? null,
        };
  const totalCents = record.totalCents + (rush?.totalCents ?? 0);
  const paid = paidCents(record);
  const openCents = record.state === "cancelled" ? 0 : Math.max(0, totalCents - paid);
  return { totalCents, rush, paidCents: paid, openCents };
}
