/**
 * What happens in the shop, by kind, with the particulars each kind is recorded with. What is written must fit; what is read
 * may be older than the schema, and is then kept as it is, as an event of another kind.
 */
import { z } from "zod";
import { clockStartConditions, editConsequences, promiseClasses, specificationParts } from "#engine/floor";
import { idSchema } from "./ids";
import { amount, listOf, orNull, storedDay, storedInstant, storedSide, storedStation, words } from "./stored/common";
import { runsBasis, storedShares } from "./stored/dates";
import { storedFloorBook } from "./stored/floor-book";
import { remedyCodes, storedFault } from "./stored/incident";
import { storedBenchValues, storedCorrections, storedMeasure } from "./stored/learning";
import { storedBuildableSpec } from "./stored/pair-spec";
import { storedRights } from "./stored/sheet";
import { confirmedHows } from "./stored/states";
import { storedAllocation, storedStripOption } from "./stored/strips";

const nothing = z.object({});
const withReason = z.object({ reason: words });
const payment = z.object({ method: words, cents: amount, reference: orNull(words) });
const revision = z.object({ revision: amount, specHash: words });
const answeredProof = z.object({ revision: amount, name: words, note: orNull(words) });
const acceptance = { orderId: idSchema("order"), orderNumber: words, how: words, name: words };
/** By field: as it was. */
const corrected = z.object({ before: z.record(z.string(), z.unknown()), reason: words });
const links = z.object({ revoked: amount });
const orderMove = z.object({ from: words });
const place = orNull(amount);
const pressSlot = z.object({ at: orNull(storedInstant), press: orNull(words) });
const reading = z.object({
  serial: words,
  measure: storedMeasure,
  value: amount,
  choice: z.enum(["leave-out", "keep"]),
  reason: words,
});
const promise = z.object({
  promisedOn: storedDay,
  from: orNull(storedDay),
  class: z.enum(promiseClasses),
  reason: words,
  p50: storedDay.exactOptional(),
  p80: storedDay.exactOptional(),
  p90: storedDay.exactOptional(),
  shares: storedShares.exactOptional(),
  basis: runsBasis.exactOptional(),
});
const operation = { station: storedStation, press: words.exactOptional() };
const letter = z.object({ letterId: words, kind: words });
const notice = z.object({ noticeId: idSchema("notice"), kind: words, reason: orNull(words) });

const days = { from: storedDay, reason: words };
const whatIf = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("hire"), stations: listOf(storedStation), ...days }),
  z.object({ kind: z.literal("second-press"), ...days }),
  z.object({ kind: z.literal("closure"), until: storedDay, ...days }),
  z.object({ kind: z.literal("club-order"), pairs: amount, reason: words }),
  z.object({ kind: z.literal("rework"), factor: amount, reason: words }),
  z.object({ kind: z.literal("drop-mould"), mould: words, until: storedDay, ...days }),
  z.object({ kind: z.literal("supplier-lead"), station: storedStation, weeks: amount, reason: words }),
]);

/** The particulars of each kind. */
export const eventSchemas = {
  "sheet-opened": z.object({
    channel: words,
    copyOf: idSchema("sheet").exactOptional(),
    clubId: idSchema("club").exactOptional(),
  }),
  "sheet-taken-over": z.object({ from: words }),
  "sheet-turned-down": withReason,
  "call-back-set": z.object({ at: storedInstant, reason: words }),
  "review-asked": z.object({ note: words }),
  "flag-acknowledged": z.object({ code: words, reason: words, byOwner: z.boolean() }),
  "sale-allowed": z.object({ codes: listOf(words), reason: words }),
  "artwork-uploaded": z.object({
    artworkId: idSchema("artwork"),
    fileName: words,
    widthPx: amount,
    heightPx: amount,
    sha256: words,
  }),
  "rights-stated": storedRights.extend({ artworkId: idSchema("artwork") }),

  "quote-made": z.object({
    number: words,
    totalCents: amount.exactOptional(),
    priceBook: words.exactOptional(),
    quoteId: idSchema("quote").exactOptional(),
  }),
  "quote-withdrawn": withReason,
  "quote-change-requested": z.object({ note: words }),
  "quote-repriced": z.object({ by: idSchema("quote") }),
  "quote-accepted": z.object(acceptance),
  "old-price-honoured": z.object({ reason: words, until: storedInstant }),
  "acceptance-refused": z.object({ code: words, orderId: orNull(words) }),

  "club-opened": z.object({ number: words, name: words }),
  "club-skier-added": z.object({ skierName: words, sheetId: idSchema("sheet") }),
  "club-accepted": z.object({ orderNumber: words, quotes: listOf(words), of: amount }),

  "customer-changed": z.object({ before: z.record(z.string(), z.unknown()) }),
  "customer-corrected": corrected,
  "customer-merged": z.object({
    into: idSchema("customer"),
    from: idSchema("customer"),
    name: words,
    fromName: words,
    reason: words,
    orders: listOf(words),
    quotes: listOf(words),
  }),

  "link-reissued": links,
  "link-revoked": links,
  "link-renewed": z.object({ links: amount, until: storedInstant }),

  "order-made": z.object({ ...acceptance, quote: words, p50: storedDay, p90: storedDay }),
  "order-confirmed": z.object({
    how: z.enum(confirmedHows),
    reason: words.exactOptional(),
    p50: storedDay.exactOptional(),
    p90: storedDay.exactOptional(),
  }),
  "contact-code-sent": z.object({ until: storedInstant }),
  "contact-code-missed": z.object({ misses: amount }),
  "buyer-corrected": corrected,
  "order-repriced": z.object({ pairId: idSchema("pair"), beforeCents: amount, afterCents: amount }),
  "order-waiting": orderMove,
  "order-released": orderMove,
  "order-building": orderMove,
  "order-ready": orderMove,
  "order-shipped": z.object({
    tracking: orNull(words),
    openCents: amount.exactOptional(),
    unpaidReason: words.exactOptional(),
  }),
  "order-delivered": nothing,
  "order-cancelled": z.object({ reason: words, stage: orNull(words), feeCents: amount, refundCents: amount }),
  "refund-paid": payment,
  "payment-message-refused": z.object({ code: words, messageId: orNull(words) }),
  "deposit-announced": payment,
  "deposit-received": payment,
  "rush-received": payment,
  "balance-received": payment,
  "rush-waived": z.object({ cents: amount, reason: words }),
  "clock-started": z.object({
    last: z.enum(clockStartConditions),
    at: storedInstant,
    told: z.object({
      p50: storedDay.exactOptional(),
      p80: storedDay.exactOptional(),
      p90: storedDay.exactOptional(),
      shares: storedShares.exactOptional(),
    }),
  }),
  "estimate-renewed": z.object({
    from: storedDay,
    p50: storedDay,
    p90: storedDay,
    shares: storedShares.exactOptional(),
    basis: runsBasis,
  }),
  "estimate-changed": z.object({ from: orNull(storedDay), p50: storedDay, p90: storedDay }),
  "promise-fixed": promise,
  "promise-changed": promise,
  "hard-date-approved": z.object({
    on: storedDay,
    planB: words,
    feeCents: amount,
    moved: listOf(words),
    override: words,
  }),
  "slot-lost": withReason,
  "slot-given": z.object({ why: words }),
  "notice-drafted": z.object({ noticeId: idSchema("notice"), kind: words }),
  "notice-sent": notice,
  "notice-dropped": notice,
  "letter-sent": letter,
  "letter-given-up": letter,
  "letter-sent-again": letter,

  "pair-made": z.object({ serial: words, strips: orNull(storedAllocation) }),
  "pair-placed": z.object({ strips: storedAllocation }),
  "pair-released": z.object({ promisedOn: storedDay, p50: storedDay, p90: storedDay }),
  "pair-edited": z.object({
    revision: amount,
    reason: words,
    parts: listOf(z.enum(specificationParts)),
    consequences: listOf(z.enum(editConsequences)),
    strips: orNull(storedAllocation).exactOptional(),
  }),
  "pair-cancelled": z.object({ stripsReturned: amount }),
  "pair-held": z.object({
    reason: z.enum(["material", "decision"]),
    station: storedStation,
    expectedOn: orNull(storedDay),
    incidentId: idSchema("incident"),
  }),
  "specification-locked": revision,
  "rights-confirmed": storedRights,
  "proof-issued": revision,
  "proof-approved": answeredProof,
  "proof-changes-asked": answeredProof,
  "press-slot-fixed": pressSlot,
  "press-slot-given-back": pressSlot,
  "press-slot-released": pressSlot.extend({ reason: words }),
  "place-given": z.object({ from: place, to: place, reason: words, decisionId: words }),
  "place-undone": z.object({ from: place, to: place, decisionId: words }),
  "build-sheet-printed": z.object({ print: amount, revision: amount }),
  "operation-started": z.object(operation),
  "operation-finished": z.object(operation),
  "operation-undone": z.object({ ...operation, reason: words }),
  "strips-decided": z.object({ option: storedStripOption, reason: words, expectedOn: orNull(storedDay) }),
  "strips-given-away": z.object({ to: words, reason: words, strips: storedAllocation }),
  "ski-scrapped": z.object({ serial: words, fault: storedFault, note: words, strips: listOf(words) }),
  "rework-started": z.object({
    serial: words,
    fault: storedFault,
    from: storedStation,
    stations: listOf(storedStation),
    strips: z.unknown(),
    letters: orNull(z.object({ text: words, sheetColour: words })),
    effect: z.object({
      movedWorkingDays: orNull(amount),
      standing: orNull(words),
      ready: z.unknown(),
      crossing: listOf(words),
      basis: runsBasis,
    }),
  }),
  "ski-measured": z.object({ serial: words, side: storedSide, values: storedBenchValues }),
  "reading-corrected": z.object({
    serial: words,
    side: storedSide,
    values: storedBenchValues,
    old: storedBenchValues,
    oldBy: words,
  }),

  "book-pair-added": z.object({
    serial: words,
    spec: storedBuildableSpec,
    left: storedBenchValues,
    right: storedBenchValues,
  }),
  "reading-kept": reading,
  "reading-left-out": reading,
  "corrections-approved": z.object({ version: words, pairs: amount, corrections: storedCorrections }),
  "floor-book-approved": z.object({ version: words, reason: words, pairs: amount, book: storedFloorBook }),

  "budgets-released": z.object({ doors: listOf(words), reason: words }),
  "unnamed-proxy-seen": nothing,

  "person-exported": z.object({ reason: words.exactOptional() }),
  "person-erased": z.object({ reason: words, orders: listOf(words), quotes: amount, sheets: amount, pictures: amount }),
  "sheet-erased": withReason,
  "retention-set": z.object({ reason: words, rules: z.record(z.string(), orNull(amount)) }),
  "retention-applied": z.object({ sheets: amount, persons: amount, orders: amount, letters: amount }),

  "cautions-read": z.object({ season: amount, textsHash: words }),

  "first-owner-made": nothing,
  "staff-taken-on": z.object({ role: words }),
  "staff-left": z.object({ sessions: amount }),
  "password-set": z.object({ sessions: amount }),
  "floor-code-set": nothing,
  "floor-code-taken": z.object({ sessions: amount }),
  "signed-in": z.object({ device: words, how: z.enum(["full", "floor"]), isNewDevice: z.boolean() }),
  "signed-out": nothing,
  "sign-ins-ended": z.object({ sessions: amount, why: z.enum(["asked", "replaced"]) }),
  "sign-in-guessed": z.object({ tries: amount, minutes: amount }),
  "device-enrolled": z.object({ name: words }),
  "device-released": z.object({ name: words, sessions: amount }),
  "wall-opened": z.object({ name: words, until: storedInstant }),
  "wall-ended": z.object({ name: words }),

  "floor-changed": whatIf,
  "floor-change-withdrawn": withReason,
  "incident-reported": z.object({ number: amount, kind: words, note: words, crossing: listOf(words) }),
  "incident-decided": z.object({ option: z.enum(remedyCodes), reason: words, costCents: amount, notices: amount }),
  "incident-closed": z.object({ changes: amount, holds: amount }),
} as const satisfies Readonly<Record<string, z.ZodType>>;

export type EventKind = keyof typeof eventSchemas;
export type EventData<Kind extends EventKind> = z.output<(typeof eventSchemas)[Kind]>;

/** What is recorded: a kind with its own particulars. */
export type EventFacts = {
  readonly [Kind in EventKind]: { readonly kind: Kind; readonly data: EventData<Kind> };
}[EventKind];

/** Written before its kind was as it is now, or of a kind that is not written any more: kept as it stands. */
export interface OtherEvent {
  readonly kind: "other";
  readonly was: string;
  readonly data: unknown;
}

function isEventKind(kind: string): kind is EventKind {
  return Object.hasOwn(eventSchemas, kind);
}

/** The particulars of what was recorded; never refuses. */
export function readEvent(kind: string, data: unknown): EventFacts | OtherEvent {
  if (!isEventKind(kind)) return { kind: "other", was: kind, data };
  const read = eventSchemas[kind].safeParse(data);
  // Kind and schema are of one pair, which the compiler cannot follow through a lookup by name.
  return read.success ? ({ kind, data: read.data } as EventFacts) : { kind: "other", was: kind, data };
}
