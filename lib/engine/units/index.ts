export * from "./body";
export * from "./brand";
export type * from "./ids";
export * from "./outcome";
export * from "./rounding";
