export * from "./dispatch";
export * from "./dispatch-model";
export * from "./stored-timelines";
