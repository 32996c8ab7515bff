export * from "./body";
export * from "./brand";
export * from "./fill";
export * from "./measure-reader";
export type * from "./ids";
export * from "./outcome";
export * from "./rounding";
export * from "./told-share";
