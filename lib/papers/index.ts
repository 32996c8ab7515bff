/**
 * The shop's papers. A paper is pure: facts in, bytes out; nothing here reads a database, a clock or a file of the shop's.
 *
 * Two steps, so that the pages and the command line print the same paper:
 *   facts (engine types, filled by a service or by the command line) → compose…() → …Data (plain, printable) → bytes.
 *
 * Units as everywhere: mm, N, MPa, g or kg, °C, minutes, integer cents. Days are `YYYY-MM-DD` in the shop's zone; clock
 * readings are the shop's own `YYYY-MM-DDTHH:mm`. Nothing here holds a binding's release value, a hole or a screw.
 */
export { composeBuildSheet } from "./build-sheet/compose";
export type * from "./build-sheet/facts";
export type * from "./club/facts";
export type * from "./confirmation/facts";
export type * from "./kinds";
export { composeKitList } from "./kit-list/compose";
export type * from "./kit-list/facts";
export { composeLabels } from "./labels/compose";
export type * from "./labels/facts";
export { composeDrawing } from "./parts/compose-drawing";
export type * from "./parts/facts";
export { layoutText, readableSpec } from "./parts/spec-rows";
export type * from "./proof/facts";
export type * from "./quote/facts";
export { renderDocument } from "./render";
