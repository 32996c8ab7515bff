export * from "./corrections";
export * from "./lookup";
export * from "./types";
