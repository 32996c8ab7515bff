/**
 * Published scheduling problems as problems of the engine. The numbers are in tests/fixtures/scheduling, each file with its
 * source and how its rows are read; rows are strings, so that a printed row stays one line.
 */
import type { ScheduleProblem } from "#engine/schedule";
import flowShopData from "../../fixtures/scheduling/flow-shops.json";
import setupFlowShopData from "../../fixtures/scheduling/flow-shops-with-setups.json";
import hybridFlowShopData from "../../fixtures/scheduling/hybrid-flow-shops.json";
import jobShopData from "../../fixtures/scheduling/job-shops.json";
import hardJobShopData from "../../fixtures/scheduling/job-shops-hard.json";
import lateJobData from "../../fixtures/scheduling/late-jobs.json";
import setupLateJobData from "../../fixtures/scheduling/late-jobs-with-setups.json";
import projectData from "../../fixtures/scheduling/projects.json";
import largeProjectData from "../../fixtures/scheduling/projects-of-120.json";
import workshopData from "../../fixtures/scheduling/workshops.json";
import twoPressData from "../../fixtures/scheduling/workshops-with-two-presses.json";

/** A problem with the objective to reach, in the problem's own unit. */
export interface Instance {
  readonly kind: string;
  readonly name: string;
  readonly problem: ScheduleProblem;
  readonly best: number;
  /** No schedule of the problem is better than `best`: it is proven, and for just this problem. */
  readonly isOptimum: boolean;
}

interface Named {
  readonly name: string;
  readonly best: number;
}

/** The instances of one file, by its own way of reading a problem. */
function instancesOf<P extends Named>(
  kind: string,
  { bestIs, problems }: { readonly bestIs: string; readonly problems: readonly P[] },
  problemOf: (problem: P) => ScheduleProblem,
): readonly Instance[] {
  return problems.map((one) => ({
    kind,
    name: one.name,
    problem: problemOf(one),
    best: one.best,
    isOptimum: bestIs === "optimum",
  }));
}

const numbers = (row: string) => row.split(" ").map(Number);

/** Changeover minutes between families f0 … of one machine; a dash where a row meets itself. */
const changeoversOf = (rows: readonly string[]) =>
  Object.fromEntries(
    rows.map((row, from) => [
      `f${from}`,
      Object.fromEntries(row.split(" ").flatMap((value, to) => (value === "-" ? [] : [[`f${to}`, Number(value)]]))),
    ]),
  );

/** Machine–duration pairs in the order of a job's route. */
function routes(rows: readonly string[]): ScheduleProblem {
  const jobs = rows.map(numbers);
  const machines = (jobs[0]?.length ?? 0) / 2;
  return {
    resources: Array.from({ length: machines }, (_, m) => ({ id: `m${m}`, capacity: 1 })),
    jobs: jobs.map((row, j) => ({
      id: `j${j}`,
      operations: Array.from({ length: machines }, (_, k) => ({
        id: `o${k}`,
        resource: `m${row[2 * k]}`,
        minutes: row[2 * k + 1] ?? 0,
      })),
    })),
    objective: "makespan",
  };
}

type Workshop = (typeof workshopData.problems)[number] | (typeof twoPressData.problems)[number];

/** Minutes of the workshop's unit of time: one where nothing but order counts, real ones where there are opening hours. */
const minutesPerUnit = (data: Workshop) => ("calendar" in data ? data.unitMinutes : 1);

function pressCount({ stations, press }: Workshop): number {
  const written = stations.split(", ").find((station) => station.startsWith(`${press} `));
  return Number(written?.split(" ")[1]);
}

function workshop(data: Workshop): ScheduleProblem {
  const unit = minutesPerUnit(data);
  const changeoverMinutes = Object.fromEntries(
    Object.entries(changeoversOf(data.changeovers)).map(([from, row]) => [
      from,
      Object.fromEntries(Object.entries(row).map(([to, value]) => [to, value * unit])),
    ]),
  );
  const calendar = "calendar" in data ? data.calendar : undefined;
  const windows = calendar?.windows.map(([from = 0, to = 0]) => [from * unit, to * unit] as const);
  const opens = windows === undefined ? {} : { calendar: "day" };
  // Presses stand side by side, each with a mould of its own; of other machines of a kind any will do.
  const presses = Array.from({ length: pressCount(data) }, (_, at) =>
    at === 0 ? data.press : `${data.press}${at + 1}`,
  );
  return {
    calendars: windows === undefined ? {} : { day: { windows } },
    resources: data.stations.split(", ").flatMap((station) => {
      const [id = "", capacity] = station.split(" ");
      if (id !== data.press) return [{ id, capacity: Number(capacity), ...opens }];
      return presses.map((press) => ({
        id: press,
        capacity: 1,
        ...opens,
        changeoverMinutes,
        initialFamily: `f${data.initialFamily}`,
      }));
    }),
    jobs: data.orders.map(({ id, release, due, weight, family, route }) => ({
      id,
      releaseMinute: release * unit,
      dueMinute: due * unit,
      weight,
      operations: route.split(", ").map((visit, k) => {
        const [, resource = "", run, cure] = /^(\w+) (\d+)(?:\+(\d+))?$/.exec(visit) ?? [];
        return {
          id: `${k}`,
          ...(resource === data.press && presses.length > 1 ? { uses: [{ anyOf: presses }] } : { resource }),
          minutes: Number(run) * unit,
          ...(resource === data.press ? { family: `f${family}` } : {}),
          ...(cure === undefined ? {} : { unattendedMinutes: Number(cure) * unit, holdsDuring: presses }),
        };
      }),
    })),
    objective:
      data.objective === "makespan"
        ? "makespan"
        : { weightedTardiness: 1, changeover: "changeoverCost" in data ? (data.changeoverCost ?? 0) : 0 },
  };
}

function project({
  capacities,
  activities,
}: {
  readonly capacities: string;
  readonly activities: readonly string[];
}): ScheduleProblem {
  const before = new Map<number, number[]>();
  const rows = activities.map((activity, at) => {
    const [own = "", followers] = activity.split(" > ");
    for (const next of followers === undefined ? [] : numbers(followers))
      before.set(next, [...(before.get(next) ?? []), at + 1]);
    return numbers(own);
  });
  return {
    resources: numbers(capacities).map((capacity, r) => ({ id: `r${r}`, capacity })),
    jobs: [
      {
        id: "project",
        operations: rows.map(([minutes = 0, ...demand], at) => ({
          id: `${at + 1}`,
          minutes,
          after: (before.get(at + 1) ?? []).map(String),
          uses: demand.flatMap((units, r) => (units > 0 ? [{ resource: `r${r}`, units }] : [])),
        })),
      },
    ],
    objective: "makespan",
  };
}

interface LateJobs {
  readonly minutes: string;
  readonly weights: string;
  readonly dues: string;
}

/** One machine, weighted tardiness; with setups every job is a family of its own. */
function lateJobs({ minutes, weights, dues }: LateJobs, setups?: readonly string[]): ScheduleProblem {
  const [weight, due] = [numbers(weights), numbers(dues)];
  const [first, ...rows] = setups ?? [];
  const changeovers =
    first === undefined
      ? {}
      : {
          changeoverMinutes: { empty: changeoversOf([first]).f0 ?? {}, ...changeoversOf(rows) },
          initialFamily: "empty",
        };
  return {
    resources: [{ id: "m", capacity: 1, ...changeovers }],
    jobs: numbers(minutes).map((value, j) => ({
      id: `j${j}`,
      weight: weight[j] ?? 1,
      dueMinute: due[j] ?? 0,
      operations: [{ id: "o", resource: "m", minutes: value, ...(first === undefined ? {} : { family: `f${j}` }) }],
    })),
    objective: { weightedTardiness: 1 },
  };
}

function setupFlowShop({ minutes, setups }: (typeof setupFlowShopData.problems)[number]): ScheduleProblem {
  const jobs = minutes.map(numbers);
  return {
    resources: (jobs[0] ?? []).map((_, m) => ({
      id: `m${m}`,
      capacity: 1,
      changeoverMinutes: changeoversOf(setups.slice(m * jobs.length, (m + 1) * jobs.length)),
    })),
    jobs: jobs.map((row, j) => ({
      id: `j${j}`,
      operations: row.map((value, m) => ({ id: `o${m}`, resource: `m${m}`, minutes: value, family: `f${j}` })),
    })),
    objective: "makespan",
  };
}

function hybridFlowShop({ machines, minutes }: (typeof hybridFlowShopData.problems)[number]): ScheduleProblem {
  return {
    resources: numbers(machines).map((capacity, stage) => ({ id: `s${stage}`, capacity })),
    jobs: minutes.map((row, j) => ({
      id: `j${j}`,
      operations: numbers(row).map((value, stage) => ({ id: `o${stage}`, resource: `s${stage}`, minutes: value })),
    })),
    objective: "makespan",
  };
}

function workshops(
  kind: string,
  { bestIs, problems }: { readonly bestIs: string; readonly problems: readonly Workshop[] },
): readonly Instance[] {
  return problems.map((one) => ({
    kind,
    name: one.name,
    problem: workshop(one),
    best: one.best * minutesPerUnit(one),
    isOptimum: bestIs === "optimum",
  }));
}

/** Every published problem that is kept here, and the workshops made up beside them. */
export const instances: readonly Instance[] = [
  ...instancesOf("job shop", jobShopData, ({ rows }) => routes(rows)),
  ...instancesOf("job shop, hard", hardJobShopData, ({ rows }) => routes(rows)),
  ...instancesOf("flow shop", flowShopData, ({ rows }) => routes(rows)),
  ...instancesOf("one machine, late", lateJobData, (one) => lateJobs(one)),
  ...instancesOf("setups, late", setupLateJobData, (one) => lateJobs(one, one.setups)),
  ...instancesOf("flow shop, setups", setupFlowShopData, setupFlowShop),
  ...instancesOf("hybrid flow shop", hybridFlowShopData, hybridFlowShop),
  ...instancesOf("project of 30", projectData, project),
  ...instancesOf("project of 120", largeProjectData, project),
  ...workshops("workshop", workshopData),
  ...workshops("two presses", twoPressData),
];

const byName = new Map(instances.map((one) => [one.name, one]));

/** @throws where no file has a problem of that name: a check never passes for want of its problem */
export function instance(name: string): Instance {
  const found = byName.get(name);
  if (found === undefined) throw new Error(`tests/fixtures/scheduling has no problem ${name}`);
  return found;
}
