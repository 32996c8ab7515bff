export * from "./comparison";
export * from "./price-spec";
export * from "./print-job";
export * from "./rounding";
export * from "./types";
