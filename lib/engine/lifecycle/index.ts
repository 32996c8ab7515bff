export * from "./cancellation";
export * from "./clock-start";
export * from "./edits";
export * from "./states";
export * from "./transitions";
