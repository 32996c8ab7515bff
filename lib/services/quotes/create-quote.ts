import { issueLink, revokeLinks } from "#auth";
import { type Catalog, sha256Of } from "#catalog";
import { buyerFrom } from "#data/buyer";
import type { Tx } from "#data/client";
import { clubById } from "#data/clubs";
import { nextNumber } from "#data/counters";
import { type CustomerContact, customerOf } from "#data/customers";
import { recordEvents } from "#data/events";
import { queueMessages } from "#data/outbox";
import { insertQuote, type NewQuote, quoteById } from "#data/quotes";
import { lockOpenSheet, moveSheet, type SheetRecord } from "#data/sheets";
import { transaction } from "#data/transaction";
import { type Assessment, assessSheet, type EngineCatalog } from "#engine/assessment";
import type { SheetId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import { idOf } from "#schemas/ids";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { moveState } from "#services/move";
import { eventOf, guestName, messageOf, nameOf } from "#services/record";
import { inputOf, stoppedBy } from "#services/sheets/assess-sheet";
import { findSheet } from "#services/sheets/find-sheet";
import { noLease } from "#services/sheets/lease";
import { whyClosed } from "#services/sheets/save-sheet";
import type { SheetContact } from "#services/sheets/views";
import type { MadeQuote, QuoteSeen } from "#services/views";
import { currentCatalog, engineOn, engineVersion, keepRelease } from "#shop/catalogue/current";
import { quoteNumber } from "#shop/names/numbers";
import { normalisePhone, storedForms } from "#shop/names/phone";
import type { DateRange } from "#shop/names/views";
import { rangeOf } from "#shop/queue/range";
import { frozenFit, validUntil } from "./freeze";
import { differencesFrom } from "./seen";
import { quoteView } from "./view";

/**
 * Freezes the sheet as it stands. Refuses `contact-missing`, `sale-blocked` (by: what is missing, clashes or needs the
 * owner), `sheet-closed`, and `sheet-changed` when somebody saved meanwhile, or when it is not what was seen (differences).
 */
export async function createQuote(
  ctx: Context,
  input: { readonly sheetId: SheetId; readonly seen?: QuoteSeen },
): Promise<Outcome<MadeQuote>> {
  const found = await findSheet(ctx, ctx.db, "sheet.quote", input.sheetId);
  if (!found.ok) return found;
  const sheet = found.value;
  if (sheet.state !== "open") return refuse({ code: "sheet-closed", state: sheet.state });
  const contact = checkContact(sheet.content.contact);
  if (!contact.ok) return contact;
  // Held to the end: a book of corrections approved meanwhile must not name this quote's release.
  const catalog = currentCatalog();
  const engine = engineOn(ctx.now, catalog);
  const assessment = assessSheet(await inputOf(ctx.db, sheet), engine);
  const stops = stoppedBy(assessment, sheet.content.flagAcks);
  const { spec, price } = assessment;
  if (stops.length > 0 || spec === null || price === null) return refuse({ code: "sale-blocked", by: stops });
  const dateRange = await rangeOf(ctx, spec);
  const { p50, p90 } = dateRange;
  const shown = { spec, totalCents: price.totalCents, dates: { p50, p90 } };
  const differences = input.seen === undefined ? [] : differencesFrom(input.seen, shown);
  if (differences.length > 0) return refuse({ code: "sheet-changed", version: sheet.version, differences });
  const within = await spend(ctx, "quote");
  if (!within.ok) return within;
  return transaction(ctx.db, async (tx) => {
    const locked = await lockOpenSheet(tx, sheet.id, ctx.now);
    if (locked === null) return refuse(await whyClosed(tx, sheet.id));
    if (locked.version !== sheet.version + 1) return refuse({ code: "sheet-changed", version: locked.version });
    // A club's quotes are all its customer's, whatever a sheet says of how to reach a skier.
    const club = locked.clubId === null ? null : await clubById(tx, locked.clubId);
    const by = club !== null || isGivenByDesk(sheet) ? "desk" : "skier";
    const buyer = club === null ? contact.value : buyerFrom(club.customer);
    const customer = club?.customer ?? (await knownCustomer(ctx, tx, { ...contact.value, by }));
    await moveState(tx, { kind: "sheet", from: locked.state, to: "quoted" }, () =>
      moveSheet(tx, sheet.id, locked.state, "quoted", { customerId: customer.id, callBackAt: null, ...noLease }),
    );
    await revokeLinks(tx, { kind: "answers", id: sheet.id }, ctx.now);
    const number = await nextNumber(tx, "quote");
    const whose = { customerId: customer.id, buyer, contactBy: by } as const;
    const frozen = { ...frozenParts(sheet, assessment, dateRange, { ctx, catalog, engine }), ...whose };
    return accept(await insertAndTell(ctx, tx, catalog, { ...frozen, number, revision: 1, replacesId: null }));
  });
}

/** Stores a quote with its event, its link and its message, and the catalogue it was worked out with. */
export async function insertAndTell(
  ctx: Context,
  tx: Tx,
  catalog: Catalog,
  quote: Omit<NewQuote, "id" | "releaseHash">,
): Promise<MadeQuote> {
  const id = idOf("quote", ctx.newId());
  const releaseHash = await keepRelease(tx, catalog, ctx.now);
  await insertQuote(tx, { ...quote, id, releaseHash });
  const subject = { kind: "quote", id } as const;
  const number = quoteNumber(quote);
  await recordEvents(tx, [
    eventOf(ctx, "quote-made", subject, { number, totalCents: quote.totalCents, priceBook: quote.priceBook }),
    eventOf(ctx, "quote-made", { kind: "sheet", id: quote.sheetId }, { quoteId: id, number }),
  ]);
  const token = await issueLink(tx, subject, { id: ctx.newId(), now: ctx.now });
  const record = await quoteById(tx, id);
  if (record === null) throw new Error(`quote ${id} was stored and is not there`);
  // A club is told of all its quotes at once, by the desk.
  if (record.customer.email !== null && record.clubId === null) {
    await queueMessages(tx, [messageOf(ctx, "quote", record.customer.email, subject, { number })]);
  }
  return { quote: await quoteView(tx, record, ctx.now), token };
}

function frozenParts(
  sheet: SheetRecord,
  assessment: Assessment,
  dateRange: DateRange,
  made: { readonly ctx: Context; readonly catalog: Catalog; readonly engine: EngineCatalog },
): Omit<NewQuote, "id" | "releaseHash" | "number" | "revision" | "replacesId" | "customerId" | "buyer" | "contactBy"> {
  const { spec, price } = assessment;
  if (spec === null || price === null) throw new RangeError("frozenParts: the assessment has no spec or price");
  const { ctx, catalog, engine } = made;
  const { typed, ...answers } = sheetAnswers(sheet);
  return {
    sheetId: sheet.id,
    clubId: sheet.clubId,
    skierName: sheet.skierName,
    answers,
    typed: typed ?? {},
    choices: sheet.content.choices,
    spec,
    specHash: sha256Of(spec),
    price,
    priceBook: price.priceBook,
    totalCents: price.totalCents,
    fit: frozenFit(assessment, engine),
    flagAcks: sheet.content.flagAcks,
    dateRange,
    engineVersion,
    validUntil: validUntil(ctx.now, engine.priceBook.quoteValidDays, catalog.shop.timeZone),
    createdAt: ctx.now,
    createdByName: nameOf(ctx.actor),
  };
}

function sheetAnswers(sheet: SheetRecord) {
  return { ...sheet.content.answers, typed: sheet.content.typed };
}

/** Nothing of the contact was typed by a guest: on a sheet of the desk the skier may have changed it by the link. */
function isGivenByDesk({ fields }: SheetRecord): boolean {
  const given = Object.entries(fields).filter(([path, { value }]) => path.startsWith("contact.") && value !== null);
  return given.every(([, { by }]) => by !== guestName);
}

/** The customer's row, with an event where the desk's word has changed it. */
async function knownCustomer(ctx: Context, tx: Tx, contact: CustomerContact) {
  const { customer, before } = await customerOf(tx, ctx.newId(), contact, ctx.now);
  if (before !== null) {
    const subject = { kind: "customer", id: customer.id } as const;
    await recordEvents(tx, [eventOf(ctx, "customer-changed", subject, { before })]);
  }
  return customer;
}

/** A name and a way to reach them: without it a quote reaches nobody. */
function checkContact(contact: SheetContact) {
  const missing = [
    ...(contact.name ? [] : ["contact.name"]),
    ...(contact.phone || contact.email ? [] : ["contact.phone"]),
  ];
  if (contact.name === undefined || missing.length > 0) {
    return refuse({ code: "contact-missing", path: missing[0] ?? "contact.name", missing });
  }
  const phone = contact.phone === undefined ? null : normalisePhone(contact.phone, "contact.phone");
  if (phone !== null && !phone.ok) return phone;
  return accept({
    name: contact.name,
    email: contact.email ?? null,
    phone: contact.phone ?? null,
    phoneNormalised: phone?.value ?? null,
    phoneForms: contact.phone === undefined ? [] : storedForms(contact.phone),
    address: contact.address ?? null,
  });
}
