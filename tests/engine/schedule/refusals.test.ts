/** Every refusal of a problem, with its code and where it is wrong; and the last value that is still taken beside each. */
import { describe, expect, it } from "vitest";
import {
  type CalendarSpec,
  type OperationSpec,
  type ResourceSpec,
  type ScheduleProblem,
  validateProblem,
} from "#engine/schedule";

const resource: ResourceSpec = { id: "m", capacity: 1 };
const operation: OperationSpec = { id: "o", minutes: 10, resource: "m" };
const open: CalendarSpec = {
  windows: [
    [480, 720],
    [780, 1020],
  ],
};
const most = 2 ** 30;

const problem = (change: Partial<ScheduleProblem>): ScheduleProblem => ({
  resources: [resource],
  jobs: [{ id: "j", operations: [operation] }],
  objective: "makespan",
  ...change,
});
const withOperation = (change: Partial<OperationSpec>, more: Partial<ScheduleProblem> = {}) => {
  const { resource: _, ...bare } = operation;
  const own = "uses" in change ? bare : operation;
  return problem({ jobs: [{ id: "j", operations: [{ ...own, ...change }] }], ...more });
};
const withJob = (change: object) => problem({ jobs: [{ id: "j", operations: [operation], ...change }] });
const withResource = (change: Partial<ResourceSpec>, more: Partial<ScheduleProblem> = {}) =>
  problem({ resources: [{ ...resource, ...change }], ...more });
const withCalendar = (change: Partial<CalendarSpec>) =>
  withResource({ calendar: "c" }, { calendars: { c: { ...open, ...change } } });
const two = [resource, { id: "n", capacity: 1 }];
const first = { id: "first", minutes: 5, resource: "m" };
const withTwo = (...operations: readonly OperationSpec[]) => problem({ jobs: [{ id: "j", operations }] });

const refused: readonly (readonly [string, string, ScheduleProblem])[] = [
  ["empty", "resources", problem({ resources: [] })],
  ["empty", "jobs", problem({ jobs: [] })],
  ["duplicate-id", "resources.1.id", problem({ resources: [resource, resource] })],
  [
    "duplicate-id",
    "jobs.1.id",
    problem({
      jobs: [
        { id: "j", operations: [] },
        { id: "j", operations: [] },
      ],
    }),
  ],
  ["duplicate-id", "jobs.0.operations.1.id", withTwo(operation, operation)],
  ["out-of-range", "objective.makespan", problem({ objective: { makespan: -1 } })],
  ["out-of-range", "objective.changeover", problem({ objective: { changeover: Number.NaN } })],
  ["out-of-range", "resources.0.capacity", withResource({ capacity: 0 })],
  ["not-whole", "resources.0.capacity", withResource({ capacity: 1.5 })],
  ["unknown-id", "resources.0.calendar", withResource({ calendar: "none" })],
  ["out-of-range", "resources.0.unavailable.0", withResource({ unavailable: [[10, 10]] })],
  [
    "out-of-range",
    "resources.0.unavailable.1",
    withResource({
      unavailable: [
        [0, 20],
        [19, 30],
      ],
    }),
  ],
  ["changeover-needs-capacity-one", "resources.0.capacity", withResource({ capacity: 2, changeoverMinutes: {} })],
  ["out-of-range", "resources.0.changeoverMinutes.a.b", withResource({ changeoverMinutes: { a: { b: -1 } } })],
  ["out-of-range", "calendars.c.windows.0", withCalendar({ windows: [[480, 480]] })],
  ["out-of-range", "calendars.c.windows.0", withCalendar({ windows: [[480, 1441]] })],
  [
    "out-of-range",
    "calendars.c.windows.1",
    withCalendar({
      windows: [
        [480, 720],
        [719, 800],
      ],
    }),
  ],
  ["not-whole", "calendars.c.windows.0", withCalendar({ windows: [[480.5, 720]] })],
  ["out-of-range", "calendars.c.closures.0", withCalendar({ closures: [[20, 19]] })],
  ["out-of-range", "calendars.c.extraWindows.0", withCalendar({ extraWindows: [[20, 19]] })],
  ["out-of-range", "calendars.c.weekdays", withCalendar({ weekdays: [8] })],
  ["out-of-range", "calendars.c.weekdays", withCalendar({ weekdays: [0] })],
  ["out-of-range", "calendars.c.weekdays", withCalendar({ firstWeekday: 8 })],
  ["not-whole", "calendars.c.closedDays", withCalendar({ closedDays: [1.5] })],
  ["calendar-never-open", "calendars.c", withCalendar({ weekdays: [] })],
  ["calendar-never-open", "calendars.c", withCalendar({ windows: [] })],
  ["out-of-range", "jobs.0.releaseMinute", withJob({ releaseMinute: -1 })],
  ["not-whole", "jobs.0.dueMinute", withJob({ dueMinute: 0.5 })],
  ["out-of-range", "jobs.0.dueMinute", withJob({ dueMinute: -most - 1 })],
  ["out-of-range", "jobs.0.deadlineMinute", withJob({ deadlineMinute: -1 })],
  ["out-of-range", "jobs.0.weight", withJob({ weight: -0.1 })],
  ["out-of-range", "jobs.0.operations.0.minutes", withOperation({ minutes: -1 })],
  ["out-of-range", "jobs.0.operations.0.minutes", withOperation({ minutes: most + 1 })],
  ["not-whole", "jobs.0.operations.0.minutes", withOperation({ minutes: 0.5 })],
  ["out-of-range", "jobs.0.operations.0.unattendedMinutes", withOperation({ unattendedMinutes: -1 })],
  ["out-of-range", "jobs.0.operations.0.releaseMinute", withOperation({ releaseMinute: -1 })],
  ["out-of-range", "jobs.0.operations.0.fixed.startMinute", withOperation({ fixed: { startMinute: -1 } })],
  ["out-of-range", "jobs.0.operations.1.maxGapMinutes", withTwo(first, { ...operation, maxGapMinutes: -1 })],
  ["gap-without-predecessor", "jobs.0.operations.0.maxGapMinutes", withOperation({ maxGapMinutes: 5 })],
  ["unknown-id", "jobs.0.operations.0.resource", withOperation({ resource: "none" })],
  ["unknown-id", "jobs.0.operations.0.uses.0", withOperation({ uses: [{ resource: "none" }] })],
  ["unknown-id", "jobs.0.operations.1.after", withTwo(first, { ...operation, after: ["none"] })],
  ["cycle", "jobs.0.operations", withTwo({ ...first, after: ["o"] }, { ...operation, after: ["first"] })],
  ["out-of-range", "jobs.0.operations.0.uses.0.units", withOperation({ uses: [{ resource: "m", units: 0 }] })],
  ["capacity-too-small", "jobs.0.operations.0.uses.0", withOperation({ uses: [{ resource: "m", units: 2 }] })],
  [
    "capacity-too-small",
    "jobs.0.operations.0.uses.0",
    withOperation({ uses: [{ anyOf: ["m", "n"], units: 3 }] }, { resources: two }),
  ],
  [
    "used-twice",
    "jobs.0.operations.0.uses.1",
    withOperation({ uses: [{ resource: "m" }, { anyOf: ["n", "m"] }] }, { resources: two }),
  ],
  [
    "changeover-needs-capacity-one",
    "jobs.0.operations.0.uses.0",
    withOperation({ uses: [{ anyOf: ["m", "n"] }] }, { resources: [resource, { id: "n", capacity: 2 }] }),
  ],
  [
    "mixed-calendars",
    "jobs.0.operations.0.uses.0",
    withOperation(
      { uses: [{ anyOf: ["m", "n"] }] },
      { resources: [resource, { id: "n", capacity: 1, calendar: "c" }], calendars: { c: open } },
    ),
  ],
  ["family-missing", "jobs.0.operations.0.family", withResource({ changeoverMinutes: { a: { b: 5 } } })],
  ["hold-not-used", "jobs.0.operations.0.holdsDuring", withOperation({ holdsDuring: ["n"] }, { resources: two })],
  [
    "window-too-short",
    "jobs.0.operations.0.minutes",
    withOperation(
      { minutes: 241, uninterrupted: true },
      { resources: [{ ...resource, calendar: "c" }], calendars: { c: open } },
    ),
  ],
  [
    // Each is open, never both at once.
    "calendar-never-open",
    "jobs.0.operations.0",
    withOperation(
      { uses: [{ resource: "m" }, { resource: "n" }] },
      {
        resources: [
          { ...resource, calendar: "early" },
          { id: "n", capacity: 1, calendar: "late" },
        ],
        calendars: { early: { windows: [[480, 720]] }, late: { windows: [[720, 900]] } },
      },
    ),
  ],
];

describe("a problem that is not sound", () => {
  it.each(refused)("%s at %s", (code, path, wrong) => {
    const outcome = validateProblem(wrong);
    expect(outcome).toMatchObject({ ok: false, refusal: { code, path } });
  });

  it("says what was found and what would do", () => {
    const refusalOf = (wrong: ScheduleProblem) => {
      const outcome = validateProblem(wrong);
      return outcome.ok ? null : outcome.refusal;
    };
    expect(refusalOf(withOperation({ minutes: -1 }))).toMatchObject({ value: -1, low: 0, high: most });
    expect(refusalOf(withOperation({ uses: [{ resource: "m", units: 2 }] }))).toMatchObject({ value: 2, high: 1 });
    expect(refusalOf(withCalendar({ weekdays: [8] }))).toMatchObject({ value: 8, low: 1, high: 7 });
    expect(refusalOf(withCalendar({ windows: [[480, 1441]] }))).toMatchObject({ value: 1441, low: 481, high: 1440 });
    expect(
      refusalOf(
        withOperation(
          { minutes: 241, uninterrupted: true },
          { resources: [{ ...resource, calendar: "c" }], calendars: { c: open } },
        ),
      ),
    ).toMatchObject({ value: 241, high: 240 });
  });
});

describe("a problem that just is", () => {
  it.each<readonly [string, ScheduleProblem]>([
    [
      "jobs without work, and nothing to work on",
      problem({ resources: [], jobs: [{ id: "j", operations: [{ id: "o", minutes: 5 }] }] }),
    ],
    ["no minutes at all, or as many as there are", withTwo({ ...first, minutes: 0 }, { ...operation, minutes: most })],
    ["a window from midnight to midnight", withCalendar({ windows: [[0, 1440]] })],
    [
      "windows that touch",
      withCalendar({
        windows: [
          [480, 720],
          [720, 800],
        ],
      }),
    ],
    ["a closure of no minutes", withCalendar({ closures: [[20, 20]] })],
    ["what happened before minute 0", withCalendar({ closures: [[-20, -10]], closedDays: [-1] })],
    ["Sundays alone", withCalendar({ weekdays: [7], firstWeekday: 7 })],
    [
      "absences that touch",
      withResource({
        unavailable: [
          [0, 20],
          [20, 30],
        ],
      }),
    ],
    [
      "changeovers of no minutes",
      withOperation({ family: "a" }, { resources: [{ ...resource, changeoverMinutes: { a: { b: 0 } } }] }),
    ],
    ["everything due at once and nothing weighed", withJob({ dueMinute: -most, deadlineMinute: 0, weight: 0 })],
    ["no due day and no deadline", withJob({ dueMinute: null, deadlineMinute: null })],
    ["a gap behind another", withTwo(first, { ...operation, maxGapMinutes: 0 })],
    ["as many units as there are", withOperation({ uses: [{ anyOf: ["m", "n"], units: 2 }] }, { resources: two })],
    ["a hold on what it uses", withOperation({ holdsDuring: ["m"], unattendedMinutes: 5 })],
    [
      "work as long as the longest window",
      withOperation(
        { minutes: 240, uninterrupted: true },
        { resources: [{ ...resource, calendar: "c" }], calendars: { c: open } },
      ),
    ],
    [
      "longer work that may be interrupted",
      withOperation({ minutes: 241 }, { resources: [{ ...resource, calendar: "c" }], calendars: { c: open } }),
    ],
  ])("is taken: %s", (_, sound) => {
    expect(validateProblem(sound)).toEqual({ ok: true, value: sound });
  });
});
