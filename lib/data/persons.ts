/** Everything that hangs on one person, row by row: for the file about them, and for what is forgotten. */
import type { Tx } from "./client";
import { isSameName } from "./customers";
import { withText } from "./letters";
import { noticeWithText } from "./notices";

export interface PersonKeys {
  /** The customer and those that turned out to be the same. */
  readonly customerIds: readonly string[];
  readonly sheetIds: readonly string[];
  readonly quoteIds: readonly string[];
  readonly orderIds: readonly string[];
  readonly pairIds: readonly string[];
  readonly clubIds: readonly string[];
  readonly artworkIds: readonly string[];
}

const ids = (rows: readonly { readonly id: string }[]) => rows.map(({ id }) => id);
const within = (list: readonly string[]) => ({ in: [...list] });

/** Found from the customer: one after the other, as inside a transaction there is one connection. */
export async function personKeys(client: Tx, customerId: string): Promise<PersonKeys> {
  const customers = await client.customer.findMany({
    where: { OR: [{ id: customerId }, { mergedIntoId: customerId }] },
    select: { id: true, name: true, phoneNormalised: true },
    orderBy: { createdAt: "asc" },
  });
  const customerIds = ids(customers);
  const drafts = await draftsOf(client, customers);
  const clubIds = ids(await client.club.findMany({ where: { customerId: within(customerIds) }, select: { id: true } }));
  const quotes = await client.quote.findMany({
    where: { customerId: within(customerIds) },
    select: { id: true, sheetId: true },
  });
  const sheets = await client.sheet.findMany({
    where: {
      OR: [
        { customerId: within(customerIds) },
        { id: within(quotes.map(({ sheetId }) => sheetId)) },
        { clubId: within(clubIds) },
        { id: within(drafts) },
      ],
    },
    select: { id: true },
  });
  const orderIds = ids(
    await client.order.findMany({ where: { customerId: within(customerIds) }, select: { id: true } }),
  );
  const pairIds = ids(await client.pair.findMany({ where: { orderId: within(orderIds) }, select: { id: true } }));
  const artworkIds = ids(
    await client.artwork.findMany({ where: { sheetId: within(ids(sheets)) }, select: { id: true } }),
  );
  return { customerIds, sheetIds: ids(sheets), quoteIds: ids(quotes), orderIds, pairIds, clubIds, artworkIds };
}

/** Sheets without a quote are nobody's yet: those of the number, under the same name or under none. */
async function draftsOf(
  client: Tx,
  customers: readonly { readonly name: string; readonly phoneNormalised: string | null }[],
): Promise<readonly string[]> {
  const numbers = customers.flatMap(({ phoneNormalised }) => phoneNormalised ?? []);
  const rows = await client.sheet.findMany({
    where: { phoneNormalised: within(numbers), customerId: null },
    select: { id: true, fields: true },
  });
  return rows.flatMap(({ id, fields }) => {
    const name = nameIn(fields);
    return name === null || customers.some((customer) => isSameName(customer.name, name)) ? [id] : [];
  });
}

function nameIn(fields: unknown): string | null {
  const given = new Map(Object.entries(typeof fields === "object" && fields !== null ? fields : {})).get(
    "contact.name",
  );
  const value: unknown = typeof given === "object" && given !== null && "value" in given ? given.value : null;
  return typeof value === "string" ? value : null;
}

/** As a subject of events, links and letters. */
function subjectsOf(keys: PersonKeys) {
  const kinds = [
    ["customer", keys.customerIds],
    ["sheet", keys.sheetIds],
    ["quote", keys.quoteIds],
    ["order", keys.orderIds],
    ["pair", keys.pairIds],
    ["club", keys.clubIds],
  ] as const;
  return kinds.filter(([, list]) => list.length > 0).map(([kind, list]) => ({ kind, list }));
}

/** All rows about a person, as they are stored; digests of links and codes are not among them. */
export async function personRows(client: Tx, keys: PersonKeys) {
  const { customerIds, sheetIds, quoteIds, orderIds, pairIds, clubIds, artworkIds } = keys;
  const about = subjectsOf(keys).map(({ kind, list }) => ({ subjectKind: kind, subjectId: within(list) }));
  return {
    customers: await client.customer.findMany({ where: { id: within(customerIds) }, orderBy: { createdAt: "asc" } }),
    sheets: await client.sheet.findMany({ where: { id: within(sheetIds) }, orderBy: { openedAt: "asc" } }),
    quotes: await client.quote.findMany({ where: { id: within(quoteIds) }, orderBy: { createdAt: "asc" } }),
    clubs: await client.club.findMany({ where: { id: within(clubIds) }, orderBy: { number: "asc" } }),
    orders: await client.order.findMany({ where: { id: within(orderIds) }, orderBy: { number: "asc" } }),
    payments: await client.payment.findMany({ where: { orderId: within(orderIds) }, orderBy: { requestedAt: "asc" } }),
    pairs: await client.pair.findMany({
      where: { id: within(pairIds) },
      include: { skis: true, revisions: true, proofs: true, operations: true },
      orderBy: { serialNumber: "asc" },
    }),
    letters: (
      await client.notice.findMany({ where: { orderId: within(orderIds) }, orderBy: { draftedAt: "asc" } })
    ).map(noticeWithText),
    mail: (await client.letter.findMany({ where: { OR: about }, orderBy: { createdAt: "asc" } })).map(withText),
    messages: await client.outboxMessage.findMany({ where: { OR: about }, orderBy: { createdAt: "asc" } }),
    codes: await client.contactCode.findMany({
      where: { orderId: within(orderIds) },
      select: { orderId: true, sentTo: true, sentAt: true, expiresAt: true, usedAt: true },
      orderBy: { sentAt: "asc" },
    }),
    pictures: await client.artwork.findMany({
      where: { id: within(artworkIds) },
      include: { images: true },
      orderBy: { uploadedAt: "asc" },
    }),
    events: await client.event.findMany({ where: { OR: about }, orderBy: { seq: "asc" } }),
  };
}

/** Numbers of orders that are not over. */
export async function openOrderNumbers(client: Tx, { orderIds }: PersonKeys): Promise<readonly number[]> {
  const rows = await client.order.findMany({
    where: { id: within(orderIds), state: { notIn: ["delivered", "cancelled"] } },
    select: { number: true },
    orderBy: { number: "asc" },
  });
  return rows.map(({ number }) => number);
}

/** Ends every private link to what was theirs. */
export async function revokePersonLinks(tx: Tx, keys: PersonKeys, at: Date): Promise<void> {
  for (const { kind, list } of subjectsOf(keys)) {
    if (kind === "customer") continue;
    const where = { subjectKind: kind, subjectId: within(list), revokedAt: null };
    await tx.privateLink.updateMany({ where, data: { revokedAt: at } });
  }
}

/** The words that are a person's: names, mail, numbers, lines of an address, as they stand in any row of theirs. */
export async function wordsOfPerson(client: Tx, { customerIds, quoteIds, orderIds, pairIds }: PersonKeys) {
  const customers = await client.customer.findMany({ where: { id: within(customerIds) } });
  const quotes = await client.quote.findMany({ where: { id: within(quoteIds) } });
  const orders = await client.order.findMany({ where: { id: within(orderIds) } });
  const pairs = await client.pair.findMany({ where: { id: within(pairIds) }, select: { skierName: true } });
  const bought = [...quotes, ...orders];
  const addresses = [...customers.map(({ address }) => address), ...bought.map(({ buyerAddress }) => buyerAddress)];
  const distinct = (words: readonly (string | null)[]) => [
    ...new Set(words.flatMap((word) => (word === null || word.trim() === "" ? [] : [word.trim()]))),
  ];
  return {
    names: distinct([
      ...customers.map(({ name }) => name),
      ...bought.map(({ buyerName }) => buyerName),
      ...orders.map(({ acceptedByName }) => acceptedByName),
      ...pairs.map(({ skierName }) => skierName),
    ]),
    contacts: distinct([
      ...customers.flatMap(({ email, phone, phoneNormalised }) => [email, phone, phoneNormalised]),
      ...bought.flatMap(({ buyerEmail, buyerPhone }) => [buyerEmail, buyerPhone]),
      ...addresses.flatMap(linesOf),
    ]),
  };
}

/** Short lines are no one's own: "Flat 2" stands in many. */
const shortestLine = 6;

function linesOf(address: unknown): readonly string[] {
  if (typeof address !== "object" || address === null || !("lines" in address) || !Array.isArray(address.lines))
    return [];
  return address.lines.map(String).filter((line) => line.length >= shortestLine);
}

/** How many customers that are not of these ids bear this name. */
export async function othersNamed(client: Tx, name: string, { customerIds }: PersonKeys): Promise<number> {
  const bearing = { equals: name, mode: "insensitive" as const };
  return client.customer.count({ where: { name: bearing, id: { notIn: [...customerIds] }, erasedAt: null } });
}

/** Drafts that nobody has touched since, without a quote. */
export async function staleDrafts(client: Tx, before: Date, take: number) {
  return client.sheet.findMany({
    where: {
      updatedAt: { lt: before },
      quotes: { none: {} },
      OR: [{ state: "open" }, { NOT: { fields: { equals: {} } } }],
    },
    select: { id: true, state: true, updatedAt: true },
    orderBy: { updatedAt: "asc" },
    take,
  });
}

/** Customers with none but old quotes, and no order. */
export async function staleAskers(client: Tx, before: Date, take: number) {
  return client.customer.findMany({
    where: {
      erasedAt: null,
      mergedIntoId: null,
      createdAt: { lt: before },
      orders: { none: {} },
      clubs: { none: {} },
      quotes: { every: { createdAt: { lt: before } } },
      sheets: { every: { updatedAt: { lt: before } } },
    },
    select: { id: true, name: true },
    orderBy: { createdAt: "asc" },
    take,
  });
}

/** Customers whose orders are all over since then. */
export async function staleBuyers(client: Tx, before: Date, take: number) {
  return client.customer.findMany({
    where: {
      erasedAt: null,
      mergedIntoId: null,
      quotes: { every: { createdAt: { lt: before } } },
      sheets: { every: { updatedAt: { lt: before } } },
      AND: [
        { orders: { some: {} } },
        // Spelt out: "every" passes where a column is null.
        { orders: { none: { state: { notIn: ["delivered", "cancelled"] } } } },
        { orders: { none: { OR: [{ deliveredAt: { gte: before } }, { cancelledAt: { gte: before } }] } } },
      ],
    },
    select: { id: true, name: true },
    orderBy: { createdAt: "asc" },
    take,
  });
}

/** Orders that nobody stood behind since. */
export async function staleUnconfirmed(client: Tx, before: Date, take: number) {
  return client.order.findMany({
    where: { state: "waiting", confirmedAt: null, acceptedAt: { lt: before } },
    select: { id: true, number: true },
    orderBy: { number: "asc" },
    take,
  });
}

const oldLetters = (before: Date, word: string) => ({ sentAt: { lt: before }, recipient: { not: word } });

export async function countOldLetters(client: Tx, before: Date, word: string): Promise<number> {
  return client.outboxMessage.count({ where: oldLetters(before, word) });
}

/** That a letter went stays; to whom and what it said goes. */
export async function emptyOldLetters(tx: Tx, before: Date, word: string): Promise<number> {
  const { count } = await tx.outboxMessage.updateMany({
    where: oldLetters(before, word),
    data: { recipient: word, data: {} },
  });
  return count;
}

export async function artworksOfSheets(client: Tx, sheetIds: readonly string[]): Promise<readonly string[]> {
  return ids(await client.artwork.findMany({ where: { sheetId: within(sheetIds) }, select: { id: true } }));
}

export async function numbersOfOrders(
  client: Tx,
  { orderIds }: PersonKeys,
): Promise<readonly { readonly number: number }[]> {
  return client.order.findMany({
    where: { id: within(orderIds) },
    select: { number: true },
    orderBy: { number: "asc" },
  });
}
