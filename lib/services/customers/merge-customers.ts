import { mergeCustomerRows } from "#data/customers";
import { recordEvents } from "#data/events";
import { transaction } from "#data/transaction";
import type { CustomerId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import { orderNumber, quoteNumber } from "#shop/names/numbers";
import { storedForms } from "#shop/names/phone";
import { findCustomer } from "./find-customer";

export interface MergeInput {
  /** Who turned out to be the other one; the row stays and says so. */
  readonly from: CustomerId;
  readonly into: CustomerId;
  readonly reason: string;
}

/**
 * Two rows of one number are one person: what was asked for and bought goes to one of them, in the words it was agreed in.
 * Refuses `reason-missing`, `customers-other-number`, `customer-gone`.
 */
export async function mergeCustomers(ctx: Context, input: MergeInput): Promise<Outcome<{ readonly into: CustomerId }>> {
  const from = await findCustomer(ctx, ctx.db, "customer.merge", input.from);
  if (!from.ok) return from;
  const into = await findCustomer(ctx, ctx.db, "customer.merge", input.into);
  if (!into.ok) return into;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  const [own, other] = [from.value, into.value];
  const forms = new Set(storedForms(own.phone ?? ""));
  if (own.id === other.id || !storedForms(other.phone ?? "").some((form) => forms.has(form))) {
    return refuse({ code: "customers-other-number", number: own.phone, other: other.phone });
  }
  return transaction(ctx.db, async (tx) => {
    const moved = await mergeCustomerRows(tx, own.id, other.id);
    if (moved === null) return refuse({ code: "customer-gone" });
    const data = {
      into: other.id,
      from: own.id,
      name: other.name,
      fromName: own.name,
      reason,
      orders: moved.orders.map((number) => orderNumber({ number })),
      quotes: moved.quotes.map(quoteNumber),
    };
    await recordEvents(tx, [
      eventOf(ctx, "customer-merged", { kind: "customer", id: own.id }, data),
      eventOf(ctx, "customer-merged", { kind: "customer", id: other.id }, data),
    ]);
    return accept({ into: other.id });
  });
}
