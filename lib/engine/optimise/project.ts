/**
 * Problems whose time can run backwards: precedence and capacities only, the makespan to be shortened (project scheduling).
 * A schedule of the mirrored problem read backwards is a schedule, which forward–backward improvement makes use of.
 */

import type { ObjectiveWeights } from "#engine/schedule";
import { type CompiledProblem, compileProblem } from "#engine/schedule";

/** The problem with every precedence turned round, or null when its time cannot run backwards. */
export function mirroredProject(problem: CompiledProblem, weights: ObjectiveWeights): CompiledProblem | null {
  if (weights.makespan <= 0 || weights.weightedTardiness !== 0 || weights.changeover !== 0) return null;
  const isReversible =
    problem.release.every((minute) => minute === 0) &&
    problem.unattended.every((minutes) => minutes === 0) &&
    problem.maxGap.every((gap) => gap === -1) &&
    problem.fixedStart.every((start) => start === -1) &&
    problem.calendarOf.every((calendar) => calendar === null) &&
    problem.changeover.every((table) => table === null) &&
    problem.unavailable.every((away) => away === null) &&
    problem.deadline.every((deadline) => !Number.isFinite(deadline));
  if (!isReversible) return null;
  const { jobs } = problem.problem;
  return compileProblem({
    ...problem.problem,
    jobs: jobs.map((job, j) => ({
      ...job,
      operations: job.operations.map((operation, position) => {
        const index = (problem.firstOfJob[j] as number) + position;
        const followers = problem.successors.subarray(
          problem.successorsFrom[index] as number,
          problem.successorsFrom[index + 1] as number,
        );
        return { ...operation, after: Array.from(followers, (next) => problem.operations[next]?.id ?? "") };
      }),
    })),
  });
}
