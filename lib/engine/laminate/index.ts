export * from "./laminate";
export * from "./partial-interaction";
export * from "./section";
export * from "./types";
