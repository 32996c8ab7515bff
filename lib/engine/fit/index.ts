export * from "./finish";
export * from "./flags";
export * from "./health-words";
export * from "./recommend";
export * from "./types";
