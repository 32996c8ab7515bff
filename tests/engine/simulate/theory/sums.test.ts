import { describe, expect, it } from "vitest";
import { lognormalTable, normalQuantile, sampleTable } from "#engine/math";
import { expectIn } from "./expect-in";
import { type OpenSystem, simulated } from "./open-system";
import { always, average, type Draw, dispatched, exponential, lognormal, uniform, unit } from "./simulate";

/** Lognormal as the shop's runs draw it: from the stored table of 4,096 quantiles. */
function tabled(mean: number, cv: number): (draw: Draw) => Draw {
  const table = lognormalTable(mean, cv * mean);
  return (draw) => () => sampleTable(table, Math.floor(draw() * 2 ** 32));
}

const dozen = [
  [1.5, 0.2],
  [1, 0.15],
  [0.75, 0.2],
  [1.25, 0.25],
  [0.5, 0.3],
  [2.5, 0.15],
  [1, 0.2],
  [0.75, 0.25],
  [1, 0.2],
  [2, 0.35],
  [0.5, 0.2],
  [0.5, 0.15],
] as const;

describe("operations one after another", () => {
  // Moments exact; quantiles by convolution on 2¹⁹ bins (computed apart from this code).
  it.for([
    ["three alike", [0, 1, 2].map(() => [10, 0.3] as const), 30, 27, [29.5533819379, 34.1544255324, 39.2279533761]],
    ["twelve of a pair", dozen, 13.25, 1.0165625, [13.1824250793, 14.0563336554, 15.0078127754]],
    [
      "two wide ones",
      [
        [4, 1],
        [6, 0.5],
      ],
      10,
      25,
      [8.93647561617, 13.0113664998, 19.0487866083],
    ],
  ] as const)("take the sum of lognormal times: %s", ([, terms, mean, variance, quantiles]) => {
    const system: OpenSystem = {
      servers: [],
      customers: 6_000,
      between: (draw) => exponential(draw, 1),
      visits: terms.map(([each, cv]) => ({ time: tabled(each, cv) })),
    };
    const found = simulated(31, system, ({ settled, arrival, end }) => {
      const times = settled.map((each) => end(each, terms.length - 1) - arrival(each));
      const below = quantiles.map((limit) => average(times.map((time) => (time <= limit ? 1 : 0))));
      const spread = average(times.map((time) => (time - mean) ** 2));
      return { mean: average(times), variance: spread, p50: below[0] ?? 0, p80: below[1] ?? 0, p95: below[2] ?? 0 };
    });
    expectIn(mean, found.mean, 0.01);
    expectIn(variance, found.variance, 0.06);
    expectIn(0.5, found.p50, 0.02);
    expectIn(0.8, found.p80, 0.01);
    expectIn(0.95, found.p95, 0.005);
  });

  // What all share does not average out: Var(F S) = (1 + cv²)(σ² + m²) − m² for a factor of mean 1 (product of independents).
  it.for([
    [0, 1.0165625],
    [0.05, 1.45801015625],
    [0.1, 2.782353125],
    [0.2, 8.079725],
  ] as const)("vary with a shared factor of cv %d as the product does", ([cv, variance]) => {
    let factor = 1;
    const system: OpenSystem = {
      servers: [],
      customers: 6_000,
      // One after another in time, so that a factor is drawn and used before the next customer comes.
      between: () => always(40),
      visits: dozen.map(([each, own], first) => ({
        time: (draw) => {
          const [shared, time] = [lognormal(draw, 1, cv ** 2), tabled(each, own)(draw)];
          return () => {
            if (first === 0) factor = shared();
            return factor * time();
          };
        },
      })),
    };
    const found = simulated(32, system, ({ settled, arrival, end }) => {
      const times = settled.map((each) => end(each, dozen.length - 1) - arrival(each));
      return { mean: average(times), variance: average(times.map((time) => (time - 13.25) ** 2)) };
    });
    expectIn(13.25, found.mean, 0.01);
    expectIn(variance, found.variance, 0.05);
  });
});

describe("branches that join", () => {
  // Expected value and quantiles of the largest of k standard normals (order statistics).
  it.for([
    [2, 0.564189583548, 0.544952135617, 1.95450832721],
    [3, 0.846284375322, 0.819328619834, 2.12120142968],
    [5, 1.16296447364, 1.1289975353, 2.31867920983],
  ] as const)("are waited for as the latest of %d is", ([branches, mean, p50, p95]) => {
    const [jobs, far] = [20_000, 10];
    const draw = uniform(33);
    // Spread over time, or all would stand in one long queue.
    const release = (job: number) => 20 * unit * job;
    const operations = [
      ...Array.from({ length: branches }, (_, b) => ({ id: `${b}`, minutes: 1, after: [] })),
      { id: "join", minutes: 1, after: Array.from({ length: branches }, (_, b) => `${b}`) },
    ];
    const run = dispatched(
      {
        resources: [],
        jobs: Array.from({ length: jobs }, (_, j) => ({ id: `${j}`, releaseMinute: release(j), operations })),
      },
      (operation) => (operation % (branches + 1) === branches ? 1 : Math.round((far + normalQuantile(draw())) * unit)),
    );
    const latest = Array.from({ length: jobs }, (_, j) => {
      return ((run.start[j * (branches + 1) + branches] as number) - release(j)) / unit - far;
    });
    // 99.9 % intervals: 3.29 standard errors; those of the share below a quantile are √(p(1 − p)/n).
    const spread = Math.sqrt(average(latest.map((value) => (value - mean) ** 2)) / jobs);
    expect(Math.abs(average(latest) - mean)).toBeLessThan(3.29 * spread);
    for (const [p, limit] of [
      [0.5, p50],
      [0.95, p95],
    ] as const) {
      const below = latest.filter((value) => value <= limit).length / jobs;
      expect(Math.abs(below - p)).toBeLessThan(3.29 * Math.sqrt((p * (1 - p)) / jobs));
    }
  });
});
