export * from "./floor";
export { openQueue } from "./floor-problem";
export { pairStations, routeFor, stationsBefore } from "./network";
export * from "./plan-queue";
export * from "./promise";
export { prepareRuns, type QueueRuns, runRange } from "./replications";
export * from "./shop-time";
export * from "./types";
