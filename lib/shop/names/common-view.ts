import type { EventRecord } from "#data/events";
import type { CustomerId } from "#engine/units";
import type { CustomerView, EventView, PostalAddress } from "./views";

export function eventView(event: EventRecord): EventView {
  return {
    seq: event.seq.toString(),
    at: event.at.toISOString(),
    kind: event.kind,
    by: event.actorName,
    data: event.data,
  };
}

export function customerView(customer: {
  readonly id: string;
  readonly name: string;
  readonly email: string | null;
  readonly phone: string | null;
  readonly address: unknown;
}): CustomerView {
  return {
    customerId: customer.id as CustomerId,
    name: customer.name,
    email: customer.email,
    phone: customer.phone,
    address: (customer.address as PostalAddress | null) ?? null,
  };
}
