/** Published instances as problems. Most stay where they are and are read in place; ft06 is small enough to carry. */
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import type { ScheduleProblem } from "#engine/schedule";

const folder = path.resolve(import.meta.dirname, "../../../../shared/checks/instances");

/** Text of a published instance, or null (said aloud) where the check files are not beside the project. */
export function instanceText(name: string): string | null {
  const file = path.join(folder, name);
  if (existsSync(file)) return readFileSync(file, "utf8");
  console.info(`skipped: ${name} is not in ../shared/checks/instances`);
  return null;
}

/** H. Fisher & G. L. Thompson 1963, in Muth & Thompson, Industrial Scheduling: 6 × 6, optimum 55. */
export const ft06Text = `6 6
2 1 0 3 1 6 3 7 5 3 4 6
1 8 2 5 4 10 5 10 0 10 3 4
2 5 3 4 5 8 0 9 1 1 4 7
1 5 0 5 2 5 3 3 4 8 5 9
2 9 1 3 4 5 5 4 0 3 3 1
1 3 3 3 5 9 0 10 4 4 2 1`;

const rowsOf = (text: string) =>
  text
    .trim()
    .split("\n")
    .map((line) => line.trim().split(/\s+/).map(Number));

/** Job shop text: jobs and machines, then machine–duration pairs in routing order. */
export function jobShop(text: string): ScheduleProblem {
  const [[jobs = 0, machines = 0] = [], ...rows] = rowsOf(text);
  return {
    resources: Array.from({ length: machines }, (_, m) => ({ id: `m${m}`, capacity: 1 })),
    jobs: rows.slice(0, jobs).map((row, j) => ({
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

interface WorkshopText {
  readonly objective: string;
  readonly stations: readonly { readonly id: string; readonly machines: number }[];
  readonly calendar: { readonly period: number; readonly windows: readonly (readonly [number, number])[] } | null;
  readonly press: string;
  readonly changeover: readonly (readonly number[])[];
  readonly initial_family: readonly number[];
  readonly changeover_cost_weight?: number;
  readonly time_unit_minutes: number;
  readonly upper_bound: number;
  readonly orders: readonly {
    readonly id: string;
    readonly release: number;
    readonly due: number;
    readonly weight: number;
    readonly family: number;
    readonly ops: readonly { readonly station: string; readonly run: number; readonly cure?: number }[];
  }[];
}

/** A workshop instance (stations, press with changeovers, cure in the press, calendar), in its own unit of time. */
export function workshop(text: string): { readonly problem: ScheduleProblem; readonly optimum: number } {
  const data = JSON.parse(text) as WorkshopText;
  // Calendars are daily: where there is one, times are turned into minutes.
  const unit = data.calendar === null ? 1 : 1440 / data.calendar.period;
  const matrix = Object.fromEntries(
    data.changeover.map((row, from) => [
      `f${from}`,
      Object.fromEntries(row.map((value, to) => [`f${to}`, value * unit])),
    ]),
  );
  const objective =
    data.objective === "makespan"
      ? ("makespan" as const)
      : { weightedTardiness: 1, changeover: data.changeover_cost_weight ?? 0 };
  return {
    optimum: data.upper_bound * unit,
    problem: {
      calendars:
        data.calendar === null
          ? {}
          : { day: { windows: data.calendar.windows.map(([a, b]) => [a * unit, b * unit] as const) } },
      resources: data.stations.map(({ id, machines }) => ({
        id,
        capacity: machines,
        ...(data.calendar === null ? {} : { calendar: "day" }),
        ...(id === data.press ? { changeoverMinutes: matrix, initialFamily: `f${data.initial_family[0]}` } : {}),
      })),
      jobs: data.orders.map((order) => ({
        id: order.id,
        releaseMinute: order.release * unit,
        dueMinute: order.due * unit,
        weight: order.weight,
        operations: order.ops.map((operation, k) => ({
          id: `${k}`,
          resource: operation.station,
          minutes: operation.run * unit,
          ...(operation.station === data.press ? { family: `f${order.family}` } : {}),
          ...(operation.cure === undefined
            ? {}
            : { unattendedMinutes: operation.cure * unit, holdsDuring: [data.press] }),
        })),
      })),
      objective,
    },
  };
}

/** PSPLIB single-mode text (Kolisch & Sprecher 1996). */
export function resourceConstrained(text: string): ScheduleProblem {
  const lines = text.split("\n");
  const section = (title: string) => lines.findIndex((line) => line.startsWith(title));
  const rows = (from: number) =>
    lines
      .slice(from)
      .map((line) => line.trim().split(/\s+/).map(Number))
      .filter((row) => row.length > 2 && row.every((n) => !Number.isNaN(n)));
  const precedence = rows(section("PRECEDENCE RELATIONS") + 2).slice(0, 32);
  const requests = rows(section("REQUESTS/DURATIONS") + 2).slice(0, 32);
  const capacities = rows(section("RESOURCEAVAILABILITIES") + 1)[0] ?? [];
  const before = new Map<number, number[]>();
  for (const [job = 0, , , ...followers] of precedence) {
    for (const next of followers) before.set(next, [...(before.get(next) ?? []), job]);
  }
  return {
    resources: capacities.map((capacity, r) => ({ id: `r${r}`, capacity })),
    jobs: [
      {
        id: "project",
        operations: requests.map(([job = 0, , minutes = 0, ...demand]) => ({
          id: `${job}`,
          minutes,
          after: (before.get(job) ?? []).map(String),
          uses: demand.flatMap((units, r) => (units > 0 ? [{ resource: `r${r}`, units }] : [])),
        })),
      },
    ],
    objective: "makespan",
  };
}

/** Changeover minutes between families f0 … of one machine. */
const matrixOf = (rows: readonly (readonly number[])[]) =>
  Object.fromEntries(
    rows.map((row, from) => [`f${from}`, Object.fromEntries(row.map((value, to) => [`f${to}`, value]))]),
  );

/** One machine, weighted tardiness, a setup before every job by its predecessor (Cicirello & Smith 2005). */
export function setupSequence(text: string): ScheduleProblem {
  const lines = text.split("\n");
  const jobs = Number(/Problem Size: (\d+)/.exec(text)?.[1]);
  const column = (title: string) => {
    const from = lines.findIndex((line) => line.startsWith(title)) + 1;
    return lines.slice(from, from + jobs).map(Number);
  };
  const [minutes, weights, dues] = [column("Process Times"), column("Weights"), column("Duedates")];
  const setups = lines
    .slice(lines.findIndex((line) => line.startsWith("Setup Times")) + 1)
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter((row) => row.length === 3 && row.every((value) => Number.isInteger(value)));
  const changeoverMinutes: Record<string, Record<string, number>> = {};
  for (const [from = 0, to = 0, setup = 0] of setups) {
    const row = from < 0 ? "empty" : `f${from}`;
    changeoverMinutes[row] = { ...changeoverMinutes[row], [`f${to}`]: setup };
  }
  return {
    resources: [{ id: "m", capacity: 1, changeoverMinutes, initialFamily: "empty" }],
    jobs: minutes.map((value, j) => ({
      id: `j${j}`,
      dueMinute: dues[j] ?? 0,
      weight: weights[j] ?? 1,
      operations: [{ id: "o", resource: "m", minutes: value, family: `f${j}` }],
    })),
    objective: { weightedTardiness: 1 },
  };
}

/** One machine, weighted tardiness: durations, weights and due dates of 40 jobs (OR-Library). */
export function tardinessSequence(text: string): ScheduleProblem {
  const numbers = text.trim().split(/\s+/).map(Number);
  const jobs = numbers[0] ?? 0;
  return {
    resources: [{ id: "m", capacity: 1 }],
    jobs: Array.from({ length: jobs }, (_, j) => ({
      id: `j${j}`,
      weight: numbers[1 + jobs + j] ?? 1,
      dueMinute: numbers[1 + 2 * jobs + j] ?? 0,
      operations: [{ id: "o", resource: "m", minutes: numbers[1 + j] ?? 0 }],
    })),
    objective: { weightedTardiness: 1 },
  };
}

/** A flow shop with setups on every machine (Ruiz & Stützle 2008); none before the first job. */
export function setupFlowShop(text: string): ScheduleProblem {
  const rows = rowsOf(text);
  const [jobs = 0, machines = 0] = [rows[0]?.[0], rows[1]?.[0]];
  return {
    resources: Array.from({ length: machines }, (_, m) => ({
      id: `m${m}`,
      capacity: 1,
      changeoverMinutes: matrixOf(rows.slice(2 + jobs + m * jobs, 2 + jobs + (m + 1) * jobs)),
    })),
    jobs: rows.slice(2, 2 + jobs).map((row, j) => ({
      id: `j${j}`,
      operations: row.map((minutes, m) => ({ id: `o${m}`, resource: `m${m}`, minutes, family: `f${j}` })),
    })),
    objective: "makespan",
  };
}

/** A flow shop with several equal machines a stage. */
export function hybridFlowShop(text: string): ScheduleProblem {
  const [, , machines = [], ...rows] = rowsOf(text);
  return {
    resources: machines.map((capacity, stage) => ({ id: `s${stage}`, capacity })),
    jobs: rows.map((row, j) => ({
      id: `j${j}`,
      operations: row.map((minutes, stage) => ({ id: `o${stage}`, resource: `s${stage}`, minutes })),
    })),
    objective: "makespan",
  };
}
