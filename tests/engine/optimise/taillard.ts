/**
 * E. Taillard's generator of benchmark problems (European Journal of Operational Research 64, 1993, 278–285): the
 * minimal-standard linear congruential generator by Schrage's method, from the published time and machine seeds. The seeds
 * and best known values are from memory; the first three flow shops agree with the published numbers in
 * tests/fixtures/scheduling, and the first row of the first job shop with the published text.
 */
import type { ScheduleProblem } from "#engine/schedule";

/** Whole numbers from low to high, alike. */
function uniform(seed: number): (low: number, high: number) => number {
  let state = seed;
  return (low, high) => {
    const k = Math.floor(state / 127_773);
    state = 16_807 * (state - k * 127_773) - k * 2_836;
    if (state < 0) state += 2_147_483_647;
    return low + Math.floor((state / 2_147_483_647) * (high - low + 1));
  };
}

/** Minutes of job j on machine m: `times[m][j]`. */
export function flowShopTimes(jobs: number, machines: number, timeSeed: number): readonly (readonly number[])[] {
  const draw = uniform(timeSeed);
  return Array.from({ length: machines }, () => Array.from({ length: jobs }, () => draw(1, 99)));
}

/** A flow shop as a problem: every job goes over the machines in their order. */
export function flowShop(jobs: number, machines: number, timeSeed: number): ScheduleProblem {
  const times = flowShopTimes(jobs, machines, timeSeed);
  return problemOf(
    Array.from({ length: jobs }, (_, job) => times.map((row, machine) => [machine, row[job] as number] as const)),
    machines,
  );
}

/** A job shop: times first, then for every job a shuffle of the machines. */
export function taillardJobShop(
  jobs: number,
  machines: number,
  timeSeed: number,
  machineSeed: number,
): ScheduleProblem {
  const drawTime = uniform(timeSeed);
  const times = Array.from({ length: jobs }, () => Array.from({ length: machines }, () => drawTime(1, 99)));
  const drawMachine = uniform(machineSeed);
  const rows = times.map((row) => {
    const order = Array.from({ length: machines }, (_, machine) => machine);
    for (let i = 0; i < machines; i++) {
      const other = drawMachine(i, machines - 1);
      [order[i], order[other]] = [order[other] as number, order[i] as number];
    }
    return row.map((minutes, at) => [order[at] as number, minutes] as const);
  });
  return problemOf(rows, machines);
}

function problemOf(rows: readonly (readonly (readonly [number, number])[])[], machines: number): ScheduleProblem {
  return {
    resources: Array.from({ length: machines }, (_, m) => ({ id: `m${m}`, capacity: 1 })),
    jobs: rows.map((row, j) => ({
      id: `j${j}`,
      operations: row.map(([machine, minutes], k) => ({ id: `o${k}`, resource: `m${machine}`, minutes })),
    })),
    objective: "makespan",
  };
}

/** 20 jobs, 5 machines: time seed and best known makespan of a permutation. */
export const flowShops20by5 = [
  [873654221, 1278],
  [379008056, 1359],
  [1866992158, 1081],
  [216771124, 1293],
  [495070989, 1235],
  [402959317, 1195],
  [1369363414, 1234],
  [2021925980, 1206],
  [573109518, 1230],
  [88325120, 1108],
] as const;

/** 15 jobs, 15 machines: time seed, machine seed, optimum. */
export const jobShops15by15 = [
  [840612802, 398197754, 1231],
  [1314640371, 386720536, 1244],
  [1227221349, 316176388, 1218],
  [342269428, 1806358582, 1175],
  [1603221416, 1501949241, 1224],
] as const;

/** 20 jobs, 5 machines: time and machine seeds of our own, for job shops that no search here was tuned on. */
export const jobShops20by5 = [
  [1_000_003, 7_000_003],
  [2_000_006, 14_000_006],
  [3_000_009, 21_000_009],
  [4_000_012, 28_000_012],
  [5_000_015, 35_000_015],
] as const;

/**
 * No schedule of a job shop is shorter: for every machine its work, the least that comes before any of it and the least that
 * comes behind, and every job's own work.
 */
export function loadBound({ resources, jobs }: ScheduleProblem): number {
  const work = (operations: ScheduleProblem["jobs"][number]["operations"]) =>
    operations.reduce((sum, { minutes }) => sum + minutes, 0);
  const machines = resources.map(({ id }) => {
    const visits = jobs.map(({ operations }) => {
      const at = operations.findIndex(({ resource }) => resource === id);
      return [work(operations.slice(0, at)), operations[at]?.minutes ?? 0, work(operations.slice(at + 1))] as const;
    });
    const load = visits.reduce((sum, [, minutes]) => sum + minutes, 0);
    return load + Math.min(...visits.map(([before]) => before)) + Math.min(...visits.map(([, , behind]) => behind));
  });
  return Math.max(...machines, ...jobs.map(({ operations }) => work(operations)));
}
