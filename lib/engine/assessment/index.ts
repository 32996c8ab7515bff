export { assessSheet } from "./assess-sheet";
export * from "./types";
