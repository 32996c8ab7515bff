/** Sequences to begin with on a line: by the ATCS rule over a grid of its scales, and by insertion. */
import type { Line, Stage } from "./line";
import type { LineSchedule } from "./line-schedule";
import { apparentTardinessCostWithSetups } from "./rules";

const lookAheads = [0.5, 1, 2, 4, 8];
const setupScales = [0.1, 0.3, 1, 3];

/** One sequence for each pair of scales; none for lines of several stages, on which the rule says nothing. */
export function setupTardinessOrders(line: Line): readonly Int32Array[] {
  const [stage, second] = line.stages;
  if (stage === undefined || second !== undefined || stage.machines > 1) return [];
  const scales = stage.changeover === null ? [1] : setupScales;
  return lookAheads.flatMap((lookAhead) =>
    scales.map((setupScale) => setupTardinessOrder(line, stage, lookAhead, setupScale)),
  );
}

function setupTardinessOrder(line: Line, stage: Stage, lookAhead: number, setupScale: number): Int32Array {
  const { jobCount, due, weight, familyCount } = line;
  const setupMinutes = (family: number, job: number) =>
    family < 0 || stage.changeover === null
      ? 0
      : (stage.changeover[family * familyCount + (stage.familyOf[job] as number)] as number);
  const left = Array.from({ length: jobCount }, (_, job) => job);
  const meanMinutes = Math.max(1, mean(left.map((job) => stage.minutes[job] as number)));
  const meanSetupMinutes = mean(
    left.flatMap((before) => left.map((job) => setupMinutes(stage.familyOf[before] as number, job))),
  );
  const order: number[] = [];
  let time = 0;
  let family = stage.initialFamily;
  const indexOf = (job: number) => {
    const minutes = Math.max(1, stage.minutes[job] as number);
    const own = {
      minutes,
      due: due[job] as number,
      weight: weight[job] as number,
      setupMinutes: setupMinutes(family, job),
    };
    return apparentTardinessCostWithSetups(own, { time, lookAhead, meanMinutes, setupScale, meanSetupMinutes });
  };
  while (left.length > 0) {
    const released = left.filter((job) => (stage.release[job] as number) <= time);
    const next = highest(released.length > 0 ? released : left, indexOf);
    time = Math.max(time + setupMinutes(family, next), stage.release[next] as number) + (stage.minutes[next] as number);
    family = stage.familyOf[next] as number;
    order.push(next);
    left.splice(left.indexOf(next), 1);
  }
  return Int32Array.from(order);
}

/** Jobs by decreasing work, each put in where the sequence so far costs least. */
export function insertedByWork(line: Line, schedule: LineSchedule): Int32Array {
  const work = Array.from({ length: line.jobCount }, (_, job) =>
    line.stages.reduce((sum, stage) => sum + (stage.minutes[job] as number), 0),
  );
  const jobs = [...work.keys()].sort((a, b) => (work[b] as number) - (work[a] as number) || a - b);
  let order: Int32Array = Int32Array.of();
  for (const job of jobs) {
    let best = order;
    let least = Number.POSITIVE_INFINITY;
    for (let place = 0; place <= order.length; place++) {
      const candidate = Int32Array.of(...order.subarray(0, place), job, ...order.subarray(place));
      const cost = schedule.costOf(candidate, candidate.length, least);
      if (cost >= least) continue;
      best = candidate;
      least = cost;
    }
    order = best;
  }
  return order;
}

function highest(jobs: readonly number[], indexOf: (job: number) => number): number {
  let found = jobs[0] as number;
  let most = indexOf(found);
  for (const job of jobs) {
    const index = indexOf(job);
    if (index <= most) continue;
    found = job;
    most = index;
  }
  return found;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}
