/**
 * The least cost of a tiny shop without calendars, by trying every choice of machines and every sequence on every machine.
 * A choice of sequences is a system of differences (start of one at least so long after the start of the other, gaps the
 * other way round), of which the longest ways are the earliest starts: nothing is placed, so nothing can be placed too early.
 * Jobs are chains, machines do one thing at a time. Shares no code with the scheduler.
 */
import type { OperationSpec, ScheduleProblem } from "#engine/schedule";

/** start[to] ≥ start[from] + minutes. */
interface Arc {
  readonly from: number;
  readonly to: number;
  readonly minutes: number;
}

interface Step {
  readonly job: number;
  readonly operation: OperationSpec;
  /** Minutes from start to the moment its follower may begin. */
  readonly length: number;
  readonly release: number;
  readonly machines: readonly string[];
}

export function leastCostOfSequences(problem: ScheduleProblem): number {
  const steps = problem.jobs.flatMap((job, j) =>
    job.operations.map((operation): Step => {
      const use = operation.uses?.[0];
      const machines = use === undefined ? [operation.resource ?? ""] : "anyOf" in use ? use.anyOf : [use.resource];
      return {
        job: j,
        operation,
        length: operation.minutes + (operation.unattendedMinutes ?? 0),
        release: Math.max(job.releaseMinute ?? 0, operation.releaseMinute ?? 0),
        machines,
      };
    }),
  );
  const chains = steps.flatMap((step, at): readonly Arc[] => {
    const before = steps[at - 1];
    if (before === undefined || before.job !== step.job) return [];
    const gap = step.operation.maxGapMinutes;
    const forward = { from: at - 1, to: at, minutes: before.length };
    return gap === undefined ? [forward] : [forward, { from: at, to: at - 1, minutes: -before.length - gap }];
  });
  const releases = steps.map(({ release }) => release);
  let least = Number.POSITIVE_INFINITY;
  for (const choice of choices(steps.map(({ machines }) => machines))) {
    const tryMachine = (machine: number, arcs: readonly Arc[], lowest: readonly number[], changeover: number): void => {
      const starts = longestWays(lowest, arcs);
      if (starts === null) return;
      const cost = costOf(problem, steps, starts, changeover);
      if (cost >= least) return;
      const resource = problem.resources[machine];
      if (resource === undefined) {
        least = cost;
        return;
      }
      const on = steps.flatMap((_, at) => (choice[at] === resource.id ? [at] : []));
      for (const sequence of orders(on)) {
        const minutes = sequence.map((at, place) => {
          const before = place === 0 ? resource.initialFamily : steps[sequence[place - 1] ?? 0]?.operation.family;
          return resource.changeoverMinutes?.[before ?? ""]?.[steps[at]?.operation.family ?? ""] ?? 0;
        });
        const [first] = sequence;
        const next = sequence.slice(1).map((to, place): Arc => {
          const from = sequence[place] ?? 0;
          return { from, to, minutes: occupied(steps[from] as Step, resource.id) + (minutes[place + 1] ?? 0) };
        });
        tryMachine(
          machine + 1,
          [...arcs, ...next],
          lowest.map((minute, at) => (at === first ? Math.max(minute, minutes[0] ?? 0) : minute)),
          changeover + minutes.reduce((sum, value) => sum + value, 0),
        );
      }
    };
    tryMachine(0, chains, releases, 0);
  }
  return least;
}

function occupied({ operation, length }: Step, machine: string): number {
  return operation.holdsDuring?.includes(machine) ? length : operation.minutes;
}

function choices(machines: readonly (readonly string[])[]): readonly (readonly string[])[] {
  return machines.reduce<readonly (readonly string[])[]>(
    (chosen, each) => chosen.flatMap((so) => each.map((machine) => [...so, machine])),
    [[]],
  );
}

function orders(list: readonly number[]): readonly (readonly number[])[] {
  if (list.length === 0) return [[]];
  return list.flatMap((first) => orders(list.filter((other) => other !== first)).map((rest) => [first, ...rest]));
}

/** Least starts that keep every arc (Bellman and Ford); null when there are none. */
function longestWays(lowest: readonly number[], arcs: readonly Arc[]): readonly number[] | null {
  const starts = [...lowest];
  for (let round = 0; round <= starts.length; round++) {
    let isMoved = false;
    for (const { from, to, minutes } of arcs) {
      const start = (starts[from] as number) + minutes;
      if (start <= (starts[to] as number)) continue;
      starts[to] = start;
      isMoved = true;
    }
    if (!isMoved) return starts;
  }
  return null;
}

function costOf(
  problem: ScheduleProblem,
  steps: readonly Step[],
  starts: readonly number[],
  changeoverMinutes: number,
): number {
  const weights = problem.objective === "makespan" ? { makespan: 1 } : problem.objective;
  const ends = problem.jobs.map((_, job) =>
    Math.max(...steps.flatMap((step, at) => (step.job === job ? [(starts[at] as number) + step.length] : []))),
  );
  const tardiness = problem.jobs.reduce(
    (sum, job, j) => sum + (job.weight ?? 1) * Math.max(0, (ends[j] as number) - (job.dueMinute ?? Number.MAX_VALUE)),
    0,
  );
  return (
    (weights.makespan ?? 0) * Math.max(...ends) +
    (weights.weightedTardiness ?? 0) * tardiness +
    (weights.changeover ?? 0) * changeoverMinutes
  );
}
