import type { CustomerId } from "#engine/units";
import type { PostalAddress } from "#schemas/stored/index";
import type { Tx } from "./client";
import { readableRows } from "./columns";
import { asJson } from "./json";
import { readCustomer } from "./records/order";

export interface CustomerRecord {
  readonly id: CustomerId;
  readonly name: string;
  readonly email: string | null;
  readonly phone: string | null;
  readonly phoneNormalised: string | null;
  readonly address: PostalAddress | null;
}

export interface CustomerContact {
  readonly name: string;
  readonly email: string | null;
  readonly phone: string | null;
  readonly phoneNormalised: string | null;
  readonly address: PostalAddress | null;
}

/**
 * The customer of this phone number, made if new: two desks on one number get the same row. Without a number each call
 * makes a customer. Details that were given replace older ones.
 */
export async function customerOf(tx: Tx, id: string, contact: CustomerContact, now: Date): Promise<CustomerRecord> {
  const given = {
    name: contact.name,
    ...(contact.email === null ? {} : { email: contact.email }),
    ...(contact.phone === null ? {} : { phone: contact.phone }),
    ...(contact.address === null || contact.address === undefined ? {} : { address: asJson(contact.address) }),
  };
  if (contact.phoneNormalised === null)
    return readCustomer(await tx.customer.create({ data: { id, createdAt: now, ...given } }));
  return readCustomer(
    await tx.customer.upsert({
      where: { phoneNormalised: contact.phoneNormalised },
      create: { id, createdAt: now, phoneNormalised: contact.phoneNormalised, ...given },
      update: given,
    }),
  );
}

export async function customerByPhone(client: Tx, phoneNormalised: string): Promise<CustomerRecord | null> {
  const row = await client.customer.findUnique({ where: { phoneNormalised } });
  return row === null ? null : readCustomer(row);
}

export async function searchCustomers(client: Tx, text: string, digits: string): Promise<readonly CustomerRecord[]> {
  const rows = await client.customer.findMany({
    where: {
      OR: [
        { name: { contains: text, mode: "insensitive" } },
        { email: { contains: text, mode: "insensitive" } },
        ...(digits.length >= 4 ? [{ phoneNormalised: { contains: digits } }] : []),
      ],
    },
    orderBy: [{ name: "asc" }, { id: "asc" }],
    take: 20,
  });
  return readableRows(rows, readCustomer);
}
