export * from "./cloth";
export * from "./corrections";
export * from "./lookup";
export * from "./strip-bench";
export * from "./types";
export * from "./wood";
