export { abilityThatCounts } from "./answers";
export * from "./finish";
export * from "./flags";
export { gearKg } from "./flex-ratio";
export * from "./health-words";
export * from "./recommend";
export * from "./similarity";
export * from "./types";
