export * from "./corrections";
export * from "./fibres";
export * from "./lookup";
export * from "./types";
export * from "./wood-heat";
