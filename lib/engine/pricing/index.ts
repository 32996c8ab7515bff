export * from "./comparison";
export * from "./join";
export * from "./price-spec";
export * from "./rounding";
export * from "./rush";
export * from "./types";
