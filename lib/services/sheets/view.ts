/** A sheet's row as pages see it, and the engine's input in it. */
import type { Actor } from "#auth";
import { type ArtworkRecord, artworksOfSheet } from "#data/artwork";
import type { Tx } from "#data/client";
import { quotesOfSheet } from "#data/quotes";
import type { FieldEntry, SheetFields, SheetRecord } from "#data/sheets";
import type { PartialAnswers, SheetChoices, SheetInput } from "#engine/assessment";
import type { TypedMeasures } from "#engine/fit";
import type { ArtworkId, ClubId, CustomerId, QuoteId, SheetId } from "#engine/units";
import { answerPaths } from "#schemas/sheet-fields";
import { quoteNumber } from "#shop/names/numbers";
import type { RightsStatement } from "#shop/order/views";
import type {
  ArtworkView,
  DraftRow,
  FlagAck,
  LeaseView,
  SheetChannel,
  SheetContact,
  SheetState,
  SheetView,
} from "./views";

/** Values under one prefix, cleared ones left out. */
function group(fields: SheetFields, prefix: string): Record<string, unknown> {
  const start = `${prefix}.`;
  return Object.fromEntries(
    Object.entries(fields)
      .filter(([path, entry]) => path.startsWith(start) && entry.value !== null)
      .map(([path, entry]) => [path.slice(start.length), entry.value]),
  );
}

export function answersOf(fields: SheetFields): PartialAnswers {
  return group(fields, "answers") as PartialAnswers;
}

export function choicesOf(fields: SheetFields): SheetChoices {
  return group(fields, "choices") as SheetChoices;
}

export function typedOf(fields: SheetFields): TypedMeasures {
  return group(fields, "typed") as TypedMeasures;
}

export function contactOf(fields: SheetFields): SheetContact {
  return group(fields, "contact") as SheetContact;
}

export function sheetInputOf(fields: SheetFields): SheetInput {
  return { answers: { ...answersOf(fields), typed: typedOf(fields) }, choices: choicesOf(fields) };
}

export function flagAcksOf(fields: SheetFields): readonly FlagAck[] {
  return Object.entries(fields)
    .filter(([path, entry]) => path.startsWith("acks.") && entry.value !== null)
    .map(([path, entry]) => {
      const { reason, byOwner } = entry.value as { readonly reason: string; readonly byOwner: boolean };
      return { code: path.slice("acks.".length), reason, byOwner, by: entry.by, at: entry.at };
    });
}

export async function sheetView(client: Tx, record: SheetRecord, actor: Actor, now: Date): Promise<SheetView> {
  // One after the other: inside a transaction there is one connection.
  const artworks = await artworksOfSheet(client, record.id);
  const quotes = await quotesOfSheet(client, record.id);
  const { fields } = record;
  return {
    sheetId: record.id as SheetId,
    state: record.state as SheetState,
    channel: record.channel as SheetChannel,
    version: record.version,
    answers: answersOf(fields),
    typed: typedOf(fields),
    choices: choicesOf(fields),
    contact: contactOf(fields),
    club: record.clubId === null ? null : { clubId: record.clubId as ClubId, skierName: record.skierName ?? "" },
    asked: group(fields, "asked") as SheetView["asked"],
    notes: (fields.notes?.value as string | null | undefined) ?? null,
    flagAcks: flagAcksOf(fields),
    fields: fields as Readonly<Record<string, FieldEntry>>,
    openedBy: record.openedByName,
    openedAt: record.openedAt.toISOString(),
    updatedAt: record.updatedAt.toISOString(),
    lease: leaseOf(record, actor, now),
    customerId: record.customerId as CustomerId | null,
    callBack: callBackOf(record),
    review:
      record.reviewAskedAt === null
        ? null
        : { askedAt: record.reviewAskedAt.toISOString(), note: record.reviewNote ?? "" },
    turnedDown: record.turnedDownReason,
    quotes: quotes.map((quote) => ({
      quoteId: quote.id as QuoteId,
      number: quoteNumber(quote),
      state: quote.state,
    })),
    artworks: artworks.map(artworkView),
  };
}

export function artworkView(record: ArtworkRecord): ArtworkView {
  return {
    artworkId: record.id as ArtworkId,
    fileName: record.fileName,
    widthPx: record.widthPx,
    heightPx: record.heightPx,
    sha256: record.sha256,
    uploadedAt: record.uploadedAt.toISOString(),
    rights:
      record.rights === null || record.rightsAt === null
        ? null
        : {
            basis: record.rights.basis as RightsStatement["basis"],
            name: record.rights.name,
            at: record.rightsAt.toISOString(),
          },
  };
}

/** Who works on the sheet now; an old lease is none. */
export function leaseOf(record: SheetRecord, actor: Actor, now: Date): LeaseView | null {
  if (record.leaseUntil === null || record.leaseUntil <= now || record.leaseHolderName === null) return null;
  return {
    holder: record.leaseHolderName,
    until: record.leaseUntil.toISOString(),
    isMine: actor.kind === "staff" && actor.staffId === record.leaseHolderId,
  };
}

function callBackOf(record: SheetRecord): SheetView["callBack"] {
  if (record.callBackAt === null) return null;
  return {
    at: record.callBackAt.toISOString(),
    reason: record.callBackReason ?? "",
    phone: record.callBackPhone ?? "",
  };
}

export function draftRow(record: SheetRecord, actor: Actor, now: Date): DraftRow {
  const contact = contactOf(record.fields);
  return {
    sheetId: record.id as SheetId,
    name: contact.name ?? null,
    phone: contact.phone ?? null,
    channel: record.channel as SheetChannel,
    state: record.state as SheetState,
    answered: answerPaths.filter((path) => (record.fields[path]?.value ?? null) !== null).length,
    openedBy: record.openedByName,
    updatedAt: record.updatedAt.toISOString(),
    lease: leaseOf(record, actor, now),
    callBackAt: record.callBackAt?.toISOString() ?? null,
    callBackReason: record.callBackReason,
    reviewAsked: record.reviewAskedAt !== null,
  };
}
