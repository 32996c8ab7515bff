import { type Action, permit } from "#auth";
import type { Tx } from "#data/client";
import { type CustomerRecord, customerById } from "#data/customers";
import type { CustomerId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { readable } from "#services/readable";
import type { Namesake } from "./views";

export async function findCustomer(
  ctx: Context,
  client: Tx,
  action: Action,
  customerId: CustomerId,
): Promise<Outcome<CustomerRecord>> {
  const allowed = permit(ctx.actor, action);
  if (!allowed.ok) return allowed;
  const read = await readable(customerById(client, customerId));
  if (!read.ok) return read;
  return read.value === null ? refuse({ code: "not-found", what: "customer", path: "customerId" }) : accept(read.value);
}

export function namesake({ id, name, email }: CustomerRecord): Namesake {
  return { customerId: id, name, email };
}
