export { mayLieAt } from "./groups";
export { type MatchedSki, matchOneSki } from "./match-one-ski";
export { matchStrips } from "./match-strips";
export * from "./types";
