/**
 * The shop's papers. A paper is pure: facts in, bytes out; nothing here reads a database, a clock or a file of the shop's.
 *
 * Two steps, so that the pages and the command line print the same paper:
 *   facts (engine types, filled by a service or by the command line) → compose…() → …Data (plain, printable) → bytes.
 *
 * Units as everywhere: mm, N, MPa, g or kg, °C, minutes, integer cents. Days are `YYYY-MM-DD` in the shop's zone; clock
 * readings are the shop's own `YYYY-MM-DDTHH:mm`. Nothing here holds a binding's release value, a hole or a screw.
 */
export { composeBuildSheet } from "#papers/build-sheet/compose";
export type * from "#papers/build-sheet/facts";
export { type ClubQuoteData, composeClubQuote } from "#papers/club/compose";
export type * from "#papers/club/facts";
export { composeOrderConfirmation, type OrderConfirmationData } from "#papers/confirmation/compose";
export type * from "#papers/confirmation/facts";
export { composeKitList } from "#papers/kit-list/compose";
export type { KitListFacts } from "#papers/kit-list/facts";
export { composeLabels, type LabelsData } from "#papers/labels/compose";
export type { LabelFacts } from "#papers/labels/facts";
export { composeDrawing } from "#papers/parts/compose-drawing";
export type * from "#papers/parts/facts";
export { readableSpec } from "#papers/parts/spec-rows";
export { composeProof, type ProofData } from "#papers/proof/compose";
export type * from "#papers/proof/facts";
export { composeQuote, type QuoteData } from "#papers/quote/compose";
export type * from "#papers/quote/facts";
export type * from "./kinds";
export { renderDocument } from "./render";
