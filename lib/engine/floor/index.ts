export * from "./cancellation";
export * from "./clock-start";
export * from "./edits";
export * from "./redo";
export * from "./states";
export * from "./transitions";
