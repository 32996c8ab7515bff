/** Open systems of queueing theory as one problem of the scheduler, run many times over by its own dispatch. */
import { compileProblem, type OperationSpec } from "#engine/schedule";
import { DispatchRun, type DispatchSampler, dispatchModel } from "#engine/simulate";
import { average, type Draw, uniform, unit } from "./simulate";

export interface Visit {
  /** Where it takes place; nowhere in particular when absent. */
  readonly station?: number;
  /** Times of the stay, made from the run's uniform draws; absent: none. */
  readonly time?: (draw: Draw) => Draw;
  /** Chance that the visit fails; the customer then goes back to that visit. */
  readonly fails?: { readonly chance: number; readonly backTo: number };
}

export interface OpenSystem {
  /** Servers of each station. */
  readonly servers: readonly number[];
  readonly customers: number;
  readonly between: (draw: Draw) => Draw;
  /** Customers that come one by one and are served together; absent: each alone. */
  readonly together?: number;
  readonly visits: readonly Visit[];
}

/** One run, in units of time. Of visits that were repeated, the last pass. */
export interface Passage {
  /** Of the last that are served together. */
  readonly arrival: (customer: number) => number;
  readonly arrivalsOf: (customer: number) => readonly number[];
  readonly start: (customer: number, visit: number) => number;
  readonly end: (customer: number, visit: number) => number;
  readonly passes: (customer: number, visit: number) => number;
  /** Customers behind the warm-up, which is a tenth of all. */
  readonly settled: readonly number[];
}

export interface Estimate {
  readonly mean: number;
  /** Of the 99.9 % interval: Student's t for twenty runs is 3.88. */
  readonly halfWidth: number;
}

const runs = 20;

/**
 * Mean and interval of each measure over twenty independent runs. Customers are told apart by arrival: an arrival follows the
 * one before it after a sampled time, and whoever came first is served first.
 */
export function simulated<K extends string>(
  seed: number,
  system: OpenSystem,
  measure: (passage: Passage) => Readonly<Record<K, number>>,
): Readonly<Record<K, Estimate>> {
  const { customers, visits, together = 1 } = system;
  const perCustomer = together + visits.length;
  const operations = Array.from({ length: customers }, (_, customer) => customerOperations(system, customer)).flat();
  const problem = compileProblem({
    resources: system.servers.map((capacity, station) => ({ id: `s${station}`, capacity })),
    jobs: [{ id: "all", operations }],
    objective: "makespan",
  });
  const redoRules = Array.from({ length: customers }, (_, customer) =>
    visits.flatMap(({ fails }, visit) => {
      if (fails === undefined) return [];
      const first = customer * perCustomer + together;
      const redo = Array.from({ length: visit - fails.backTo + 1 }, (_, k) => first + fails.backTo + k);
      return [{ operation: first + visit, redo }];
    }),
  ).flat();
  const rank = Float64Array.from({ length: operations.length }, (_, operation) => operation);
  const run = new DispatchRun(dispatchModel(problem, { rank, redoRules }));
  const at = (customer: number, visit: number) => customer * perCustomer + together + visit;
  const passage: Passage = {
    arrival: (customer) => (run.end[at(customer, -1)] as number) / unit,
    arrivalsOf: (customer) =>
      Array.from({ length: together }, (_, i) => (run.end[customer * perCustomer + i] as number) / unit),
    start: (customer, visit) => (run.start[at(customer, visit)] as number) / unit,
    end: (customer, visit) => (run.end[at(customer, visit)] as number) / unit,
    passes: (customer, visit) => (run.visit[at(customer, visit)] as number) + 1,
    settled: Array.from({ length: Math.floor(customers * 0.9) }, (_, i) => i + Math.ceil(customers / 10)),
  };
  const found = Array.from({ length: runs }, (_, i) => {
    run.run(samplerOf(system, uniform(seed * 1000 + i)));
    return measure(passage);
  });
  const names = Object.keys(found[0] ?? {}) as K[];
  return Object.fromEntries(names.map((name) => [name, estimate(found.map((each) => each[name]))])) as Record<
    K,
    Estimate
  >;
}

/** The arrivals of one customer (or of those served together), each after the one before, and the visits behind them. */
function customerOperations({ together = 1, visits }: OpenSystem, customer: number): readonly OperationSpec[] {
  const arrivals = Array.from({ length: together }, (_, i): OperationSpec => {
    const number = customer * together + i;
    return { id: `a${number}`, minutes: 1, after: number === 0 ? [] : [`a${number - 1}`] };
  });
  const stays = visits.map(
    ({ station }, visit): OperationSpec => ({
      id: `v${customer}-${visit}`,
      minutes: 1,
      ...(station === undefined ? {} : { resource: `s${station}` }),
      after: [visit === 0 ? `a${(customer + 1) * together - 1}` : `v${customer}-${visit - 1}`],
    }),
  );
  return [...arrivals, ...stays];
}

function samplerOf({ between, together = 1, visits }: OpenSystem, draw: Draw): DispatchSampler {
  const perCustomer = together + visits.length;
  const arrival = between(draw);
  const times = visits.map(({ time }) => time?.(draw));
  return {
    minutes(operation) {
      const place = (operation % perCustomer) - together;
      return place < 0 ? Math.max(1, Math.round(arrival() * unit)) : Math.round((times[place]?.() ?? 0) * unit);
    },
    unattended: () => 0,
    redoFrom(operation, _visit, end) {
      const chance = visits[(operation % perCustomer) - together]?.fails?.chance ?? 0;
      return draw() < chance ? end : -1;
    },
    outages: () => null,
  };
}

export function estimate(values: readonly number[]): Estimate {
  const mean = average(values);
  const variance = average(values.map((value) => (value - mean) ** 2)) * (values.length / (values.length - 1));
  return { mean, halfWidth: 3.88 * Math.sqrt(variance / values.length) };
}
