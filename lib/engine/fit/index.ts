export { abilityThatCounts } from "./answers";
export * from "./finish";
export * from "./flags";
export { gearKg, packKg } from "./flex-ratio";
export * from "./health-words";
export type * from "./length-rules";
export * from "./recommend";
export * from "./similarity";
export * from "./types";
