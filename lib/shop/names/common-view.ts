import type { UnreadableRow } from "#data/columns";
import type { EventRecord } from "#data/events";
import { findStation } from "#engine/floor";
import type { CustomerId } from "#engine/units";
import { currentCatalog } from "#shop/catalogue/current";
import type { CustomerView, EventView, PostalAddress, UnreadableView } from "./views";

export function eventView(event: EventRecord): EventView {
  return {
    seq: event.seq.toString(),
    at: event.at.toISOString(),
    kind: event.kind,
    by: event.actorName,
    data: withNumbers(event),
  };
}

/** Stations are told by the numbers that people know them by. */
function withNumbers({ kind, data }: EventRecord): EventView["data"] {
  const keys = kind === "rework-started" ? ["station", "from"] : ["station"];
  const told = keys.flatMap((key) => {
    const id = data[key];
    const station = typeof id === "string" ? findStation(currentCatalog().floor, id) : null;
    return station === null ? [] : [[key, station.number] as const];
  });
  return { ...data, ...Object.fromEntries(told) };
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
