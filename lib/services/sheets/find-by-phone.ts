import { permit } from "#auth";
import { customerByPhone } from "#data/customers";
import { ordersOfCustomer } from "#data/orders";
import { quotesOfCustomer } from "#data/quotes";
import { listSheets } from "#data/sheets";
import type { CustomerId, OrderId, QuoteId } from "#engine/units";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { orderNumber, quoteNumber } from "#shop/names/numbers";
import { normalisePhone } from "#shop/names/phone";
import { quoteStateOf } from "#shop/order/quote-state";
import { draftRow } from "./view";
import type { PhoneMatch } from "./views";

/** Who this number is: the customer, open drafts, quotes and orders. Staff only. Refuses `invalid-phone`. */
export async function findByPhone(ctx: Context, input: { readonly phone: string }): Promise<Outcome<PhoneMatch>> {
  const allowed = permit(ctx.actor, "call.work");
  if (!allowed.ok) return allowed;
  const phone = normalisePhone(input.phone);
  if (!phone.ok) return phone;
  const customer = await customerByPhone(ctx.db, phone.value);
  const [drafts, quotes, orders] = await Promise.all([
    listSheets(ctx.db, { state: "open", phone: phone.value }, { skip: 0, take: 20 }),
    customer === null ? [] : quotesOfCustomer(ctx.db, customer.id),
    customer === null ? [] : ordersOfCustomer(ctx.db, customer.id),
  ]);
  return accept({
    phone: phone.value,
    customer: customer === null ? null : { customerId: customer.id as CustomerId, name: customer.name },
    drafts: drafts.rows.map((record) => draftRow(record, ctx.actor, ctx.now)),
    quotes: quotes.map((quote) => ({
      quoteId: quote.id as QuoteId,
      number: quoteNumber(quote),
      state: quoteStateOf(quote, ctx.now),
    })),
    orders: orders.map((order) => ({
      orderId: order.id as OrderId,
      number: orderNumber(order),
      state: order.state,
    })),
  });
}
