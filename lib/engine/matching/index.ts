export { matchStrips } from "./match-strips";
export * from "./types";
