import { correctCustomer as writeCustomer } from "#data/customers";
import { recordEvents } from "#data/events";
import { transaction } from "#data/transaction";
import type { CustomerId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import { type CorrectContactInput, correctedContact } from "./corrected-contact";
import { findCustomer } from "./find-customer";

/**
 * Staff put name, number or mail right. Quotes and orders keep the buyer they were agreed with.
 * Refuses `reason-missing`, `invalid-phone`, `contact-unchanged`, `customer-gone`.
 */
export async function correctCustomer(
  ctx: Context,
  { customerId, ...input }: CorrectContactInput & { readonly customerId: CustomerId },
): Promise<Outcome<{ readonly customerId: CustomerId }>> {
  const found = await findCustomer(ctx, ctx.db, "customer.correct", customerId);
  if (!found.ok) return found;
  const corrected = correctedContact(found.value, input);
  if (!corrected.ok) return corrected;
  const { before, reason, ...right } = corrected.value;
  return transaction(ctx.db, async (tx) => {
    if (!(await writeCustomer(tx, customerId, right))) return refuse({ code: "customer-gone" });
    const subject = { kind: "customer", id: customerId } as const;
    await recordEvents(tx, [eventOf(ctx, "customer-corrected", subject, { before, reason })]);
    return accept({ customerId });
  });
}
