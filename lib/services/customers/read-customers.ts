import { permit } from "#auth";
import {
  type CustomerRecord,
  customerById,
  customersByPhone,
  customersOfNumbers,
  listCustomerRecords,
  mergedInto,
} from "#data/customers";
import { eventsOf } from "#data/events";
import { ordersOfCustomer } from "#data/orders";
import { quotesOfCustomer } from "#data/quotes";
import type { CustomerId } from "#engine/units";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { pageOf, sliceOf } from "#services/paging";
import { customerView, eventView } from "#shop/names/common-view";
import { orderNumber, quoteNumber } from "#shop/names/numbers";
import { digitsToFind, storedForms } from "#shop/names/phone";
import type { Page } from "#shop/names/views";
import { quoteStateOf } from "#shop/order/quote-state";
import { findCustomer, namesake } from "./find-customer";
import type { CustomerPageView, CustomerRow, Namesake } from "./views";

export interface ListCustomersInput {
  /** Part of a name, a mail address or a number. */
  readonly text?: string;
  /** Only those whose number somebody else has too. */
  readonly sharesNumber?: boolean;
  /** From 1. */
  readonly page?: number;
}

/** Customers by name, with who else has their number. Staff only. */
export async function listCustomers(ctx: Context, input: ListCustomersInput): Promise<Outcome<Page<CustomerRow>>> {
  const allowed = permit(ctx.actor, "customer.read");
  if (!allowed.ok) return allowed;
  const text = input.text?.trim();
  const filter = {
    ...(text ? { text, digits: digitsToFind(text) } : {}),
    ...(input.sharesNumber === undefined ? {} : { sharesNumber: input.sharesNumber }),
  };
  const found = await listCustomerRecords(ctx.db, filter, sliceOf(input.page));
  const numbers = [...new Set(found.rows.flatMap(({ phoneNormalised }) => phoneNormalised ?? []))];
  const all = await customersOfNumbers(ctx.db, numbers);
  const row = (customer: (typeof found.rows)[number]): CustomerRow => ({
    ...customerView(customer),
    orders: customer.counts.orders,
    quotes: customer.counts.quotes,
    isGuestsWord: customer.givenBy === "skier",
    sameNumber: othersOf(customer, all),
  });
  return accept(pageOf(found, row, input.page));
}

function othersOf(customer: CustomerRecord, all: readonly CustomerRecord[]): readonly Namesake[] {
  const { id, phoneNormalised } = customer;
  if (phoneNormalised === null) return [];
  return all.filter((other) => other.id !== id && other.phoneNormalised === phoneNormalised).map(namesake);
}

/** One customer: what is known, what they asked for and bought, and who else has the number. Staff only. */
export async function readCustomerPage(
  ctx: Context,
  input: { readonly customerId: CustomerId },
): Promise<Outcome<CustomerPageView>> {
  const found = await findCustomer(ctx, ctx.db, "customer.read", input.customerId);
  if (!found.ok) return found;
  const customer = found.value;
  const [same, orders, quotes, merged, events, into] = await Promise.all([
    customer.phone === null ? [] : customersByPhone(ctx.db, storedForms(customer.phone)),
    ordersOfCustomer(ctx.db, customer.id),
    quotesOfCustomer(ctx.db, customer.id),
    mergedInto(ctx.db, customer.id),
    eventsOf(ctx.db, "customer", [customer.id]),
    customer.mergedIntoId === null ? null : customerById(ctx.db, customer.mergedIntoId),
  ]);
  return accept({
    ...customerView(customer),
    isGuestsWord: customer.givenBy === "skier",
    erasedAt: customer.erasedAt?.toISOString() ?? null,
    mergedInto: into === null ? null : namesake(into),
    merged: merged.map(namesake),
    sameNumber: customer.mergedIntoId === null ? same.filter(({ id }) => id !== customer.id).map(namesake) : [],
    orders: orders.map((order) => ({ orderId: order.id, number: orderNumber(order), state: order.state })),
    quotes: quotes.map((quote) => ({
      quoteId: quote.id,
      number: quoteNumber(quote),
      state: quoteStateOf(quote, ctx.now),
      name: quote.customer.name,
    })),
    history: events.map(eventView),
  });
}
