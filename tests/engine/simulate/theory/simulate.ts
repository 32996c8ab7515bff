/** Systems of queueing theory as problems of the scheduler, run by its own dispatch with sampled minutes. */
import { normalQuantile, seededRandom, unitFromU32 } from "#engine/math";
import { compileProblem, type JobSpec } from "#engine/schedule";
import { DispatchRun, type DispatchSampler, dispatchModel } from "#engine/simulate";

/** Minutes that stand for one unit of time: rounding to whole minutes is then of no account. */
export const unit = 1000;

export type Draw = () => number;

/** Uniform draws in (0, 1) of a stream of their own. */
export function uniform(seed: number): Draw {
  const next = seededRandom(seed);
  return () => unitFromU32(next());
}

export const exponential =
  (draw: Draw, mean: number): Draw =>
  () =>
    -mean * Math.log(draw());

/** Sum of as many exponential phases; squared coefficient of variation 1/phases. */
export const erlang =
  (draw: Draw, mean: number, phases: number): Draw =>
  () => {
    let product = 1;
    for (let phase = 0; phase < phases; phase++) product *= draw();
    return (-mean / phases) * Math.log(product);
  };

/** One of two exponentials with balanced means; squared coefficient of variation above 1. */
export function hyperexponential(draw: Draw, mean: number, scv: number): Draw {
  const chance = (1 + Math.sqrt((scv - 1) / (scv + 1))) / 2;
  return () => -Math.log(draw()) * (draw() < chance ? mean / (2 * chance) : mean / (2 * (1 - chance)));
}

export const always =
  (value: number): Draw =>
  () =>
    value;

/** Lognormal with a mean and a squared coefficient of variation. */
export function lognormal(draw: Draw, mean: number, scv: number): Draw {
  const variance = Math.log(1 + scv);
  const mu = Math.log(mean) - variance / 2;
  return () => Math.exp(mu + Math.sqrt(variance) * normalQuantile(draw()));
}

interface Customer {
  readonly wait: number;
  readonly service: number;
}

/** Customers of one station in order of arrival, first come first served; the first tenth is warm-up and left out. */
export function station(settings: {
  readonly servers: number;
  readonly customers: number;
  readonly between: Draw;
  readonly service: Draw;
}): readonly Customer[] {
  const { servers, customers, between, service } = settings;
  let clock = 0;
  const arrivals = Array.from({ length: customers }, () => {
    clock += between();
    return Math.round(clock * unit);
  });
  const minutes = Int32Array.from(arrivals, () => Math.max(1, Math.round(service() * unit)));
  const jobs = arrivals.map(
    (releaseMinute, index): JobSpec => ({
      id: `${index}`,
      releaseMinute,
      operations: [{ id: "s", resource: "server", minutes: 1 }],
    }),
  );
  const run = dispatched({ resources: [{ id: "server", capacity: servers }], jobs }, (operation) => {
    return minutes[operation] as number;
  });
  return arrivals
    .map((arrival, index) => ({
      wait: ((run.start[index] as number) - arrival) / unit,
      service: (minutes[index] as number) / unit,
    }))
    .slice(Math.floor(customers / 10));
}

/** A dispatch with these minutes; ranks in the order of the operations unless told. */
export function dispatched(
  problem: Omit<Parameters<typeof compileProblem>[0], "objective">,
  minutes: (operation: number, visit: number) => number,
  rankOf: (operation: number) => number = (operation) => operation,
): DispatchRun {
  const compiled = compileProblem({ ...problem, objective: "makespan" });
  const operations = Array.from({ length: compiled.operationCount }, (_, operation) => operation);
  const rank = Float64Array.from(operations, rankOf);
  const run = new DispatchRun(dispatchModel(compiled, { rank }));
  const sampler: DispatchSampler = {
    minutes,
    unattended: () => 0,
    redoFrom: () => -1,
    outages: () => null,
  };
  run.run(sampler);
  return run;
}

export interface Station {
  readonly hours: number;
  readonly machines: number;
}

/**
 * A line with a constant number of jobs in it: each begins anew when it has passed the last station. Throughput an hour, and
 * hours that a loop takes, between a quarter and three quarters of the loops.
 */
export function constantWork(
  stations: readonly Station[],
  inWork: number,
  loops: number,
  factor: Draw,
): { readonly throughput: number; readonly cycle: number } {
  const operations = (job: number) =>
    Array.from({ length: loops * stations.length }, (_, at) => ({
      id: `${at}`,
      resource: `s${at % stations.length}`,
      minutes: 1,
      job,
    }));
  const jobs = Array.from({ length: inWork }, (_, job): JobSpec => ({ id: `j${job}`, operations: operations(job) }));
  const perJob = loops * stations.length;
  const run = dispatched(
    { resources: stations.map(({ machines }, s) => ({ id: `s${s}`, capacity: machines })), jobs },
    (operation) => {
      const { hours } = stations[(operation % perJob) % stations.length] as Station;
      return Math.max(1, Math.round(hours * unit * factor()));
    },
    // Whoever has gone round least goes first, or the last jobs would go round alone in the end.
    (operation) => (operation % perJob) * inWork + Math.floor(operation / perJob),
  );
  const endOf = (job: number, loop: number) => run.end[job * perJob + loop * stations.length - 1] as number;
  const jobNumbers = Array.from({ length: inWork }, (_, job) => job);
  const ends = jobNumbers.flatMap((job) => Array.from({ length: loops }, (_, loop) => endOf(job, loop + 1)));
  ends.sort((a, b) => a - b);
  const [from, to] = [Math.floor(ends.length / 4), Math.floor((3 * ends.length) / 4)];
  const [first, last] = [Math.floor(loops / 4), Math.floor((3 * loops) / 4)];
  return {
    throughput: ((to - from) * unit) / ((ends[to] as number) - (ends[from] as number)),
    cycle: average(jobNumbers.map((job) => (endOf(job, last) - endOf(job, first)) / ((last - first) * unit))),
  };
}

/** Mean of batches with its half width of confidence: Student's t for twenty batches at 99.9 % is 3.88. */
export function batchMean(values: readonly number[]): { readonly mean: number; readonly halfWidth: number } {
  const batches = 20;
  const size = Math.floor(values.length / batches);
  const means = Array.from({ length: batches }, (_, b) => average(values.slice(b * size, (b + 1) * size)));
  const mean = average(means);
  const variance = average(means.map((each) => (each - mean) ** 2)) * (batches / (batches - 1));
  return { mean, halfWidth: 3.88 * Math.sqrt(variance / batches) };
}

export function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
