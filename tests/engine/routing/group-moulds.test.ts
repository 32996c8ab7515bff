/**
 * Queues on the demo's floor, promised on the nine-of-ten day of their own runs and some days behind it: fetching a mould twice
 * is saved where there is time for it, and no promise pays for that. What is right follows from the promises alone.
 */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { intBelow, seededRandom } from "#engine/math";
import {
  addWorkingDays,
  dayIndex,
  groupMoulds,
  minutesPerDay,
  type PairOnFloor,
  planQueue,
  prepareRuns,
  type QueueSituation,
  queueRanges,
  runRange,
  shopMinute,
  standingOf,
} from "#engine/routing";
import { isoDate, type Outcome } from "#engine/units";
import { dateOfDay } from "#lib/engine/routing/shop-time";

const { floor } = loadCatalog();
const today = isoDate("2026-10-05");
const now = shopMinute(today, 510);
const options = { runs: 80, seed: 1 };

function accepted<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value;
}

/** So many open pairs over so many moulds, the first the furthest on their way, with up to so many days in hand. */
function queue(seed: number, count: number, moulds: number, mostDaysInHand: number): QueueSituation {
  const random = seededRandom(seed);
  const pairs = Array.from({ length: count }, (_, index): PairOnFloor => {
    const mould = floor.moulds[(intBelow(random, moulds) * 7) % floor.moulds.length];
    const behind = Math.max(0, 12 - Math.floor((index * 22) / count) - intBelow(random, 3));
    return {
      pairId: `p${index}`,
      route: {
        kind: "pair",
        mould: mould?.id ?? null,
        mouldFamily: mould?.family ?? null,
        extraMinutes: [],
        hasOwnGraphic: false,
      },
      operations: floor.stations.slice(0, behind).map(({ id }, turn) => ({
        station: id,
        state: "done",
        doneAtMinute: now - (behind - turn) * 300 - 2 * minutesPerDay,
      })),
      waitingOn: [],
      queuedAtMinute: now - (count - index) * minutesPerDay,
      promise: { class: "promise", date: dateOfDay(dayIndex(today) + 4 + index) },
    };
  });
  const ranges = rangesOf({ floor, changes: [], pairs, now });
  const promised = pairs.map((pair): PairOnFloor => {
    const p90 = ranges.get(pair.pairId)?.dates.p90 ?? today;
    return {
      ...pair,
      promise: { class: "promise", date: addWorkingDays(floor.hours, p90, intBelow(random, mostDaysInHand + 1)) },
    };
  });
  return { floor, changes: [], pairs: promised, now };
}

function rangesOf(situation: QueueSituation) {
  const runs = accepted(prepareRuns(situation, options.seed));
  runRange(runs, options.runs);
  return queueRanges(runs);
}

function grouped(situation: QueueSituation): QueueSituation {
  const steps = groupMoulds(situation, options);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

const changesOf = (situation: QueueSituation) =>
  accepted(planQueue(situation)).pressPlan.filter(({ changeoverMinutes }) => changeoverMinutes > 0).length;

const ranks = ["open", "safe", "at-risk", "late"];

function standings(situation: QueueSituation): readonly number[] {
  const ranges = rangesOf(situation);
  return situation.pairs.map(({ pairId, promise }) => {
    const dates = ranges.get(pairId)?.dates;
    if (dates === undefined) throw new Error(pairId);
    return ranks.indexOf(standingOf(promise, dates));
  });
}

describe("groupMoulds", () => {
  it("changes moulds less often, and no promise stands worse for it", { timeout: 120_000 }, () => {
    let [before, after] = [0, 0];
    for (const [seed, moulds, hand] of [
      [1, 11, 12],
      [2, 14, 12],
      [3, 8, 12],
      [4, 11, 5],
    ] as const) {
      const situation = queue(seed, 26, moulds, hand);
      const together = grouped(situation);
      const [had, have] = [changesOf(situation), changesOf(together)];
      expect(have, `queue ${seed}`).toBeLessThanOrEqual(had);
      before += had;
      after += have;
      const stood = standings(situation);
      standings(together).forEach((standing, index) => {
        expect(standing, `queue ${seed}, pair ${index}`).toBeLessThanOrEqual(stood[index] ?? 0);
      });
    }
    expect(after).toBeLessThanOrEqual(0.95 * before);
  });

  it("moves nobody where every mould is fetched once, and nobody who has a place by hand or a fixed slot", () => {
    const apart = queue(5, 8, 36, 12);
    const once = {
      ...apart,
      pairs: apart.pairs.map((pair, i) => ({ ...pair, route: { ...pair.route, mould: floor.moulds[i]?.id ?? null } })),
    };
    expect(grouped(once)).toBe(once);
    const full = queue(1, 26, 11, 12);
    const free = grouped(full).pairs.filter(({ groupMinute }) => groupMinute !== undefined);
    expect(free.length).toBeGreaterThan(0);
    const held = free.map(({ pairId }) => pairId);
    const byHand = full.pairs.map((pair) =>
      held.includes(pair.pairId) ? { ...pair, placeMinute: shopMinute(today, 0) } : pair,
    );
    const moved = grouped({ ...full, pairs: byHand }).pairs.filter(({ groupMinute }) => groupMinute !== undefined);
    expect(moved.filter(({ pairId }) => held.includes(pairId))).toEqual([]);
  });

  it("groups nobody who has nothing in hand", () => {
    // Promised on the very day that nine of ten runs reach: whoever is put back would be late for it.
    const tight = queue(6, 20, 9, 0);
    const stood = standings(tight);
    standings(grouped(tight)).forEach((standing, index) => {
      expect(standing).toBeLessThanOrEqual(stood[index] ?? 0);
    });
  });
});
