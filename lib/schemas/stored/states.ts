export const sheetChannels = ["online", "phone"] as const;
export const paymentKinds = ["deposit", "rush", "balance", "refund"] as const;
export const paymentMethods = ["pay-later", "bank-transfer", "counter", "demo-card", "payment-service"] as const;
/** How a quote was accepted. */
export const acceptedHows = ["online", "phone", "counter"] as const;
/** Who gave the contact of a quote. */
export const contactGivers = ["desk", "skier"] as const;
/** By what it was known that somebody stands behind an order; "earlier": it was accepted when nobody asked. */
export const confirmedHows = ["desk", "staff", "money", "letter", "earlier"] as const;
export const slotLosses = ["hold-lapsed", "proof-late"] as const;
export const holdReasons = ["material", "decision"] as const;
export const stripPlaces = ["left", "centre", "right"] as const;
export const changeSources = ["incident", "option", "what-if"] as const;
export const noticeKinds = ["delay", "colour-offer", "slot-slid", "hold-lapsed", "date-changed"] as const;
export const benchOrigins = ["bench", "book"] as const;
export const readingChoices = ["leave-out", "keep"] as const;
