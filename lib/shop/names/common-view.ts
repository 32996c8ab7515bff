import type { UnreadableRow } from "#data/columns";
import type { EventRecord } from "#data/events";
import type { CustomerId } from "#engine/units";
import type { CustomerView, EventView, PostalAddress, UnreadableView } from "./views";

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
  readonly id: CustomerId;
  readonly name: string;
  readonly email: string | null;
  readonly phone: string | null;
  readonly address: PostalAddress | null;
}): CustomerView {
  return {
    customerId: customer.id,
    name: customer.name,
    email: customer.email,
    phone: customer.phone,
    address: customer.address,
  };
}

export function unreadableView({ table, row, column, why }: UnreadableRow): UnreadableView {
  return { table, row, column, why };
}
