export * from "./calendar";
export * from "./compile";
export * from "./objective";
export * from "./place";
export * from "./serial";
export * from "./timelines";
export * from "./types";
export * from "./validate";
