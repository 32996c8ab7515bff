import { describe, expect, it } from "vitest";
import { expectIn } from "./expect-in";
import { estimate } from "./open-system";
import {
  always,
  batchMean,
  constantWork,
  dispatched,
  exponential,
  lognormal,
  type Station,
  station,
  uniform,
} from "./simulate";

const waits = (customers: readonly { readonly wait: number }[]) => batchMean(customers.map(({ wait }) => wait));

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
    [1, 8, 20],
    [2, 8, 20],
    [3, 8, 20],
    [4, 8, 20],
    [5, 10, 20],
    [6, 12, 20],
    [8, 16, 20],
    [10, 20, 25],
    [12, 24, 30],
    [20, 40, 50],
  ] as const)("of %d jobs runs at the best case when nothing varies", ([inWork, first, second]) => {
    for (const [stations, cycle] of [
      [one, first],
      [two, second],
    ] as const) {
      const found = constantWork(stations, inWork, 80, always(1));
      expect(found.cycle).toBeCloseTo(cycle, 9);
      expect(found.throughput).toBeCloseTo(inWork / cycle, 2);
    }
  });

  // Little 1961: 24 in work at 1.6 a day take 15 days (the workshop's own figures).
  it("of 24 pairs at 1.6 a day takes each 15 days", () => {
    expect(constantWork([{ hours: 1 / 1.6, machines: 1 }], 24, 80, always(1)).cycle).toBeCloseTo(15, 9);
  });

  // Hopp & Spearman ch. 7, HAL: 47,600 in work at 1,400 a day take each 34 days; here in lots of a hundred.
  it("of 47,600 pieces at 1,400 a day takes each 34 days", () => {
    const [perDay, inWork] = [14, 476];
    const jobs = Array.from({ length: inWork + 5 * perDay }, (_, j) => ({
      id: `${j}`,
      releaseMinute: Math.max(0, j + 1 - inWork),
      operations: [{ id: "m", resource: "m", minutes: 1 }],
    }));
    const run = dispatched({ resources: [{ id: "m", capacity: 1 }], jobs }, () => 1);
    const last = jobs.length - 1;
    expect(((run.end[last] as number) - (jobs[last]?.releaseMinute ?? 0)) / perDay).toBeCloseTo(34, 9);
  });

  // Hopp & Spearman ch. 7, worst case: all jobs move from station to station together, CT = w T0 and TH = 1/T0 = 0.125.
  it.for([1, 2, 3, 4, 5, 6, 8, 10, 12, 20])("of %d jobs that move together runs at the worst case", (inWork) => {
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

  // Gordon & Newell 1967, Buzen 1973: closed networks of exponential stations, throughput with 1, 2 … 20 jobs. Fab one is the
  // practical worst case exactly, w/(w + W0 − 1) · rb; so is a line of eight equal stations that has the rate and the raw time
  // of fab two.
  const eight: readonly Station[] = Array.from({ length: 8 }, () => ({ hours: 2.5, machines: 1 }));
  it.for([
    [1, 0.125, 0.05, 0.05],
    [2, 0.2, 0.0990099009901, 0.0888888888889],
    [3, 0.25, 0.145463274124, 0.12],
    [4, 0.285714285714, 0.188183214383, 0.145454545455],
    [5, 0.3125, 0.226365704645, 0.166666666667],
    [6, 0.333333333333, 0.259573223816, 0.184615384615],
    [8, 0.363636363636, 0.310219257982, 0.213333333333],
    [10, 0.384615384615, 0.342734992071, 0.235294117647],
    [12, 0.4, 0.363226964578, 0.252631578947],
    [20, 0.434782608696, 0.393567820104, 0.296296296296],
  ] as const)("of %d jobs at exponential stations runs as the closed network does", ([inWork, ...expected]) => {
    [one, two, eight].forEach((stations, line) => {
      const found = Array.from({ length: 20 }, (_, i) => {
        const draw = uniform(700 + i);
        return constantWork(stations, inWork, Math.ceil(1200 / inWork), exponential(draw, 1));
      });
      const throughput = expected[line] ?? 0;
      expectIn(throughput, estimate(found.map((run) => run.throughput)), 0.06);
      expectIn(inWork / throughput, estimate(found.map((run) => run.cycle)), 0.06);
    });
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
