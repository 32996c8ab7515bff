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
  /** E.164. */
  readonly phoneNormalised: string | null;
  /** Every form under which the number may be stored. */
  readonly phoneForms: readonly string[];
  readonly address: PostalAddress | null;
}

/**
 * The customer of this phone number, made if new: two desks on one number get the same row. Without a number each call
 * makes a customer. Details that were given replace older ones, and so does the number's form.
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
  const known = await customerByPhone(tx, [contact.phoneNormalised, ...contact.phoneForms]);
  if (known !== null && known.phoneNormalised !== contact.phoneNormalised) {
    const data = { ...given, phoneNormalised: contact.phoneNormalised };
    return readCustomer(await tx.customer.update({ where: { id: known.id }, data }));
  }
  return readCustomer(
    await tx.customer.upsert({
      where: { phoneNormalised: contact.phoneNormalised },
      create: { id, createdAt: now, phoneNormalised: contact.phoneNormalised, ...given },
      update: given,
    }),
  );
}

/** The customer stored under one of these forms of a number; an earlier form counts before a later one. */
export async function customerByPhone(client: Tx, forms: readonly string[]): Promise<CustomerRecord | null> {
  const rows = await client.customer.findMany({ where: { phoneNormalised: { in: [...forms] } } });
  const row = forms.flatMap((form) => rows.find(({ phoneNormalised }) => phoneNormalised === form) ?? [])[0];
  return row === undefined ? null : readCustomer(row);
}

export async function searchCustomers(
  client: Tx,
  text: string,
  digits: readonly string[],
): Promise<readonly CustomerRecord[]> {
  const rows = await client.customer.findMany({
    where: {
      OR: [
        { name: { contains: text, mode: "insensitive" } },
        { email: { contains: text, mode: "insensitive" } },
        ...digits.map((run) => ({ phoneNormalised: { contains: run } })),
      ],
    },
    orderBy: [{ name: "asc" }, { id: "asc" }],
    take: 20,
  });
  return readableRows(rows, readCustomer);
}
