import type { Buyer } from "./buyer";
import type { Tx } from "./client";
import { readableRows, readRows } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { lockName } from "./locks";
import { readCustomer } from "./records/order";

export type CustomerRecord = ReturnType<typeof readCustomer<Prisma.CustomerGetPayload<object>>>;

export interface CustomerContact extends Buyer {
  /** E.164. */
  readonly phoneNormalised: string | null;
  /** Every form under which the number may be stored. */
  readonly phoneForms: readonly string[];
  /** Who gave it: a guest's word changes no row. */
  readonly by: "desk" | "skier";
}

/** A customer, and what of the row was changed for it. */
export interface CustomerGiven {
  readonly customer: CustomerRecord;
  /** By field: as it was. Null when nothing that stood there was changed. */
  readonly before: Readonly<Record<string, unknown>> | null;
}

/**
 * The customer of this contact, made if new. The desk's word changes the row it knows by the number; two desks on one number
 * get the same row. A guest gets a row only where name, number and mail are the very same, and changes nothing in it; else
 * a new one, which the desk sees beside the others of its number.
 */
export async function customerOf(tx: Tx, id: string, contact: CustomerContact, now: Date): Promise<CustomerGiven> {
  if (contact.phoneNormalised !== null) await lockName(tx, `customer ${contact.phoneNormalised}`);
  const forms = contact.phoneNormalised === null ? [] : [contact.phoneNormalised, ...contact.phoneForms];
  const known = await customersByPhone(tx, forms);
  const namesake = known.find(({ name }) => isSameName(name, contact.name));
  if (contact.by === "skier") {
    const isSame = namesake !== undefined && isSameOrUnsaid(namesake.email, contact.email);
    return { customer: isSame ? namesake : await insertCustomer(tx, id, contact, now), before: null };
  }
  const row = namesake ?? known.find(({ givenBy }) => givenBy === "desk");
  if (row === undefined) return { customer: await insertCustomer(tx, id, contact, now), before: null };
  return changeCustomer(tx, row, contact);
}

/** The desk's word on a row: what was given replaces what stood there. */
export async function changeCustomer(
  tx: Tx,
  row: CustomerRecord,
  contact: Omit<CustomerContact, "by" | "phoneForms">,
): Promise<CustomerGiven> {
  const given = {
    name: contact.name,
    ...(contact.email === null ? {} : { email: contact.email }),
    ...(contact.phone === null ? {} : { phone: contact.phone }),
    ...(contact.phoneNormalised === null ? {} : { phoneNormalised: contact.phoneNormalised }),
    ...(contact.address === null ? {} : { address: asJson(contact.address) }),
  };
  const customer = readCustomer(
    await tx.customer.update({ where: { id: row.id }, data: { ...given, givenBy: "desk" } }),
  );
  const told = ["name", "email", "phone", "address"] as const;
  const changed = told.filter((key) => row[key] !== null && JSON.stringify(row[key]) !== JSON.stringify(customer[key]));
  const before = Object.fromEntries(changed.map((key) => [key, row[key]]));
  return { customer, before: changed.length === 0 ? null : before };
}

/** Puts right what stands in the row; false when it has become another's or was erased meanwhile. */
export async function correctCustomer(
  tx: Tx,
  id: string,
  right: Pick<CustomerContact, "name" | "email" | "phone" | "phoneNormalised">,
): Promise<boolean> {
  const where = { id, mergedIntoId: null, erasedAt: null };
  const { count } = await tx.customer.updateMany({ where, data: { ...right, givenBy: "desk" } });
  return count === 1;
}

async function insertCustomer(tx: Tx, id: string, contact: CustomerContact, now: Date): Promise<CustomerRecord> {
  const { name, email, phone, phoneNormalised, address, by } = contact;
  const data = { id, name, email, phone, phoneNormalised, givenBy: by, createdAt: now };
  return readCustomer(
    await tx.customer.create({ data: { ...data, ...(address === null ? {} : { address: asJson(address) }) } }),
  );
}

/** Letters and spaces alone: "robin  ALDER" is Robin Alder. */
export function isSameName(a: string, b: string): boolean {
  const folded = (name: string) => name.normalize("NFKC").trim().replace(/\s+/g, " ").toLocaleLowerCase("en");
  return folded(a) === folded(b);
}

function isSameOrUnsaid(stored: string | null, given: string | null): boolean {
  return given === null || given.toLowerCase() === stored?.toLowerCase();
}

/** Everybody stored under one of these forms of a number: those the desk knows first, then by age. */
export async function customersByPhone(client: Tx, forms: readonly string[]): Promise<readonly CustomerRecord[]> {
  if (forms.length === 0) return [];
  const rows = await client.customer.findMany({
    where: { phoneNormalised: { in: [...forms] }, mergedIntoId: null, erasedAt: null },
    orderBy: [{ givenBy: "asc" }, { createdAt: "asc" }, { id: "asc" }],
  });
  return rows.map(readCustomer);
}

/** Whom the desk would take a caller for; null for a new number. */
export async function customerByPhone(client: Tx, forms: readonly string[]): Promise<CustomerRecord | null> {
  return (await customersByPhone(client, forms))[0] ?? null;
}

export async function customerById(client: Tx, id: string): Promise<CustomerRecord | null> {
  const row = await client.customer.findUnique({ where: { id } });
  return row === null ? null : readCustomer(row);
}

export async function searchCustomers(
  client: Tx,
  text: string,
  digits: readonly string[],
): Promise<readonly CustomerRecord[]> {
  const rows = await client.customer.findMany({
    where: {
      mergedIntoId: null,
      erasedAt: null,
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

export interface CustomerFilter {
  readonly text?: string;
  readonly digits?: readonly string[];
  /** Those whose number somebody else has too. */
  readonly sharesNumber?: boolean;
}

/** Customers by name, with how much there is of each; merged ones stand under the one they became. */
export async function listCustomerRecords(
  client: Tx,
  { text, digits = [], sharesNumber = false }: CustomerFilter,
  slice: { readonly skip: number; readonly take: number },
) {
  const shared = sharesNumber ? await sharedNumbers(client) : [];
  const where: Prisma.CustomerWhereInput = {
    mergedIntoId: null,
    erasedAt: null,
    ...(sharesNumber ? { phoneNormalised: { in: [...shared] } } : {}),
    ...(text === undefined
      ? {}
      : {
          OR: [
            { name: { contains: text, mode: "insensitive" } },
            { email: { contains: text, mode: "insensitive" } },
            ...digits.map((run) => ({ phoneNormalised: { contains: run } })),
          ],
        }),
  };
  const [rows, total] = await Promise.all([
    client.customer.findMany({
      where,
      include: { _count: { select: { orders: true, quotes: true } } },
      orderBy: [{ name: "asc" }, { createdAt: "asc" }, { id: "asc" }],
      ...slice,
    }),
    client.customer.count({ where }),
  ]);
  return { ...readRows(rows, ({ _count, ...row }) => ({ ...readCustomer(row), counts: _count })), total };
}

async function sharedNumbers(client: Tx): Promise<readonly string[]> {
  const rows = await client.customer.groupBy({
    by: ["phoneNormalised"],
    where: { phoneNormalised: { not: null }, mergedIntoId: null, erasedAt: null },
    having: { phoneNormalised: { _count: { gt: 1 } } },
  });
  return rows.flatMap(({ phoneNormalised }) => phoneNormalised ?? []);
}

/** Which of these numbers several have, and who. */
export async function customersOfNumbers(client: Tx, numbers: readonly string[]): Promise<readonly CustomerRecord[]> {
  const rows = await client.customer.findMany({
    where: { phoneNormalised: { in: [...numbers] }, mergedIntoId: null, erasedAt: null },
    orderBy: [{ givenBy: "asc" }, { createdAt: "asc" }, { id: "asc" }],
  });
  return readableRows(rows, readCustomer);
}

/** Those that turned out to be this one. */
export async function mergedInto(client: Tx, id: string): Promise<readonly CustomerRecord[]> {
  const rows = await client.customer.findMany({ where: { mergedIntoId: id }, orderBy: { createdAt: "asc" } });
  return readableRows(rows, readCustomer);
}

/** Gives everything of one customer to another; the row stays and says where it went. Null when either is gone. */
export async function mergeCustomerRows(
  tx: Tx,
  from: string,
  into: string,
): Promise<{
  readonly orders: readonly number[];
  readonly quotes: readonly { number: number; revision: number }[];
} | null> {
  // One after the other, so that two merges cannot make a ring.
  await lockName(tx, "merge customers");
  const there = await tx.customer.count({ where: { id: { in: [from, into] }, mergedIntoId: null, erasedAt: null } });
  if (there !== 2) return null;
  await tx.customer.update({ where: { id: from }, data: { mergedIntoId: into } });
  const [orders, quotes] = [
    await tx.order.findMany({ where: { customerId: from }, select: { number: true }, orderBy: { number: "asc" } }),
    await tx.quote.findMany({
      where: { customerId: from },
      select: { number: true, revision: true },
      orderBy: [{ number: "asc" }, { revision: "asc" }],
    }),
  ];
  const where = { customerId: from };
  const data = { customerId: into };
  await tx.order.updateMany({ where, data });
  await tx.quote.updateMany({ where, data });
  await tx.sheet.updateMany({ where, data });
  await tx.club.updateMany({ where, data });
  await tx.customer.updateMany({ where: { mergedIntoId: from }, data: { mergedIntoId: into } });
  return { orders: orders.map(({ number }) => number), quotes };
}
