import { readFileSync } from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dispatchList, scheduledOperations } from "#engine/optimise";
import {
  answerRange,
  type CandidatePair,
  candidateRange,
  dateOfDay,
  dayIndex,
  openQueue,
  type PairOnFloor,
  planQueue,
  prepareCandidate,
  prepareRuns,
  promiseRuns,
  queueRanges,
  routeFor,
  runRange,
  shopMinute,
  weekdayOf,
} from "#engine/routing";
import { compileProblem, decodeSerial, emptyPlacement, serialPlan } from "#engine/schedule";
import { isoDate } from "#engine/units";
import { floorFileSchema, floorOf } from "#schemas/floor";
import { faultsOf } from "../../support/feasible";

const floor = floorOf(
  floorFileSchema.parse(
    JSON.parse(readFileSync(path.resolve(import.meta.dirname, "../../../content/catalog/floor.json"), "utf8")),
  ),
  "America/Denver",
);
const now = shopMinute(isoDate("2026-10-05"), 9 * 60);

const situation = (pairs: readonly PairOnFloor[]) => ({ floor, changes: [], pairs, now });

const plain = (mould: string): CandidatePair => ({
  route: { kind: "pair", mould, mouldFamily: "any", extraMinutes: [], hasOwnGraphic: false },
  waitingOn: [],
});

/** An invented queue: the first pairs are further on, promises fall due one a working day. */
function queueOf(count: number): readonly PairOnFloor[] {
  return Array.from({ length: count }, (_, i): PairOnFloor => {
    const mould = floor.moulds[(i * 7) % floor.moulds.length];
    const pressed = { station: "press", state: "done", doneAtMinute: now - 600 } as const;
    return {
      pairId: `pair-${i}`,
      route: { ...plain(mould?.id ?? "").route, mouldFamily: mould?.family ?? "" },
      operations:
        i === 0
          ? [pressed]
          : i === 1
            ? [{ station: "press", state: "running", startedAtMinute: now - 40, press: "press-1" }]
            : [],
      waitingOn: i === 5 ? [{ reason: "proof", holdsUpStation: "print", expectedDate: isoDate("2026-10-20") }] : [],
      queuedAtMinute: now - 1440 * (count - i),
      promise: { class: "promise", date: dateOfDay(dayIndex(isoDate("2026-10-12")) + i) },
    };
  });
}

function unwrap<T>(
  outcome: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly refusal: unknown },
): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value;
}

describe("shop days", () => {
  it("agree with the civil calendar and come back from dates", () => {
    // 1970-01-01 was a Thursday; 2000-02-29 is day 11,016 (civil calendar).
    expect([dayIndex(isoDate("1970-01-01")), dayIndex(isoDate("2000-02-29")), weekdayOf(0)]).toEqual([0, 11_016, 4]);
    fc.assert(
      fc.property(fc.integer({ min: -100_000, max: 100_000 }), (day) => {
        const date = dateOfDay(day);
        expect(date).toBe(new Date(day * 86_400_000).toISOString().slice(0, 10));
        expect(dayIndex(date)).toBe(day);
        expect(weekdayOf(day) % 7).toBe(new Date(day * 86_400_000).getUTCDay());
      }),
    );
  });
});

describe("routeFor", () => {
  // Four branches between station 1 and the lay-up; common practice, no source.
  it("joins core, base, print and kit at the lay-up and rests after the press", () => {
    const route = routeFor(plain("M95-178").route, floor);
    const stepsBefore = (station: string) =>
      route
        .find((step) => step.station === station && step.kind === "work")
        ?.after.map((at) => [route[at]?.station, route[at]?.kind]);
    expect(stepsBefore("lay-up")).toEqual([
      ["profile", "work"],
      ["edges", "work"],
      ["print", "work"],
      ["kit", "work"],
    ]);
    expect(stepsBefore("trim")).toEqual([["press", "rest"]]);
    expect(stepsBefore("strips")).toEqual([["release", "work"]]);
    expect(route.find(({ kind }) => kind === "rest")?.waitMinutes?.low).toBeGreaterThanOrEqual(24 * 60);
  });

  it("sends a print job past everything but printing and packing, by its number of sheets", () => {
    const route = routeFor({ ...plain("").route, kind: "print-only", mould: null, printSheets: 12 }, floor);
    expect(route.map(({ station }) => station)).toEqual(["release", "print", "check"]);
    expect(route[1]?.share).toBe(6);
  });

  it("adds up to the touch minutes of the reference pair", () => {
    // The columns of the shop's own table of touch minutes, low, typical and high, added up by hand: 415 / 640 / 1 105.
    const route = routeFor(plain("M95-178").route, floor);
    const sum = (level: "low" | "typ" | "high") => route.reduce((total, { minutes }) => total + minutes[level], 0);
    expect([sum("low"), sum("typ"), sum("high")]).toEqual([415, 640, 1105]);
  });
});

describe("planQueue", () => {
  it("gives a plan that the independent judge accepts", () => {
    const { problem, nowMinute } = unwrap(openQueue(situation(queueOf(12))));
    const compiled = compileProblem(problem);
    const rank = Float64Array.from(compiled.jobOf);
    const placement = emptyPlacement(compiled);
    decodeSerial(serialPlan(compiled), dispatchList(compiled, rank, 0, nowMinute), placement);
    expect(faultsOf(problem, { operations: scheduledOperations(placement) })).toEqual([]);
  });

  it("starts a proof-blocked print no earlier than the proof and keeps pressed work from pressing again", () => {
    const plan = unwrap(planQueue(situation(queueOf(12))));
    const print = plan.operations.find(({ pairId, station }) => pairId === "pair-5" && station === "print");
    expect(print && print.date >= "2026-10-20").toBe(true);
    expect(plan.pressPlan.some(({ pairId }) => pairId === "pair-0")).toBe(false);
    expect(plan.pressPlan[0]?.pairId).toBe("pair-1");
    const trim = plan.operations.find(({ pairId, station }) => pairId === "pair-0" && station === "trim");
    // 24 h of rest after a pressing that ended 600 min before now.
    expect(trim && trim.startMinute >= now - 600 + 1440).toBe(true);
  });

  it("plans 10,000 jobs, which take the printer decades", () => {
    const route = { ...plain("").route, kind: "print-only", mould: null, mouldFamily: null, printSheets: 40 } as const;
    const [like] = queueOf(1) as [PairOnFloor];
    const jobs = Array.from({ length: 10_000 }, (_, i) => ({
      ...like,
      pairId: `${i}`,
      route,
      operations: [],
      promise: null,
    }));
    const { pairs, totals } = unwrap(planQueue(situation(jobs)));
    expect(new Set(pairs.map(({ pairId }) => pairId)).size).toBe(10_000);
    const station = floor.stations.find(({ number }) => number === 8);
    const printMinutes = (10_000 * 40 * (station?.minutes.typ ?? 0)) / 2 / (station?.capacity ?? 1);
    const openMinutesAWeek = 5 * floor.hours.windows.reduce((sum, each) => sum + each.toMinute - each.fromMinute, 0);
    const weeks = (totals.finishMinute - now) / (7 * 1440);
    expect(weeks).toBeGreaterThan(printMinutes / openMinutesAWeek);
    expect(weeks).toBeGreaterThan(12 * 52);
  });

  it("refuses a mould that the floor does not have, and says where", () => {
    const [first] = queueOf(1);
    const strange = { ...first, route: plain("none").route } as PairOnFloor;
    expect(planQueue(situation([strange]))).toEqual({
      ok: false,
      refusal: { code: "unknown-mould", path: "pairs.0.route.mould", mould: "none" },
    });
  });
});

describe("promiseRuns", () => {
  const options = { runs: 120, seed: 3 };

  it("promises an empty shop about the floor of 8 to 12 working days less the proof", () => {
    // By hand, branch by branch: 8–12 working days with an empty shop, of which 1–5 are proof approval (common practice).
    const { workingDays } = unwrap(promiseRuns(situation([]), plain("M95-178"), options));
    expect(workingDays.p50).toBeGreaterThan(3);
    expect(workingDays.p50).toBeLessThan(12);
    expect(workingDays.p10).toBeLessThanOrEqual(workingDays.p50);
    expect(workingDays.p90).toBeLessThanOrEqual(workingDays.p95);
  });

  it("repeats itself for a seed, whether run at once or in slices", () => {
    const pairs = queueOf(10);
    const whole = unwrap(promiseRuns(situation(pairs), plain("M95-178"), options));
    const runs = unwrap(prepareRuns(situation(pairs), options.seed));
    for (let to = 7; to < options.runs + 7; to += 7) runRange(runs, Math.min(to, options.runs));
    const asked = unwrap(prepareCandidate(runs, plain("M95-178")));
    for (let to = 11; to < options.runs + 11; to += 11) answerRange(asked, to);
    expect(candidateRange(asked)).toEqual(whole);
    expect(whole.drivers.length).toBeGreaterThan(0);
  });

  it("answers working days only, later for a longer queue, and never before the plan of an empty shop", () => {
    const short = unwrap(promiseRuns(situation(queueOf(4)), plain("M95-178"), options));
    const long = unwrap(promiseRuns(situation(queueOf(24)), plain("M95-178"), options));
    expect(long.workingDays.p50).toBeGreaterThan(short.workingDays.p50);
    for (const date of [...Object.values(short.dates), ...Object.values(long.dates)]) {
      expect(weekdayOf(dayIndex(date))).toBeLessThanOrEqual(5);
    }
  });

  it("moves nobody: the open pairs' ranges do not change when one more is asked about", () => {
    const runs = unwrap(prepareRuns(situation(queueOf(8)), 1));
    runRange(runs, 40);
    const before = JSON.stringify([...queueRanges(runs)]);
    const ask = () => {
      const asked = unwrap(prepareCandidate(runs, plain("M84-174")));
      answerRange(asked, 40);
      return candidateRange(asked);
    };
    const first = ask();
    expect(ask()).toEqual(first);
    expect(JSON.stringify([...queueRanges(runs)])).toBe(before);
  });

  it("keeps a proof without a date on the candidate's chain", () => {
    const printFirst = { ...plain("M95-178"), waitingOn: [{ reason: "proof", holdsUpStation: "print" }] } as const;
    const slow = { ...floor, proof: { workingDays: { low: 20, typ: 20, high: 21 } } };
    const { workingDays, drivers } = unwrap(promiseRuns({ ...situation([]), floor: slow }, printFirst, options));
    expect(workingDays.p10).toBeGreaterThan(20);
    expect(drivers[0]?.code).toBe("proof");
  });
});
