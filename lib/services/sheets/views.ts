import type { SheetState } from "#engine/floor";

export type { SheetState } from "#engine/floor";

import type { PartialAnswers, SheetChoices } from "#engine/assessment";
import type { TypedMeasures } from "#engine/fit";
import type { ArtworkId, ClubId, CustomerId, Instant, OrderId, QuoteId, SheetId } from "#engine/units";
import type { FlagAck, SaidMeasures, SheetContact } from "#schemas/stored/index";
import type { RightsStatement } from "#shop/order/views";

export type { FlagAck, SaidMeasures, SheetContact } from "#schemas/stored/index";
export type SheetChannel = "online" | "phone";

/** How one field came to be. Paths: answers.…, typed.…, said.…, choices.…, contact.…, asked.…, notes, acks.CODE */
export interface FieldRecord {
  readonly value: unknown;
  readonly version: number;
  readonly by: string;
  readonly at: Instant;
}

export interface LeaseView {
  readonly holder: string;
  readonly until: Instant;
  readonly isMine: boolean;
}

export interface SheetView {
  readonly sheetId: SheetId;
  readonly state: SheetState;
  readonly channel: SheetChannel;
  /** Send it back with the next save: a field that changed after it is reported, not overwritten. */
  readonly version: number;
  readonly answers: PartialAnswers;
  readonly typed: TypedMeasures;
  readonly said: SaidMeasures;
  readonly choices: SheetChoices;
  readonly contact: SheetContact;
  /** Of a club order: who rides it. */
  readonly club: { readonly clubId: ClubId; readonly skierName: string } | null;
  /** Per question: asked and not answered, or refused. An answered question is simply there. */
  readonly asked: Readonly<Record<string, "not asked" | "refused">>;
  readonly notes: string | null;
  readonly flagAcks: readonly FlagAck[];
  readonly fields: Readonly<Record<string, FieldRecord>>;
  readonly openedBy: string;
  readonly openedAt: Instant;
  readonly updatedAt: Instant;
  readonly lease: LeaseView | null;
  readonly customerId: CustomerId | null;
  readonly callBack: { readonly at: Instant; readonly reason: string; readonly phone: string } | null;
  readonly review: { readonly askedAt: Instant; readonly note: string } | null;
  readonly turnedDown: string | null;
  readonly quotes: readonly { readonly quoteId: QuoteId; readonly number: string; readonly state: string }[];
  readonly artworks: readonly ArtworkView[];
}

export interface OpenedSheet {
  readonly sheet: SheetView;
  /** The skier's private token, told once; null when the sheet was already open. */
  readonly token: string | null;
  /** The same number already had a draft: this is that draft. */
  readonly wasOpen: boolean;
  /** The customer this phone number belongs to, if known. */
  readonly knownAs: string | null;
}

/** Two desks changed the same field: nothing of the other's was overwritten. */
export interface FieldConflict {
  readonly path: string;
  readonly yours: unknown;
  readonly theirs: unknown;
  readonly by: string;
}

export interface SavedSheet {
  readonly sheet: SheetView;
  readonly savedPaths: readonly string[];
  readonly conflicts: readonly FieldConflict[];
}

export interface DraftRow {
  readonly sheetId: SheetId;
  readonly name: string | null;
  readonly phone: string | null;
  readonly channel: SheetChannel;
  readonly state: SheetState;
  /** Answered of asked, so that a desk sees how far the call came. */
  readonly answered: number;
  readonly openedBy: string;
  readonly updatedAt: Instant;
  readonly lease: LeaseView | null;
  readonly callBackAt: Instant | null;
  readonly callBackReason: string | null;
  readonly reviewAsked: boolean;
}

export interface PhoneMatch {
  readonly phone: string;
  readonly customer: { readonly customerId: CustomerId; readonly name: string } | null;
  /** Others who gave this number. */
  readonly sameNumber: readonly { readonly customerId: CustomerId; readonly name: string }[];
  readonly drafts: readonly DraftRow[];
  readonly quotes: readonly { readonly quoteId: QuoteId; readonly number: string; readonly state: string }[];
  readonly orders: readonly { readonly orderId: OrderId; readonly number: string; readonly state: string }[];
}

export interface ArtworkView {
  readonly artworkId: ArtworkId;
  readonly fileName: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly sha256: string;
  readonly uploadedAt: Instant;
  readonly rights: RightsStatement | null;
}
