/**
 * Lower bounds that prove an optimum when a schedule meets them: the longest chain of operations, and for every machine the
 * work it must do between the shortest possible head and the shortest possible tail (the one-machine bound without
 * preemption's finer points).
 */
import type { CompiledProblem, ObjectiveWeights } from "#engine/schedule";
import { earliestEnds, heads, tails } from "./heads-tails";

/** No schedule of the problem costs less. */
export function lowerBound(problem: CompiledProblem, weights: ObjectiveWeights): number {
  const makespan = weights.makespan === 0 ? 0 : weights.makespan * makespanBound(problem);
  const tardiness = weights.weightedTardiness === 0 ? 0 : weights.weightedTardiness * tardinessBound(problem);
  return makespan + tardiness;
}

function makespanBound(problem: CompiledProblem): number {
  const chain = earliestEnds(problem).reduce((last, end) => Math.max(last, end), 0);
  const head = heads(problem);
  const tail = tails(problem);
  let bound = chain;
  for (let resource = 0; resource < problem.resourceCount; resource++) {
    bound = Math.max(bound, machineBound(problem, resource, head, tail));
  }
  return bound;
}

/** min head + total occupied minutes / capacity + min tail over the operations that must use the resource. */
function machineBound(problem: CompiledProblem, resource: number, head: Int32Array, tail: Int32Array): number {
  const jobs: { head: number; work: number; tail: number }[] = [];
  for (let operation = 0; operation < problem.operationCount; operation++) {
    const use = (problem.usesOf[operation] ?? []).find(
      ({ members }) => members.length === 1 && members[0] === resource,
    );
    if (use === undefined) continue;
    const held = use.holds ? (problem.unattended[operation] as number) : 0;
    const after = (tail[operation] as number) - held;
    jobs.push({
      head: head[operation] as number,
      work: ((problem.minutes[operation] as number) + held) * use.units,
      tail: after,
    });
  }
  return jobs.length === 0 ? 0 : bestSubset(jobs, problem.capacity[resource] as number);
}

/** max over head thresholds and tail thresholds of min head + work + min tail; every such subset is a valid bound. */
function bestSubset(jobs: readonly { head: number; work: number; tail: number }[], capacity: number): number {
  const byTail = [...jobs].sort((a, b) => b.tail - a.tail);
  let bound = 0;
  for (const { head } of jobs) {
    let work = 0;
    for (const job of byTail) {
      if (job.head < head) continue;
      work += job.work;
      bound = Math.max(bound, head + Math.ceil(work / capacity) + job.tail);
    }
  }
  return bound;
}

/** Each job alone in an empty shop is at least this late. */
function tardinessBound(problem: CompiledProblem): number {
  const ends = earliestEnds(problem);
  let bound = 0;
  for (let job = 0; job < problem.jobCount; job++) {
    let end = 0;
    const last = problem.firstOfJob[job + 1] as number;
    for (let operation = problem.firstOfJob[job] as number; operation < last; operation++) {
      end = Math.max(end, ends[operation] as number);
    }
    bound += (problem.weight[job] as number) * Math.max(0, end - (problem.due[job] as number));
  }
  return bound;
}
