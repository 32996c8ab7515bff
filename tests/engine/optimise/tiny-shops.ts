/** Tiny shops in which starting as early as possible can be wrong: gaps that must be kept, cures, holds, changeovers. */
import { intBelow, type Random32, seededRandom } from "#engine/math";
import type { JobSpec, ScheduleProblem } from "#engine/schedule";

const families = ["a", "b", "c"] as const;
const pick = <T>(random: Random32, list: readonly T[]): T => list[intBelow(random, list.length)] as T;

/** Two to four jobs of one to three operations on two machines, and in every second shop two presses of a kind. */
export function tinyShop(seed: number): ScheduleProblem {
  const random = seededRandom(seed);
  const hasPresses = seed % 2 === 0;
  const setUp = () => ({
    changeoverMinutes: Object.fromEntries(
      families.map((from) => [
        from,
        Object.fromEntries(families.map((to) => [to, from === to ? 0 : intBelow(random, 9)])),
      ]),
    ),
    initialFamily: pick(random, families),
  });
  const count = 2 + intBelow(random, 3);
  return {
    resources: [
      { id: "r0", capacity: 1 },
      { id: "r1", capacity: 1, ...(intBelow(random, 2) === 0 ? setUp() : {}) },
      ...(hasPresses ? ["press-1", "press-2"].map((id) => ({ id, capacity: 1, ...setUp() })) : []),
    ],
    jobs: Array.from({ length: count }, (_, j) => tinyJob(random, `j${j}`, hasPresses, count > 3 ? 2 : 3)),
    objective: pick(random, [
      "makespan" as const,
      { weightedTardiness: 1 },
      { weightedTardiness: 1, changeover: 2 },
      { makespan: 1, changeover: 1 },
    ]),
  };
}

function tinyJob(random: Random32, id: string, hasPresses: boolean, mostOperations: number): JobSpec {
  return {
    id,
    releaseMinute: intBelow(random, 10),
    dueMinute: 10 + intBelow(random, 30),
    weight: 1 + intBelow(random, 3),
    operations: Array.from({ length: 1 + intBelow(random, mostOperations) }, (_, at) => {
      const isPressed = hasPresses && intBelow(random, 3) === 0;
      const machine = pick(random, ["r0", "r1"]);
      const hasCure = intBelow(random, 5) < 2;
      const holds = isPressed ? ["press-1", "press-2"] : [machine];
      return {
        id: `${at}`,
        minutes: 1 + intBelow(random, 12),
        uses: [isPressed ? { anyOf: ["press-1", "press-2"] } : { resource: machine }],
        family: pick(random, families),
        ...(hasCure ? { unattendedMinutes: 1 + intBelow(random, 10) } : {}),
        ...(hasCure && intBelow(random, 2) === 0 ? { holdsDuring: holds } : {}),
        ...(at > 0 && intBelow(random, 2) === 0 ? { maxGapMinutes: intBelow(random, 8) } : {}),
      };
    }),
  };
}
