/**
 * What is left of a person when they are forgotten: orders, numbers, money and days stay, names, contacts, pictures and letters
 * go, and what stands in the record loses the words that were theirs. The one exception to a record that is never changed.
 */

import type { Tx } from "./client";
import { Prisma } from "./generated/client";
import { asJson } from "./json";
import { sweepLetters } from "./letters";
import { sweepNotices } from "./notices";
import { personalColumns } from "./personal-data";
import type { PersonKeys } from "./persons";

const within = (list: readonly string[]) => ({ in: [...list] });

/** Members of an event's particulars that somebody typed, or that name somebody. */
const typedMembers: ReadonlySet<string> = new Set([
  "before",
  "fileName",
  "fromName",
  "name",
  "note",
  "reason",
  "reference",
  "skierName",
  "text",
  "tracking",
  "unpaidReason",
  "planB",
  "letters",
]);

export interface Forgetting {
  readonly keys: PersonKeys;
  /** Whole names, as they stand in the rows. */
  readonly names: readonly string[];
  /** What stands in place of a word that went. */
  readonly word: string;
  readonly at: Date;
}

/**
 * Clears the rows of a person. Rows keep their ids, numbers, states and instants.
 * @returns the files of their pictures, to be deleted once the transaction has committed (`dropPictures`)
 */
export async function forgetRows(tx: Tx, { keys, names, word, at }: Forgetting): Promise<readonly string[]> {
  const { customerIds, sheetIds, quoteIds, orderIds, pairIds, clubIds, artworkIds } = keys;
  const gone = Prisma.DbNull;
  await tx.customer.updateMany({
    where: { id: within(customerIds) },
    data: { name: word, email: null, phone: null, phoneNormalised: null, address: gone, erasedAt: at },
  });
  await forgetSheets(tx, sheetIds, word);
  await tx.club.updateMany({ where: { id: within(clubIds) }, data: { name: word } });
  const buyer = { buyerName: word, buyerEmail: null, buyerPhone: null, buyerAddress: gone };
  await tx.quote.updateMany({
    where: { id: within(quoteIds) },
    data: { ...buyer, skierName: null, typed: {}, changeRequest: null, flagAcks: [] },
  });
  for (const row of await tx.quote.findMany({
    where: { id: within(quoteIds) },
    select: { id: true, choices: true, spec: true, withdrawReason: true, honourReason: true },
  })) {
    const reasons = {
      ...(row.withdrawReason === null ? {} : { withdrawReason: word }),
      ...(row.honourReason === null ? {} : { honourReason: word }),
    };
    const data = { choices: asJson(withoutLetters(row.choices)), spec: asJson(withoutLetters(row.spec)), ...reasons };
    await tx.quote.update({ where: { id: row.id }, data });
  }
  for (const { id, customerSpecified, cancelReason, hardDatePlanB } of await tx.order.findMany({
    where: { id: within(orderIds) },
  })) {
    const texts = Array.isArray(customerSpecified)
      ? customerSpecified.map((each) => String(each).replace(/“.*”/u, "“…”"))
      : [];
    await tx.order.update({
      where: { id },
      data: {
        ...buyer,
        acceptedByName: word,
        visitorMark: null,
        customerSpecified: asJson(texts),
        ...(cancelReason === null ? {} : { cancelReason: word }),
        ...(hardDatePlanB === null ? {} : { hardDatePlanB: word }),
      },
    });
  }
  await forgetPairs(tx, pairIds, word);
  await forgetReferences(tx, orderIds, names, word);
  await tx.notice.updateMany({ where: { orderId: within(orderIds) }, data: { body: word, data: {} } });
  await tx.notice.updateMany({
    where: { orderId: within(orderIds), decidedReason: { not: null } },
    data: { decidedReason: word },
  });
  await tx.contactCode.updateMany({ where: { orderId: within(orderIds) }, data: { sentTo: word } });
  return forgetPictures(tx, artworkIds, word);
}

/** By its reference a payment is found again in the bank's books; names in it go. */
async function forgetReferences(
  tx: Tx,
  orderIds: readonly string[],
  names: readonly string[],
  word: string,
): Promise<void> {
  const parts = names.flatMap((name) => name.split(/\s+/)).filter((part) => part.length >= 3);
  if (parts.length === 0) return;
  const pattern = new RegExp(parts.map(escaped).join("|"), "giu");
  const where = { orderId: within(orderIds), reference: { not: null } };
  for (const { id, reference } of await tx.payment.findMany({ where })) {
    const rest = reference?.replace(pattern, word) ?? null;
    if (rest !== reference) await tx.payment.update({ where: { id }, data: { reference: rest } });
  }
}

/** A sheet keeps that there was one. */
export async function forgetSheets(tx: Tx, sheetIds: readonly string[], word: string): Promise<void> {
  await tx.sheet.updateMany({
    where: { id: within(sheetIds), turnedDownReason: { not: null } },
    data: { turnedDownReason: word },
  });
  await tx.sheet.updateMany({
    where: { id: within(sheetIds) },
    data: {
      fields: {},
      phoneNormalised: null,
      callBackAt: null,
      callBackReason: null,
      callBackPhone: null,
      reviewNote: null,
      reviewAskedAt: null,
      skierName: null,
      version: { increment: 1 },
    },
  });
}

async function forgetPairs(tx: Tx, pairIds: readonly string[], word: string): Promise<void> {
  for (const { id, spec, rights } of await tx.pair.findMany({ where: { id: within(pairIds) } })) {
    const stated = rights === null ? {} : { rights: asJson({ ...members(rights), name: word }) };
    await tx.pair.update({ where: { id }, data: { skierName: word, spec: asJson(withoutLetters(spec)), ...stated } });
  }
  for (const { pairId, revision, spec } of await tx.pairRevision.findMany({ where: { pairId: within(pairIds) } })) {
    const where = { pairId_revision: { pairId, revision } };
    await tx.pairRevision.update({ where, data: { spec: asJson(withoutLetters(spec)) } });
  }
  for (const { id, spec } of await tx.benchRecord.findMany({ where: { pairId: within(pairIds) } })) {
    await tx.benchRecord.update({ where: { id }, data: { spec: asJson(withoutLetters(spec)) } });
  }
  const mine = { pairId: within(pairIds) };
  await tx.proof.updateMany({ where: { ...mine, note: { not: null } }, data: { note: word } });
  await tx.proof.updateMany({ where: { ...mine, answeredByName: { not: null } }, data: { answeredByName: word } });
}

/**
 * The pictures themselves are deleted; that there were some stays.
 * @returns their files, to be deleted once the transaction has committed (`dropPictures`)
 */
export async function forgetPictures(tx: Tx, artworkIds: readonly string[], word: string): Promise<readonly string[]> {
  const images = await tx.artworkImage.findMany({
    where: { artworkId: within(artworkIds) },
    select: { storedAs: true },
  });
  await tx.artworkImage.deleteMany({ where: { artworkId: within(artworkIds) } });
  const data = { fileName: word, sha256: "", rights: Prisma.DbNull };
  await tx.artwork.updateMany({ where: { id: within(artworkIds) }, data });
  return images.flatMap(({ storedAs }) => storedAs ?? []);
}

/** Letters for a ski in place of the ones that may be a name: as many, so that what was built can still be drawn. */
function withoutLetters(spec: unknown): unknown {
  return changed(spec, (key, value) =>
    (key === "text" || key === "inlayText") && typeof value === "string" ? value.replace(/[\p{L}\p{N}]/gu, "X") : value,
  );
}

/** What was written to them, and what the record says of them. */
export async function forgetRecord(tx: Tx, { keys, word }: Forgetting): Promise<void> {
  const subjects = [
    ["customer", keys.customerIds],
    ["sheet", keys.sheetIds],
    ["quote", keys.quoteIds],
    ["order", keys.orderIds],
    ["pair", keys.pairIds],
    ["club", keys.clubIds],
  ] as const;
  for (const [subjectKind, list] of subjects) {
    if (list.length === 0) continue;
    const where = { subjectKind, subjectId: within(list) };
    await tx.outboxMessage.updateMany({ where, data: { recipient: word, data: {} } });
    await tx.letter.updateMany({ where, data: { recipient: word, heading: word, body: null, problem: null } });
    for (const { seq, data } of await tx.event.findMany({ where })) {
      const scrubbed = changed(data, (key, value) =>
        typedMembers.has(key) && value !== null ? wordFor(value, word) : value,
      );
      if (JSON.stringify(scrubbed) !== JSON.stringify(data)) {
        await tx.event.update({ where: { seq }, data: { data: asJson(scrubbed) } });
      }
    }
  }
}

/** Keeps the kind of the value, so that the event can be read as what it is. */
function wordFor(value: unknown, word: string): unknown {
  if (typeof value === "string") return word;
  if (Array.isArray(value)) return value.map((each) => wordFor(each, word));
  if (typeof value === "object" && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, wordFor(each, word)]));
  }
  return value;
}

/** Tables whose rows are somebody's own: those of the person are cleared above, and another's may hold the same words rightly. */
const tied: ReadonlySet<string> = new Set([
  "artworks",
  "artwork_images",
  "clubs",
  "contact_codes",
  "customers",
  "orders",
  "pairs",
  "quotes",
  "sheets",
]);

/** Swept by whoever can open them. */
const sealed: ReadonlySet<string> = new Set(["letters.body", "notices.body"]);

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

/**
 * Takes words of a person out of whatever else holds them: a note on a breakdown, a letter to somebody else, a reason. Goes over
 * every column that the list says can hold a customer or typed words.
 */
export async function sweepWords(tx: Tx, phrases: readonly string[], word: string): Promise<void> {
  const wanted = phrases.filter((phrase) => phrase.length >= 3);
  if (wanted.length > 0) {
    const words = new RegExp(wanted.map(escaped).join("|"), "giu");
    await sweepLetters(tx, words, word);
    await sweepNotices(tx, words, word);
  }
  for (const [table, kinds] of Object.entries(personalColumns)) {
    if (tied.has(table)) continue;
    for (const [column, holds] of Object.entries(kinds)) {
      if ((holds !== "customer" && holds !== "words") || sealed.has(`${table}.${column}`)) continue;
      for (const phrase of wanted) await sweepColumn(tx, table, column, phrase, word);
    }
  }
}

/** Names of tables and columns are the list's own; what a person typed travels as a parameter. */
async function sweepColumn(tx: Tx, table: string, column: string, phrase: string, word: string): Promise<void> {
  const [kind] = await tx.$queryRaw<{ type: string }[]>`
    SELECT data_type AS type FROM information_schema.columns
    WHERE table_schema = current_schema() AND table_name = ${table} AND column_name = ${column}`;
  if (kind === undefined || kind.type === "bytea") return;
  const isJson = kind.type === "jsonb";
  // In JSON a quotation mark or a backslash is written with a backslash before it.
  const [from, to] = isJson ? [JSON.stringify(phrase).slice(1, -1), JSON.stringify(word).slice(1, -1)] : [phrase, word];
  const pattern = escaped(from);
  const cast = isJson ? "::jsonb" : "";
  const replacement = to.replaceAll("\\", "\\\\");
  await tx.$executeRawUnsafe(
    `UPDATE "${table}" SET "${column}" = regexp_replace("${column}"::text, $1, $2, 'gi')${cast} WHERE "${column}"::text ~* $1`,
    pattern,
    replacement,
  );
}

function members(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null ? { ...value } : {};
}

/** A copy with some members changed, at any depth. */
function changed(value: unknown, change: (key: string, value: unknown) => unknown, key = ""): unknown {
  const own = change(key, value);
  if (own !== value) return own;
  if (Array.isArray(value)) return value.map((each) => changed(each, change, key));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, changed(each, change, name)]));
}
