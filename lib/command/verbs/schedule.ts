import { z } from "zod";
import { scheduleJobs } from "#engine/optimise";
import { verb } from "../verb";
import { nonNegative } from "./schemas";

const minute = z.number().int();
const minutes = z.number().int().nonnegative();
const id = z.string().min(1);
const window = z.tuple([minute, minute]);

const calendar = z.strictObject({
  windows: z.array(window).min(1).max(24),
  weekdays: z.array(z.number().int().min(1).max(7)).exactOptional(),
  firstWeekday: z.number().int().min(1).max(7).exactOptional(),
  closedDays: z.array(z.number().int()).exactOptional(),
  closures: z.array(window).exactOptional(),
  extraWindows: z.array(window).exactOptional(),
});

const resource = z.strictObject({
  id,
  capacity: z.number().int().min(1),
  calendar: id.exactOptional(),
  changeoverMinutes: z.record(z.string(), z.record(z.string(), minutes)).exactOptional(),
  initialFamily: id.exactOptional(),
  unavailable: z.array(z.tuple([minutes, minutes])).exactOptional(),
});

const units = z.number().int().min(1).exactOptional();
const use = z.union([z.strictObject({ resource: id, units }), z.strictObject({ anyOf: z.array(id).min(1), units })]);

const operation = z.strictObject({
  id,
  minutes,
  resource: id.exactOptional(),
  uses: z.array(use).exactOptional(),
  unattendedMinutes: minutes.exactOptional(),
  holdsDuring: z.array(id).exactOptional(),
  maxGapMinutes: minutes.exactOptional(),
  family: id.exactOptional(),
  after: z.array(id).exactOptional(),
  releaseMinute: minute.exactOptional(),
  uninterrupted: z.boolean().exactOptional(),
  fixed: z.strictObject({ startMinute: minute }).exactOptional(),
});

const job = z.strictObject({
  id,
  releaseMinute: minute.exactOptional(),
  dueMinute: minute.nullable().exactOptional(),
  deadlineMinute: minute.nullable().exactOptional(),
  weight: nonNegative.exactOptional(),
  operations: z.array(operation).min(1),
});

const objective = z.union([
  z.literal("makespan"),
  z.strictObject({
    makespan: nonNegative.exactOptional(),
    weightedTardiness: nonNegative.exactOptional(),
    changeover: nonNegative.exactOptional(),
  }),
]);

const input = z.strictObject({
  resources: z.array(resource).min(1),
  calendars: z.record(z.string(), calendar).exactOptional(),
  jobs: z.array(job),
  objective: objective.default("makespan"),
  iterations: z.number().int().min(0).exactOptional(),
  budgetMs: z.number().int().min(0).exactOptional(),
  seed: z.number().int().min(0).default(1),
});

export const scheduleVerb = verb({
  name: "schedule",
  summary: "jobs on finite resources with calendars, changeovers, cures and gaps → start and end of every operation",
  input,
  output: z.object({
    operations: z.array(z.object({ job: z.string(), operation: z.string(), startMinute: minute, endMinute: minute })),
    makespanMinutes: z.number(),
    objectiveValue: z.number(),
    proven: z.boolean(),
    stoppedBy: z.enum(["iterations", "budget", "proven"]),
  }),
  run: ({ iterations, budgetMs, seed, ...problem }, { clock }) =>
    scheduleJobs(problem, {
      seed,
      clockMs: clock,
      ...(iterations === undefined ? {} : { iterations }),
      ...(budgetMs === undefined ? {} : { budgetMs }),
    }),
});
