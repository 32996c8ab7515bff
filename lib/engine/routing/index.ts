export * from "./floor";
export { type FloorProblem, type FloorRefusal, openQueue, pressCycleMinutes, workingDayMinutes } from "./floor-problem";
export { type RouteStep, routeFor, stationOf } from "./network";
export * from "./plan-queue";
export * from "./promise";
export { prepareRuns, type QueueRuns, type Replication, runRange } from "./replications";
export * from "./shop-time";
export * from "./types";
