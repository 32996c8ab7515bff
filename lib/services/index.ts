/**
 * The use cases of the shop: what pages and handlers call, and nothing else. Each is `(ctx, input) => Outcome<View>`;
 * ctx comes from openContext, a view is plain data, a refusal has a code whose words are chosen in app/.
 */

export * from "#services/clubs/accept-club";
export { addClubSkier } from "#services/clubs/add-skier";
export * from "#services/clubs/open-club";
export { listClubs, readClub } from "#services/clubs/read-club";
export { correctBuyer } from "#services/customers/correct-buyer";
export { correctCustomer } from "#services/customers/correct-customer";
export { erasePerson } from "#services/customers/erase-person";
export { mergeCustomers } from "#services/customers/merge-customers";
export { personFile } from "#services/customers/person-file";
export { listCustomers, readCustomerPage } from "#services/customers/read-customers";
export { applyRetention, readRetention, setRetention } from "#services/customers/retention";
export * from "#services/desk/overview";
export { type BudgetRow, listBudgets, releaseBudgets, spend, sweepDoors } from "#services/doors/budgets";
export { noteUnnamedProxy, unnamedProxySeen } from "#services/doors/unnamed-proxy";
export * from "#services/floor/operations";
export * from "#services/floor/read-pair";
export * from "#services/floor/rework";
export * from "#services/graphics/artwork-bytes";
export * from "#services/graphics/public-pictures";
export * from "#services/graphics/state-rights";
export * from "#services/graphics/upload-artwork";
export * from "#services/learning/add-book-pair";
export * from "#services/learning/approve-corrections";
export * from "#services/learning/approve-floor-book";
export * from "#services/learning/decide-reading";
export * from "#services/learning/pair-bench";
export * from "#services/learning/read-floor-learning";
export { readLearning, readPredictedVersusMeasured } from "#services/learning/read-learning";
export { type BenchInput, recordBenchValues } from "#services/learning/record-bench";
export { enqueueLetter, isMailAddress, type NewLetter } from "#services/letters/enqueue-letter";
export { listWaitingLetters, postLetters, sendLetterAgain } from "#services/letters/letters";
export { dropNotice, listNotices, sendNotice } from "#services/letters/notices";
export { offeredMethods } from "#services/money/demo-service";
export * from "#services/money/deposit";
export * from "#services/money/receipt";
export { receivePaymentMessage } from "#services/money/receive-message";
export { recordRefund } from "#services/money/refund";
export { waiveRush } from "#services/money/waive-rush";
export * from "#services/orders/close-order";
export { confirmByCode, confirmOrder, sendCodeAgain } from "#services/orders/confirm";
export * from "#services/orders/edit-pair";
export {
  approveProof,
  askProofChanges,
  confirmRights,
  issueProof,
  lockSpecification,
} from "#services/orders/gates";
export * from "#services/orders/read-order";
export { listUnconfirmed, releaseUnconfirmed, type UnconfirmedOrders } from "#services/orders/release-unconfirmed";
export { clubDocument } from "#services/papers/club-document";
export { orderDocument } from "#services/papers/order-document";
export {
  buildSheetDocument,
  kitListDocument,
  labelsDocument,
} from "#services/papers/pair-documents";
export { proofDocument } from "#services/papers/proof-document";
export * from "#services/papers/quote-document";
export { listCautionAnswers, readMyCautions, sayCautionsRead } from "#services/people/cautions";
export { enrolDevice, releaseDevice } from "#services/people/devices";
export { readLinkStanding, reissueLink, renewLink, revokeLink } from "#services/people/links";
export { readGuessing, readPeople } from "#services/people/read-people";
export { endSignIn, endSignInsOf, readMyAccount } from "#services/people/sign-ins";
export {
  becomeFirstOwner,
  changeMyPassword,
  giveFloorCode,
  givePassword,
  letGo,
  takeOn,
} from "#services/people/staff";
export { endWall, openWall } from "#services/people/walls";
export * from "#services/planning/breakdowns/choose";
export * from "#services/planning/breakdowns/close-incident";
export { previewBreakdown } from "#services/planning/breakdowns/preview";
export { listIncidents, readIncident } from "#services/planning/breakdowns/read-incidents";
export * from "#services/planning/breakdowns/report";
export * from "#services/planning/order/queue-board";
export * from "#services/planning/order/queue-order";
export * from "#services/planning/order/queue-revision";
export * from "#services/planning/order/suggest-order";
export { changePromise } from "#services/planning/promises/change-promise";
export { approveHardDate, previewHardDate } from "#services/planning/promises/hard-date";
export { readKeptPromises } from "#services/planning/promises/kept-promises";
export * from "#services/planning/promises/lead-time";
export { freezePressSlots, releasePressSlot } from "#services/planning/promises/press-slots";
export { readPromiseRisk } from "#services/planning/promises/promise-risk";
export { decideStrips, stripsShort } from "#services/planning/strips/strips-short";
export { listFloorChanges, withdrawChange } from "#services/planning/what-if/floor-changes";
export { applyWhatIf, askWhatIf } from "#services/planning/what-if/what-if";
export { renewEstimates } from "#services/promises/estimates";
export { sweepSlots } from "#services/promises/slots";
export * from "#services/quotes/accept-quote";
export { honourOldPrice, requestChange, withdrawQuote } from "#services/quotes/change-quote";
export { createQuote } from "#services/quotes/create-quote";
export * from "#services/quotes/read-quote";
export * from "#services/quotes/reprice-quote";
export * from "#services/settings/active-catalog";
export * from "#services/settings/shop-settings";
export { allowSale } from "#services/sheets/allow-sale";
export { assess } from "#services/sheets/assess-sheet";
export * from "#services/sheets/copy-sheet";
export * from "#services/sheets/find-by-phone";
export * from "#services/sheets/follow-up";
export * from "#services/sheets/list-drafts";
export * from "#services/sheets/open-sheet";
export * from "#services/sheets/read-sheet";
export { acknowledgeFlag, saveSheet } from "#services/sheets/save-sheet";
export * from "#services/sheets/skier-band";
export * from "#services/sheets/take-over";
export { readStripStock } from "#services/stock/stock";
export { busyFor } from "#services/turnstile";
export * from "./context";
export type * from "./views";
