export * from "./body";
export * from "./brand";
export * from "./outcome";
export * from "./rounding";
