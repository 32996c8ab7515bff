export * from "./bounds";
export * from "./rules";
export * from "./schedule-jobs";
