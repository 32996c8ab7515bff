/** Heads and tails: the least time before an operation can begin and after it has ended, in an empty shop. */

import type { CompiledProblem } from "#engine/schedule";
import { nextOpen, nextOpenRun, workEnd } from "#engine/schedule";

/** Earliest possible start of every operation by precedence, releases and calendars. */
export function heads(problem: CompiledProblem): Int32Array {
  return passForward(problem).start;
}

/** Earliest possible end, unattended phase included. */
export function earliestEnds(problem: CompiledProblem): Int32Array {
  return passForward(problem).end;
}

function passForward(problem: CompiledProblem): { readonly start: Int32Array; readonly end: Int32Array } {
  const start = new Int32Array(problem.operationCount);
  const end = new Int32Array(problem.operationCount);
  for (const operation of problem.topological) {
    let earliest = problem.release[operation] as number;
    const last = problem.predecessorsFrom[operation + 1] as number;
    for (let i = problem.predecessorsFrom[operation] as number; i < last; i++) {
      earliest = Math.max(earliest, end[problem.predecessors[i] as number] as number);
    }
    if (problem.fixedStart[operation] !== -1) earliest = problem.fixedStart[operation] as number;
    const minutes = problem.minutes[operation] as number;
    const calendar = problem.calendarOf[operation] ?? null;
    if (calendar !== null && minutes > 0 && problem.fixedStart[operation] === -1) {
      earliest =
        problem.isUninterrupted[operation] === 1
          ? nextOpenRun(calendar, earliest, minutes)
          : nextOpen(calendar, earliest);
    }
    start[operation] = earliest;
    end[operation] =
      (calendar === null ? earliest + minutes : workEnd(calendar, earliest, minutes)) +
      (problem.unattended[operation] as number);
  }
  return { start, end };
}

/** Least clock minutes from the end of an operation's work to the end of its job: its own cure and all that must follow. */
export function tails(problem: CompiledProblem): Int32Array {
  const tail = new Int32Array(problem.operationCount);
  for (let at = problem.operationCount - 1; at >= 0; at--) {
    const operation = problem.topological[at] as number;
    let longest = 0;
    const last = problem.successorsFrom[operation + 1] as number;
    for (let i = problem.successorsFrom[operation] as number; i < last; i++) {
      const successor = problem.successors[i] as number;
      longest = Math.max(longest, (problem.minutes[successor] as number) + (tail[successor] as number));
    }
    tail[operation] = longest + (problem.unattended[operation] as number);
  }
  return tail;
}
