import { describe, expect, it } from "vitest";
import {
  always,
  average,
  batchMean,
  constantWork,
  type Draw,
  dispatched,
  erlang2,
  exponential,
  lognormal,
  type Station,
  station,
  uniform,
} from "./simulate";

/** The expected value lies in the simulation's 99.9 % interval, and that is narrow enough to mean something. */
function expectIn(expected: number, found: { readonly mean: number; readonly halfWidth: number }, narrow: number) {
  expect(Math.abs(found.mean - expected)).toBeLessThanOrEqual(found.halfWidth);
  expect(found.halfWidth / expected).toBeLessThan(narrow);
}

const waits = (customers: readonly { readonly wait: number }[]) => batchMean(customers.map(({ wait }) => wait));

describe("one server, first come first served", () => {
  // M/M/1, Kleinrock vol. 1; Gross & Harris: Wq = ρ/(μ − λ), share that waits = ρ.
  it("waits as M/M/1 does at 80 %, and obeys Little's law", () => {
    const draw = uniform(11);
    const customers = station({
      servers: 1,
      customers: 100_000,
      between: exponential(draw, 1.25),
      service: exponential(draw, 1),
    });
    expectIn(4, waits(customers), 0.25);
    expectIn(0.8, batchMean(customers.map(({ wait }) => (wait > 0 ? 1 : 0))), 0.05);
    const sojourns = customers.map(({ wait, service }) => wait + service).sort((a, b) => a - b);
    // Exponential sojourn with mean 5: median 3.466, P95 14.979.
    expect(sojourns[Math.floor(sojourns.length / 2)]).toBeGreaterThan(3.466 * 0.93);
    expect(sojourns[Math.floor(sojourns.length / 2)]).toBeLessThan(3.466 * 1.07);
    // Little 1961: L = λ W; L counted as time spent in the system by all, over the time of their arrivals.
    expect(average(sojourns) * 0.8).toBeCloseTo(4, 0);
  });

  // Pollaczek 1930, Khinchine 1932: Wq = ρ/(1 − ρ) · (1 + cs²)/2 · te, exact for first come first served.
  it.for([
    ["constant", 2, () => always(1)],
    ["Erlang 2", 3, (draw: Draw) => erlang2(draw, 1)],
    ["lognormal, cv 1.5", 6.5, (draw: Draw) => lognormal(draw, 1, 2.25)],
  ] as const)("waits as M/G/1 does with %s service", ([, expected, service]) => {
    const draw = uniform(23);
    const between = exponential(draw, 1.25);
    const customers = station({ servers: 1, customers: 80_000, between, service: service(draw) });
    expectIn(expected, waits(customers), 0.45);
  });
});

describe("one server that breaks down", () => {
  // Hopp & Spearman, Factory Physics (3rd ed.) ch. 8: both machines work 75 % of the time and take 20 minutes a job on
  // average; rare long stops vary more (ce² 6.25) than frequent short ones (1.0). Waits are Pollaczek–Khinchine's of those.
  it.for([
    ["rarely and long", 744, 248, 6.25],
    ["often and briefly", 114, 38, 1],
  ] as const)("%s waits as its effective times say", ([, toFailure, toRepair, scv]) => {
    const draw = uniform(41);
    // In units of the 20 minutes that a job takes on average.
    const own = lognormal(draw, 15 / 20, 0.05);
    const [failure, repair] = [exponential(draw, toFailure / 20), exponential(draw, toRepair / 20)];
    let untilFailure = failure();
    const service = () => {
      const work = own();
      let total = work;
      for (untilFailure -= work; untilFailure < 0; untilFailure += failure()) total += repair();
      return total;
    };
    const customers = station({ servers: 1, customers: 200_000, between: exponential(draw, 2), service });
    expectIn(1, batchMean(customers.map((customer) => customer.service)), 0.1);
    const load = 0.5;
    expectIn((load / (1 - load)) * ((1 + scv) / 2), waits(customers), 0.3);
  });
});

describe("one server that is set up anew", () => {
  // Hopp & Spearman ch. 8: a setup of 2 after every 10 jobs of 1 makes 1.2 a job.
  it("takes its share of the setups for every job", () => {
    const [runs, each] = [400, 10];
    const jobs = Array.from({ length: runs * each }, (_, j) => ({
      id: `${j}`,
      operations: [{ id: "s", resource: "m", minutes: 1000, family: Math.floor(j / each) % 2 === 0 ? "A" : "B" }],
    }));
    const changeoverMinutes = { A: { B: 2000 }, B: { A: 2000 } };
    const resource = { id: "m", capacity: 1, changeoverMinutes, initialFamily: "B" };
    const run = dispatched({ resources: [resource], jobs }, () => 1000);
    expect(Math.max(...run.end) / (runs * each)).toBe(1200);
  });
});

describe("several servers", () => {
  // Erlang C: share that waits, and Wq over the mean service.
  it.for([
    [2, 1.5, 0.642857142857, 1.28571428571],
    [3, 2, 0.444444444444, 0.444444444444],
    [10, 6, 0.101299242687, 0.0253248106719],
  ] as const)("of %d with a load of %d wait as Erlang's formula says", ([servers, load, share, wait]) => {
    const draw = uniform(31 + servers);
    const customers = station({
      servers,
      customers: 60_000,
      between: exponential(draw, 1 / load),
      service: exponential(draw, 1),
    });
    expectIn(share, batchMean(customers.map((customer) => (customer.wait > 0 ? 1 : 0))), 0.35);
    expectIn(wait, waits(customers), 0.6);
  });
});

describe("a line with constant work in it", () => {
  // Hopp & Spearman, Factory Physics (3rd ed.) ch. 7: Penny Fab one and two, best case TH = min(w/T0, rb).
  const one: readonly Station[] = Array.from({ length: 4 }, () => ({ hours: 2, machines: 1 }));
  const two: readonly Station[] = [
    { hours: 2, machines: 1 },
    { hours: 5, machines: 2 },
    { hours: 10, machines: 6 },
    { hours: 3, machines: 2 },
  ];
  it.for([
    [1, 0.125, 0.05],
    [2, 0.25, 0.1],
    [4, 0.5, 0.2],
    [6, 0.5, 0.3],
    [8, 0.5, 0.4],
    [12, 0.5, 0.4],
  ] as const)("of %d jobs runs at the best case when nothing varies", ([inWork, first, second]) => {
    expect(constantWork(one, inWork, 60, always(1))).toBeCloseTo(first, 3);
    expect(constantWork(two, inWork, 60, always(1))).toBeCloseTo(second, 2);
  });

  // Hopp & Spearman ch. 7, worst case: all jobs move from station to station together, CT = w T0 and TH = 1/T0 = 0.125.
  it.for([1, 2, 4, 6, 12])("of %d jobs that move together runs at the worst case", (inWork) => {
    const operations = one.flatMap(({ hours }, s) =>
      Array.from({ length: inWork }, (_, j) => ({
        id: `${s}-${j}`,
        resource: `s${s}`,
        minutes: hours,
        after: s === 0 ? [] : Array.from({ length: inWork }, (_, other) => `${s - 1}-${other}`),
      })),
    );
    const resources = one.map((_, s) => ({ id: `s${s}`, capacity: 1 }));
    const run = dispatched({ resources, jobs: [{ id: "all", operations }] }, () => 2);
    expect(Math.max(...run.end)).toBe(8 * inWork);
  });

  // Gordon & Newell 1967, Buzen 1973: closed networks of exponential stations; fab one is the practical worst case exactly.
  it.for([
    [one, 4, 0.285714285714],
    [one, 8, 0.363636363636],
    [two, 8, 0.310219257982],
  ] as const)("of exponential stations runs as the closed network does", ([stations, inWork, expected]) => {
    const draw = uniform(7);
    const found = constantWork(stations, inWork, Math.ceil(16_000 / inWork), exponential(draw, 1));
    expect(Math.abs(found / expected - 1)).toBeLessThan(0.03);
  });
});

describe("list scheduling without idling", () => {
  // R. L. Graham 1969, SIAM J. Appl. Math. 17(2): more machines, shorter work or fewer precedences can take longer.
  const times = [3, 2, 2, 2, 4, 4, 4, 4, 9];
  const before: Readonly<Record<number, readonly number[]>> = { 9: [1], 5: [4], 6: [4], 7: [4], 8: [4] };
  const makespan = (machines: number, less: number, after = before) => {
    const operations = times.map((minutes, i) => ({
      id: `${i + 1}`,
      resource: "m",
      minutes: minutes - less,
      after: (after[i + 1] ?? []).map(String),
    }));
    const run = dispatched(
      { resources: [{ id: "m", capacity: machines }], jobs: [{ id: "all", operations }] },
      (operation) => (times[operation] as number) - less,
    );
    return Math.max(...run.end);
  };

  it("shows Graham's anomalies exactly", () => {
    expect(makespan(3, 0)).toBe(12);
    expect(makespan(4, 0)).toBe(15);
    expect(makespan(3, 1)).toBe(13);
    expect(makespan(3, 0, { 9: [1], 7: [4], 8: [4] })).toBe(16);
  });
});

describe("work that is done again", () => {
  // Geometric number of passes: visits 1/(1 − p); with constant passes of m the busy time is m/(1 − p) a job.
  it("takes as many passes, and as long, as the chance of failing says", () => {
    const draw = uniform(5);
    const p = 0.3;
    const count = 20_000;
    const jobs = Array.from({ length: count }, (_, j) => ({
      id: `${j}`,
      operations: [{ id: "s", resource: "m", minutes: 10 }],
    }));
    const fails = () => (draw() < p ? 1 : 0);
    const run = dispatched({ resources: [{ id: "m", capacity: 1 }], jobs }, () => 10, undefined, fails);
    const passes = Array.from(run.visit, (visit) => visit + 1);
    expectIn(1 / (1 - p), batchMean(passes), 0.05);
    // Variance p/(1 − p)² of a geometric number.
    expectIn(p / (1 - p) ** 2, batchMean(passes.map((count) => (count - 1 / (1 - p)) ** 2)), 0.15);
    expect(Math.max(...run.end) / count).toBeCloseTo(10 / (1 - p), 0);
  });
});
