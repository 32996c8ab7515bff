export * from "./dispatch";
export * from "./dispatch-model";
export * from "./sampling";
export * from "./stored-timelines";
