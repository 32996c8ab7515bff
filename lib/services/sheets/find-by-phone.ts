import { permit } from "#auth";
import { customersByPhone } from "#data/customers";
import { ordersOfCustomer } from "#data/orders";
import { quotesOfCustomer } from "#data/quotes";
import { listSheets } from "#data/sheets";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import type { PhoneMatch } from "#services/views";
import { orderNumber, quoteNumber } from "#shop/names/numbers";
import { normalisePhone, storedForms } from "#shop/names/phone";
import { quoteStateOf } from "#shop/order/quote-state";
import { draftRow } from "./view";

/** Who this number is: the customer, open drafts, quotes and orders. Staff only. Refuses `invalid-phone`. */
export async function findByPhone(ctx: Context, input: { readonly phone: string }): Promise<Outcome<PhoneMatch>> {
  const allowed = permit(ctx.actor, "call.work");
  if (!allowed.ok) return allowed;
  const phone = normalisePhone(input.phone);
  const phoneForms = storedForms(input.phone);
  const [customer = null, ...others] = await customersByPhone(ctx.db, phoneForms);
  const [drafts, quotes, orders] = await Promise.all([
    listSheets(ctx.db, { state: "open", phoneForms }, { skip: 0, take: 20 }),
    customer === null ? [] : quotesOfCustomer(ctx.db, customer.id),
    customer === null ? [] : ordersOfCustomer(ctx.db, customer.id),
  ]);
  // A number that is taken no more may still be one that was.
  if (!phone.ok && customer === null && drafts.total === 0) return phone;
  return accept({
    phone: phone.ok ? phone.value : input.phone.trim(),
    customer: customer === null ? null : { customerId: customer.id, name: customer.name },
    sameNumber: others.map(({ id, name }) => ({ customerId: id, name })),
    drafts: drafts.rows.map((record) => draftRow(record, ctx.actor, ctx.now)),
    quotes: quotes.map((quote) => ({
      quoteId: quote.id,
      number: quoteNumber(quote),
      state: quoteStateOf(quote, ctx.now),
    })),
    orders: orders.map((order) => ({
      orderId: order.id,
      number: orderNumber(order),
      state: order.state,
    })),
  });
}
