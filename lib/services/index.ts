/**
 * The use cases of the shop: what pages and handlers call, and nothing else. Each is `(ctx, input) => Outcome<View>`;
 * ctx comes from openContext, a view is plain data, a refusal has a code whose words are chosen in app/.
 */
export * from "./artwork/artwork-bytes";
export * from "./artwork/state-rights";
export * from "./artwork/upload-artwork";
export { assess } from "./assessing/assess-sheet";
export * from "./assessing/skier-band";
export * from "./breakdowns/choose";
export * from "./breakdowns/close-incident";
export { previewBreakdown } from "./breakdowns/preview";
export { listIncidents, readIncident } from "./breakdowns/read-incidents";
export * from "./breakdowns/report";
export * from "./catalogue/active-catalog";
export * from "./clubs/accept-club";
export { addClubSkier } from "./clubs/add-skier";
export { clubDocument } from "./clubs/club-document";
export * from "./clubs/open-club";
export { listClubs, readClub } from "./clubs/read-club";
export * from "./context";
export * from "./dates/lead-time";
export * from "./desk/overview";
export * from "./learning/add-book-pair";
export * from "./learning/approve-corrections";
export * from "./learning/decide-reading";
export * from "./learning/pair-bench";
export { readLearning, readPredictedVersusMeasured } from "./learning/read-learning";
export { type BenchInput, recordBenchValues } from "./learning/record-bench";
export * from "./links/links";
export { dropNotice, listNotices, sendNotice } from "./notices/notices";
export * from "./orders/close-order";
export * from "./orders/deposit";
export * from "./orders/edit-pair";
export {
  approveProof,
  askProofChanges,
  confirmRights,
  issueProof,
  lockSpecification,
} from "./orders/gates";
export { orderDocument } from "./orders/order-document";
export * from "./orders/read-order";
export * from "./orders/receipt";
export { waiveRush } from "./orders/waive-rush";
export {
  buildSheetDocument,
  kitListDocument,
  labelsDocument,
} from "./pairs/documents";
export { proofDocument } from "./pairs/proof-document";
export * from "./pairs/read-pair";
export { changePromise } from "./promises/change-promise";
export { renewEstimates } from "./promises/estimates";
export { approveHardDate, previewHardDate } from "./promises/hard-date";
export { readKeptPromises } from "./promises/kept-promises";
export { freezePressSlots, releasePressSlot } from "./promises/press-slots";
export { sweepSlots } from "./promises/slots";
export * from "./queue/operations";
export * from "./queue/queue-board";
export * from "./queue/queue-order";
export * from "./queue/queue-revision";
export * from "./queue/suggest-order";
export * from "./quotes/accept-quote";
export { honourOldPrice, requestChange, withdrawQuote } from "./quotes/change-quote";
export { createQuote } from "./quotes/create-quote";
export * from "./quotes/quote-document";
export * from "./quotes/read-quote";
export * from "./quotes/reprice-quote";
export * from "./rework/rework";
export * from "./sheets/copy-sheet";
export * from "./sheets/find-by-phone";
export * from "./sheets/follow-up";
export * from "./sheets/list-drafts";
export * from "./sheets/open-sheet";
export * from "./sheets/read-sheet";
export { acknowledgeFlag, saveSheet } from "./sheets/save-sheet";
export * from "./sheets/take-over";
export { readStripStock } from "./strips/stock";
export { decideStrips, stripsShort } from "./strips/strips-short";
export type * from "./views";
export { listFloorChanges, withdrawChange } from "./what-if/floor-changes";
export { applyWhatIf, askWhatIf } from "./what-if/what-if";
