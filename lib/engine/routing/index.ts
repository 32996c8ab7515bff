export * from "./floor";
export * from "./shop-time";
export * from "./types";
