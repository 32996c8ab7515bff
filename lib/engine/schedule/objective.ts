/** What a schedule costs: makespan, weighted tardiness, changeover minutes, and deadlines as a wall. */
import type { Placement } from "./place";
import type { Objective } from "./types";

export interface ObjectiveWeights {
  readonly makespan: number;
  readonly weightedTardiness: number;
  readonly changeover: number;
}

export function objectiveWeights(objective: Objective): ObjectiveWeights {
  if (objective === "makespan") return { makespan: 1, weightedTardiness: 0, changeover: 0 };
  return {
    makespan: objective.makespan ?? 0,
    weightedTardiness: objective.weightedTardiness ?? 0,
    changeover: objective.changeover ?? 0,
  };
}

/** A minute past a deadline outweighs everything else. */
const minutePastDeadline = 1e6;

export interface Costs {
  readonly makespanMinutes: number;
  readonly weightedTardinessMinutes: number;
  readonly changeoverMinutes: number;
  readonly minutesPastDeadlines: number;
  readonly objectiveValue: number;
}

/** End of each job: the latest end of its operations, unattended phases included. */
function jobEnds(placement: Placement): Int32Array {
  const ends = new Int32Array(placement.problem.jobCount);
  const { jobOf, operationCount } = placement.problem;
  for (let operation = 0; operation < operationCount; operation++) {
    const job = jobOf[operation] as number;
    const end = placement.end[operation] as number;
    if (end > (ends[job] as number)) ends[job] = end;
  }
  return ends;
}

export function costsOf(placement: Placement, weights: ObjectiveWeights): Costs {
  const { problem } = placement;
  const ends = jobEnds(placement);
  let makespanMinutes = 0;
  let weightedTardinessMinutes = 0;
  let minutesPastDeadlines = 0;
  for (let job = 0; job < problem.jobCount; job++) {
    const end = ends[job] as number;
    if (end > makespanMinutes) makespanMinutes = end;
    weightedTardinessMinutes += (problem.weight[job] as number) * Math.max(0, end - (problem.due[job] as number));
    minutesPastDeadlines += Math.max(0, end - (problem.deadline[job] as number));
  }
  const changeoverMinutes = totalChangeover(placement);
  const objectiveValue =
    weights.makespan * makespanMinutes +
    weights.weightedTardiness * weightedTardinessMinutes +
    weights.changeover * changeoverMinutes;
  return { makespanMinutes, weightedTardinessMinutes, changeoverMinutes, minutesPastDeadlines, objectiveValue };
}

/** What the search minimises: the objective, with deadlines as a wall. */
export function searchCost(placement: Placement, weights: ObjectiveWeights): number {
  const costs = costsOf(placement, weights);
  return costs.objectiveValue + minutePastDeadline * costs.minutesPastDeadlines;
}

/** Sum of the changeovers on every resource that has them. */
function totalChangeover({ problem, timelines }: Placement): number {
  let total = 0;
  for (let resource = 0; resource < problem.resourceCount; resource++) total += timelines.changeoversOn(resource);
  return total;
}
