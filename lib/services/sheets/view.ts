/** A sheet's row as pages see it, and the engine's input in it. */
import type { Actor } from "#auth";
import { type ArtworkRecord, artworksOfSheet } from "#data/artwork";
import type { Tx } from "#data/client";
import { quotesOfSheet } from "#data/quotes";
import type { SheetRecord } from "#data/sheets";
import type { SheetInput } from "#engine/assessment";
import { answerPaths } from "#schemas/sheet-fields";
import type { SheetContent } from "#schemas/stored/index";
import { quoteNumber } from "#shop/names/numbers";
import type { ArtworkView, DraftRow, LeaseView, SheetView } from "./views";

/** The engine's input in a sheet. */
export function sheetInputOf({ answers, typed, choices }: SheetContent): SheetInput {
  return { answers: { ...answers, typed }, choices };
}

export async function sheetView(client: Tx, record: SheetRecord, actor: Actor, now: Date): Promise<SheetView> {
  // One after the other: inside a transaction there is one connection.
  const artworks = await artworksOfSheet(client, record.id);
  const quotes = await quotesOfSheet(client, record.id);
  const { content } = record;
  return {
    sheetId: record.id,
    state: record.state,
    channel: record.channel,
    version: record.version,
    answers: content.answers,
    typed: content.typed,
    said: content.said,
    choices: content.choices,
    contact: content.contact,
    club: record.clubId === null ? null : { clubId: record.clubId, skierName: record.skierName ?? "" },
    asked: content.asked,
    notes: content.notes,
    flagAcks: content.flagAcks,
    fields: record.fields,
    openedBy: record.openedByName,
    openedAt: record.openedAt.toISOString(),
    updatedAt: record.updatedAt.toISOString(),
    lease: leaseOf(record, actor, now),
    customerId: record.customerId,
    callBack: callBackOf(record),
    review:
      record.reviewAskedAt === null
        ? null
        : { askedAt: record.reviewAskedAt.toISOString(), note: record.reviewNote ?? "" },
    turnedDown: record.turnedDownReason,
    quotes: quotes.map((quote) => ({
      quoteId: quote.id,
      number: quoteNumber(quote),
      state: quote.state,
    })),
    artworks: artworks.map(artworkView),
  };
}

export function artworkView(record: ArtworkRecord): ArtworkView {
  return {
    artworkId: record.id,
    fileName: record.fileName,
    widthPx: record.widthPx,
    heightPx: record.heightPx,
    sha256: record.sha256,
    uploadedAt: record.uploadedAt.toISOString(),
    rights:
      record.rights === null || record.rightsAt === null
        ? null
        : {
            basis: record.rights.basis,
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
  const contact = record.content.contact;
  return {
    sheetId: record.id,
    name: contact.name ?? null,
    phone: contact.phone ?? null,
    channel: record.channel,
    state: record.state,
    answered: answerPaths.filter((path) => (record.fields[path]?.value ?? null) !== null).length,
    openedBy: record.openedByName,
    updatedAt: record.updatedAt.toISOString(),
    lease: leaseOf(record, actor, now),
    callBackAt: record.callBackAt?.toISOString() ?? null,
    callBackReason: record.callBackReason,
    reviewAsked: record.reviewAskedAt !== null,
  };
}
