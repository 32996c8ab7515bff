export * from "./body";
export * from "./brand";
export * from "./fill";
export type * from "./ids";
export * from "./measure-reader";
export * from "./outcome";
export * from "./rounding";
export * from "./told-share";
