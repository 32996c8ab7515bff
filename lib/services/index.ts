/**
 * The use cases of the shop: what pages and handlers call, and nothing else. Each is `(ctx, input) => Outcome<View>`;
 * ctx comes from openContext, a view is plain data, a refusal has a code whose words are chosen in app/.
 */
export * from "#services/artwork/artwork-bytes";
export * from "#services/artwork/state-rights";
export * from "#services/artwork/upload-artwork";
export { assess } from "#services/assessing/assess-sheet";
export * from "#services/assessing/skier-band";
export * from "#services/breakdowns/choose";
export * from "#services/breakdowns/close-incident";
export { previewBreakdown } from "#services/breakdowns/preview";
export { listIncidents, readIncident } from "#services/breakdowns/read-incidents";
export * from "#services/breakdowns/report";
export * from "#services/catalogue/active-catalog";
export * from "#services/clubs/accept-club";
export { addClubSkier } from "#services/clubs/add-skier";
export { clubDocument } from "#services/clubs/club-document";
export * from "#services/clubs/open-club";
export { listClubs, readClub } from "#services/clubs/read-club";
export * from "#services/dates/lead-time";
export * from "#services/desk/overview";
export * from "#services/learning/add-book-pair";
export * from "#services/learning/approve-corrections";
export * from "#services/learning/decide-reading";
export * from "#services/learning/pair-bench";
export { readLearning, readPredictedVersusMeasured } from "#services/learning/read-learning";
export { type BenchInput, recordBenchValues } from "#services/learning/record-bench";
export * from "#services/links/links";
export { dropNotice, listNotices, sendNotice } from "#services/notices/notices";
export * from "#services/orders/close-order";
export * from "#services/orders/deposit";
export * from "#services/orders/edit-pair";
export {
  approveProof,
  askProofChanges,
  confirmRights,
  issueProof,
  lockSpecification,
} from "#services/orders/gates";
export { orderDocument } from "#services/orders/order-document";
export * from "#services/orders/read-order";
export * from "#services/orders/receipt";
export { waiveRush } from "#services/orders/waive-rush";
export {
  buildSheetDocument,
  kitListDocument,
  labelsDocument,
} from "#services/pairs/documents";
export { proofDocument } from "#services/pairs/proof-document";
export * from "#services/pairs/read-pair";
export { changePromise } from "#services/promises/change-promise";
export { renewEstimates } from "#services/promises/estimates";
export { approveHardDate, previewHardDate } from "#services/promises/hard-date";
export { readKeptPromises } from "#services/promises/kept-promises";
export { freezePressSlots, releasePressSlot } from "#services/promises/press-slots";
export { sweepSlots } from "#services/promises/slots";
export * from "#services/queue/operations";
export * from "#services/queue/queue-board";
export * from "#services/queue/queue-order";
export * from "#services/queue/queue-revision";
export * from "#services/queue/suggest-order";
export * from "#services/quotes/accept-quote";
export { honourOldPrice, requestChange, withdrawQuote } from "#services/quotes/change-quote";
export { createQuote } from "#services/quotes/create-quote";
export * from "#services/quotes/quote-document";
export * from "#services/quotes/read-quote";
export * from "#services/quotes/reprice-quote";
export * from "#services/rework/rework";
export * from "#services/sheets/copy-sheet";
export * from "#services/sheets/find-by-phone";
export * from "#services/sheets/follow-up";
export * from "#services/sheets/list-drafts";
export * from "#services/sheets/open-sheet";
export * from "#services/sheets/read-sheet";
export { acknowledgeFlag, saveSheet } from "#services/sheets/save-sheet";
export * from "#services/sheets/take-over";
export { readStripStock } from "#services/strips/stock";
export { decideStrips, stripsShort } from "#services/strips/strips-short";
export type * from "#services/views/index";
export { listFloorChanges, withdrawChange } from "#services/what-if/floor-changes";
export { applyWhatIf, askWhatIf } from "#services/what-if/what-if";
export * from "./context";
