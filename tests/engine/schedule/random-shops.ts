/** Small random shops that use every part of the problem form, one seed each; a feature is in about every second of them. */
import { intBelow, type Random32, seededRandom } from "#engine/math";
import type {
  JobSpec,
  MinuteWindow,
  OperationSpec,
  ResourceSpec,
  ResourceUse,
  Schedule,
  ScheduleProblem,
} from "#engine/schedule";

const families = ["a", "b", "c"] as const;
const people = ["ann", "bo", "cy"] as const;
const presses = ["press-1", "press-2"] as const;

const pick = <T>(random: Random32, list: readonly T[]): T => list[intBelow(random, list.length)] as T;
const half = (random: Random32) => intBelow(random, 2) === 0;

/** A shop with calendars, people, presses with changeovers, cassettes, absences, gaps, releases and branches. */
export function randomShop(seed: number): ScheduleProblem {
  const random = seededRandom(seed);
  const hasCalendars = intBelow(random, 4) > 0;
  const hasAbsences = half(random);
  const changeoverMinutes = Object.fromEntries(
    families.map((from) => [
      from,
      Object.fromEntries(families.map((to) => [to, from === to ? 0 : intBelow(random, 40)])),
    ]),
  );
  const resource = (id: string, capacity: number, calendar: string | null, more: object = {}): ResourceSpec => ({
    id,
    capacity,
    ...(hasCalendars && calendar !== null ? { calendar } : {}),
    ...(hasAbsences && intBelow(random, 3) === 0 ? { unavailable: absences(random) } : {}),
    ...more,
  });
  const gapChance = half(random) ? 4 : Number.POSITIVE_INFINITY;
  return {
    calendars: {
      day: {
        windows: [
          [480, 720],
          [750, 990],
        ],
        weekdays: [1, 2, 3, 4, 5],
        firstWeekday: 1 + intBelow(random, 7),
        closedDays: [1 + intBelow(random, 3)],
        closures: [[500, 560]],
        extraWindows: half(random) ? [[1440 + 1000, 1440 + 1100]] : [],
      },
      early: { windows: [[360, 840]] },
    },
    resources: [
      resource("bench", 2 + intBelow(random, 2), "day"),
      resource("cassettes", 2, null),
      resource("press-1", 1, "day", { changeoverMinutes, initialFamily: "a" }),
      resource("press-2", 1, "day", { changeoverMinutes }),
      ...people.map((id) => resource(id, 1, "day")),
      resource("saw", 1, "early"),
      resource("oven", 1, null, half(random) ? { changeoverMinutes, initialFamily: "c" } : {}),
    ],
    jobs: Array.from({ length: 2 + intBelow(random, 4) }, (_, j) => randomJob(random, `j${j}`, gapChance)),
    objective: pick(random, [
      { makespan: 0.1, weightedTardiness: 1, changeover: 0.5 },
      { weightedTardiness: 1 },
      { makespan: 1, changeover: 2 },
      "makespan" as const,
    ]),
  };
}

/** Two times, in order and apart, when a resource is away. */
function absences(random: Random32): readonly MinuteWindow[] {
  const from = intBelow(random, 1500);
  const to = from + 1 + intBelow(random, 900);
  const again = to + intBelow(random, 2000);
  return [
    [from, to],
    [again, again + 1 + intBelow(random, 900)],
  ];
}

function randomJob(random: Random32, id: string, gapChance: number): JobSpec {
  const count = 2 + intBelow(random, 4);
  return {
    id,
    releaseMinute: intBelow(random, 600),
    dueMinute: half(random) ? intBelow(random, 4000) : null,
    weight: 1 + intBelow(random, 3),
    operations: Array.from({ length: count }, (_, at) => randomOperation(random, at, gapChance)),
  };
}

function randomOperation(random: Random32, at: number, gapChance: number): OperationSpec {
  const uses = randomUses(random);
  const earlier = Array.from({ length: at }, (_, k) => `${k}`).filter(() => half(random));
  const isBranch = at > 0 && half(random);
  const hasPredecessor = at > 0 && (!isBranch || earlier.length > 0);
  const ids = uses.flatMap((use) => ("anyOf" in use ? use.anyOf : [use.resource]));
  const hasCure = half(random);
  return {
    id: `${at}`,
    minutes: intBelow(random, 12) === 0 ? 0 : 1 + intBelow(random, 120),
    uses,
    family: pick(random, families),
    uninterrupted: intBelow(random, 3) === 0,
    ...(hasCure ? { unattendedMinutes: intBelow(random, 600) } : {}),
    ...(hasCure && half(random)
      ? { holdsDuring: ids.filter((name) => !people.some((person) => person === name)) }
      : {}),
    ...(isBranch ? { after: earlier } : {}),
    ...(intBelow(random, 4) === 0 ? { releaseMinute: intBelow(random, 1500) } : {}),
    ...(hasPredecessor && intBelow(random, 100) < 100 / gapChance ? { maxGapMinutes: intBelow(random, 90) } : {}),
  };
}

function randomUses(random: Random32): readonly ResourceUse[] {
  const units = 1 + intBelow(random, 2);
  switch (intBelow(random, 7)) {
    case 0:
      return [{ resource: "saw" }, { anyOf: people }];
    case 1:
      return [
        { resource: "bench", units },
        { anyOf: people, units },
      ];
    case 2:
      return [{ anyOf: presses }, { resource: "cassettes" }, { resource: pick(random, people) }];
    case 3:
      return [{ resource: "oven" }, { resource: "cassettes", units }];
    case 4:
      return [{ anyOf: presses, units }];
    case 5:
      return [{ anyOf: people, units }];
    default:
      return [{ resource: "bench" }];
  }
}

/** The shop some time later: what has begun by then is a fact on its resources, and so is what a maximum gap ties to it. */
export function frozenAt(problem: ScheduleProblem, schedule: Schedule, minute: number): ScheduleProblem {
  let at = 0;
  return {
    ...problem,
    jobs: problem.jobs.map((job) => {
      const entries = job.operations.map(() => schedule.operations[at++]);
      const starts = entries.map((entry) => entry?.startMinute ?? 0);
      const isFact = starts.map((start) => start < minute);
      const before = (k: number) => job.operations[k]?.after?.map(Number) ?? (k === 0 ? [] : [k - 1]);
      for (let round = 0; round < isFact.length; round++) {
        job.operations.forEach(({ maxGapMinutes }, k) => {
          if (maxGapMinutes !== undefined && before(k).some((other) => isFact[other])) isFact[k] = true;
          // What stands before a fact is one.
          if (isFact[k]) for (const other of before(k)) isFact[other] = true;
        });
      }
      return {
        ...job,
        operations: job.operations.map((operation, k) =>
          isFact[k] ? fact(operation, starts[k] ?? 0, entries[k]?.resources ?? []) : operation,
        ),
      };
    }),
  };
}

function fact(operation: OperationSpec, startMinute: number, taken: readonly string[]): OperationSpec {
  const uses = operation.uses?.flatMap((use): readonly ResourceUse[] =>
    "anyOf" in use ? taken.filter((id) => use.anyOf.includes(id)).map((resource) => ({ resource })) : [use],
  );
  const holdsDuring = operation.holdsDuring?.filter((id) => taken.includes(id));
  return {
    ...operation,
    fixed: { startMinute },
    ...(uses === undefined ? {} : { uses }),
    ...(holdsDuring === undefined ? {} : { holdsDuring }),
  };
}

/** A line of one to three stages: one machine (with changeovers or not) or several equal ones, releases at any stage. */
export function randomLine(seed: number): ScheduleProblem {
  const random = seededRandom(seed);
  const stages = Array.from({ length: 1 + intBelow(random, 3) }, () => intBelow(random, 3));
  const matrix = () =>
    Object.fromEntries(
      families.map((from) => [
        from,
        Object.fromEntries(families.map((to) => [to, from === to ? 0 : intBelow(random, 15)])),
      ]),
    );
  const resources = stages.flatMap((kind, stage): readonly ResourceSpec[] => {
    if (kind === 0) return [{ id: `${stage}`, capacity: 1, changeoverMinutes: matrix(), initialFamily: "b" }];
    if (kind === 1) return [{ id: `${stage}`, capacity: 1 + intBelow(random, 3) }];
    return ["x", "y"].map((side) => ({ id: `${stage}${side}`, capacity: 1 }));
  });
  return {
    resources,
    jobs: Array.from({ length: 2 + intBelow(random, 7) }, (_, j) => ({
      id: `j${j}`,
      releaseMinute: intBelow(random, 30),
      dueMinute: 10 + intBelow(random, 120),
      weight: 1 + intBelow(random, 4),
      operations: stages.map((kind, stage) => ({
        id: `${stage}`,
        uses: [kind === 2 ? { anyOf: [`${stage}x`, `${stage}y`] } : { resource: `${stage}` }],
        minutes: 1 + intBelow(random, 20),
        family: pick(random, families),
        ...(intBelow(random, 3) === 0 ? { releaseMinute: intBelow(random, 90) } : {}),
      })),
    })),
    objective: pick(random, [
      "makespan" as const,
      { weightedTardiness: 1 },
      { weightedTardiness: 1, changeover: 3 },
      { weightedTardiness: 1, changeover: 1, makespan: 2 },
    ]),
  };
}

/** A project of pools only: precedence and capacities, the makespan to be shortened. */
export function randomProject(seed: number): ScheduleProblem {
  const random = seededRandom(seed);
  return {
    resources: [2, 3].map((capacity, r) => ({ id: `r${r}`, capacity })),
    jobs: [
      {
        id: "project",
        operations: Array.from({ length: 6 + intBelow(random, 8) }, (_, at) => ({
          id: `${at}`,
          minutes: 1 + intBelow(random, 9),
          after: Array.from({ length: at }, (_, k) => `${k}`).filter(() => intBelow(random, 4) === 0),
          uses: [2, 3].flatMap((capacity, r) =>
            half(random) ? [{ resource: `r${r}`, units: 1 + intBelow(random, capacity) }] : [],
          ),
        })),
      },
    ],
    objective: "makespan",
  };
}

/** A job shop: each job passes some of the machines, perhaps more than once, some with releases. */
export function randomJobShop(seed: number): ScheduleProblem {
  const random = seededRandom(seed);
  return {
    resources: ["0", "1", "2"].map((id) => ({ id, capacity: 1 })),
    jobs: Array.from({ length: 2 + intBelow(random, 5) }, (_, j) => ({
      id: `j${j}`,
      releaseMinute: half(random) ? intBelow(random, 30) : 0,
      operations: Array.from({ length: 1 + intBelow(random, 4) }, (_, k) => ({
        id: `${k}`,
        resource: `${intBelow(random, 3)}`,
        minutes: 1 + intBelow(random, 20),
        ...(intBelow(random, 5) === 0 ? { releaseMinute: intBelow(random, 60) } : {}),
      })),
    })),
    objective: "makespan",
  };
}
