/** What a column of states, kinds or ways may hold, for what the engine declares no moves of. */
export const sheetStates = ["open", "quoted", "turned-down"] as const;
export const sheetChannels = ["online", "phone"] as const;
/** As stored: that a quote has expired or was replaced follows from its days and its next revision. */
export const storedQuoteStates = ["open", "accepted", "withdrawn"] as const;
export const paymentKinds = ["deposit", "rush", "balance", "refund"] as const;
export const paymentStates = ["requested", "received", "waived"] as const;
export const paymentMethods = ["pay-later", "bank-transfer", "counter", "demo-card"] as const;
export const slotLosses = ["hold-lapsed", "proof-late"] as const;
/** Of one issue of a proof; what the pair's proof is as a whole is the engine's. */
export const issuedProofStates = ["issued", "changes-asked", "approved", "void"] as const;
export const holdReasons = ["material", "decision"] as const;
export const stripPlaces = ["left", "centre", "right"] as const;
export const incidentStates = ["open", "decided", "closed"] as const;
export const changeSources = ["incident", "option", "what-if"] as const;
export const noticeKinds = ["delay", "colour-offer", "slot-slid", "hold-lapsed", "date-changed"] as const;
export const noticeStates = ["draft", "sent", "dropped"] as const;
export const benchOrigins = ["bench", "book"] as const;
export const readingChoices = ["leave-out", "keep"] as const;
