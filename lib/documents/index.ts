/**
 * The shop's papers. Compose plain data from facts, then render it; nothing here reads a database, a clock or a file of
 * the shop's. Facts come from lib/services (pages) or from a complete spec (command line).
 */
export { composeBuildSheet } from "./compose/build-sheet";
export { composeDrawing } from "./compose/drawing";
export { composeKitList } from "./compose/kit-list";
export { composeLabels } from "./compose/labels";
export { layoutText, readableSpec } from "./compose/spec-rows";
export { renderDocument } from "./render";
export * from "./types";
