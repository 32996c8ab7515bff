/** The pair as plain data of a drawing, from the geometry that is cut: one source for page, paper and picture. */
export * from "./artwork-marks";
export * from "./core";
export * from "./house";
export * from "./light";
export * from "./look";
export * from "./mesh";
export * from "./pair";
export * from "./paths";
export * from "./placing";
export * from "./side";
export * from "./ski";
export * from "./svg";
export * from "./types";
export * from "./wood";
export * from "./wood-look";
