/**
 * A year of the shop as a test bed. Orders come by season; each is promised the nine-of-ten day that the product's own
 * engine tells on the morning it comes in; and the shop runs on through hidden times, rework, lost press days and shocks
 * that the promises knew nothing of. The hidden year is one dispatch from its first day: what it does before a morning does
 * not depend on orders that come later, so it can be run again whenever an order is added.
 */

import type { FloorHistory, FloorRedo, FloorVisit } from "#engine/floor-learning";
import { hashText, keyedDraw, unitFromU32 } from "#engine/math";
import {
  addWorkingDays,
  type CandidatePair,
  dateOfShopMinute,
  dayIndex,
  type FloorCatalog,
  type FloorChange,
  minutesPerDay,
  type OperationOnFloor,
  openQueue,
  type PairOnFloor,
  promiseRuns,
  type QueueSituation,
  shopMinute,
  workingDaysBetween,
} from "#engine/routing";
import { compileProblem, workCalendar } from "#engine/schedule";
import { DispatchRun, type DispatchSampler, dispatchModel } from "#engine/simulate";
import { type IsoDate, isoDate } from "#engine/units";
import { shopCalendar } from "#lib/engine/routing/floor-problem";
import { rankByPromise } from "#lib/engine/routing/rank";
import { FloorSampler, type PairRedoRule, redoRules } from "#lib/engine/routing/sampling";

export interface SeasonOrder {
  readonly pairId: string;
  readonly cameOn: IsoDate;
  readonly promisedOn: IsoDate;
  readonly p50: IsoDate;
  readonly readyOn: IsoDate;
  /** Working days from the order to the nine-of-ten day, and to the day it was ready. */
  readonly toldDays: number;
  readonly tookDays: number;
  /** Shares of futures told with the two days. */
  readonly toldShares: { readonly p50: number; readonly p90: number };
  readonly isKept: boolean;
  readonly isByP50: boolean;
}

export interface SeasonSettings {
  /** What the shop believes of itself: promises are made with it. */
  readonly floor: FloorCatalog;
  /** What the floor is really like. */
  readonly world: FloorCatalog;
  readonly seed: number;
  readonly firstDay: IsoDate;
  /** Runs behind each promise. */
  readonly runs: number;
  /** The engine is asked for every so many orders; those in between are told the lead time of the last one. */
  readonly askEvery: number;
  /** Orders on an ordinary working day of each month, January first. */
  readonly ordersPerDay: readonly number[];
  /** Working days of the year that are simulated. */
  readonly days: number;
}

const salts = { arrivals: 1, mould: 2, shock: 3 };
const opensAt = 450;

export interface Season {
  /** Every order whose promise the engine was asked for, and when it was ready. */
  readonly orders: readonly SeasonOrder[];
  /** What the floor wrote down in it. */
  readonly history: FloorHistory;
}

export function season(settings: SeasonSettings): Season {
  const { floor, seed, firstDay, days, runs, askEvery } = settings;
  let told = { p50: 0, p90: 0, shares: { p50: 0, p90: 0 } };
  const closures = hiddenShocks(settings);
  const come: {
    readonly pair: PairOnFloor;
    readonly cameOn: IsoDate;
    readonly p50: IsoDate;
    readonly shares: SeasonOrder["toldShares"];
    readonly isAsked: boolean;
  }[] = [];
  let date = addWorkingDays(floor.hours, firstDay, 0);
  for (let day = 0; day < days; day++) {
    const isShut = closures.some((closure) => covers(closure, shopMinute(date, opensAt)));
    const orders = isShut ? 0 : ordersOn(settings, date, day);
    for (let turn = 0; turn < orders; turn++) {
      const now = shopMinute(date, opensAt + turn);
      const pairId = `${seed}-${date}-${turn}`;
      const candidate = plainPair(floor, seed, pairId);
      const isAsked = come.length % askEvery === 0;
      if (isAsked) {
        const year = hiddenYear(settings, come, closures);
        const known = [...closures.filter((closure) => covers(closure, now)), ...year.pressDownToday(date)];
        // Every question has futures of its own, or all promises of all seasons would share one draw of shocks.
        const futures = hashText(pairId);
        told = ask({ floor, changes: known, pairs: year.openPairs(now), now }, candidate, { runs, seed: futures });
      }
      const after = (count: number) => addWorkingDays(floor.hours, date, count);
      const dates = { p50: after(told.p50), p90: after(told.p90) };
      const promise = { class: "promise", date: dates.p90 } as const;
      const pair = { ...candidate, pairId, operations: [], queuedAtMinute: now, promise };
      come.push({ pair, cameOn: date, p50: dates.p50, shares: told.shares, isAsked });
    }
    date = addWorkingDays(floor.hours, date, 1);
  }
  const year = hiddenYear(settings, come, closures);
  const between = (from: IsoDate, to: IsoDate) => workingDaysBetween(floor.hours, from, to);
  const orders = come.flatMap(({ pair, cameOn, p50, shares, isAsked }, index): readonly SeasonOrder[] => {
    if (!isAsked) return [];
    const readyOn = year.readyOn(index);
    const promisedOn = pair.promise?.date ?? cameOn;
    const isKept = readyOn <= promisedOn;
    const days = { toldDays: between(cameOn, promisedOn), tookDays: between(cameOn, readyOn) };
    return [
      {
        pairId: pair.pairId,
        cameOn,
        p50,
        promisedOn,
        readyOn,
        ...days,
        toldShares: shares,
        isKept,
        isByP50: readyOn <= p50,
      },
    ];
  });
  return { orders, history: year.history(shopMinute(firstDay, 0), shopMinute(date, 0)) };
}

/** Working days to the P50 and P90 days that the product's engine tells. */
function ask(
  situation: QueueSituation,
  candidate: CandidatePair,
  options: { readonly runs: number; readonly seed: number },
) {
  const range = promiseRuns(situation, candidate, options);
  if (!range.ok) throw new Error(JSON.stringify(range.refusal));
  const { p50, p90 } = range.value.dates;
  const from = dateOfShopMinute(situation.now);
  const days = (to: IsoDate) => workingDaysBetween(situation.floor.hours, from, to);
  return { p50: days(p50), p90: days(p90), shares: range.value.shares };
}

function covers(change: FloorChange, minute: number): boolean {
  return change.kind === "shop-closed" && change.fromMinute <= minute && minute < change.toMinute;
}

function draw(seed: number, salt: number, key: number, index = 0): number {
  return unitFromU32(keyedDraw(seed + 7_000_000, salt, key, index, 0));
}

/** The whole part of the month's rate, and one more by chance. */
function ordersOn({ seed, ordersPerDay }: SeasonSettings, date: IsoDate, day: number): number {
  const rate = ordersPerDay[Number(date.slice(5, 7)) - 1] ?? 0;
  // Binomial of four: as ragged as a shop's mornings are.
  return [0, 1, 2, 3].filter((index) => draw(seed, salts.arrivals, day, index) < rate / 4).length;
}

function plainPair(floor: FloorCatalog, seed: number, pairId: string): CandidatePair {
  const at = Math.floor(draw(seed, salts.mould, hashText(pairId)) * floor.moulds.length);
  const mould = floor.moulds[at];
  return {
    route: {
      kind: "pair",
      mould: mould?.id ?? null,
      mouldFamily: mould?.family ?? null,
      extraMinutes: [],
      hasOwnGraphic: false,
    },
    waitingOn: [],
  };
}

/** In every window of the floor's setting one shock falls with its chance, at any time alike, and shuts the shop. */
function hiddenShocks({ world: floor, seed, firstDay, days }: SeasonSettings): readonly FloorChange[] {
  const { probability, windowWorkingDays, delayWorkingDays } = floor.sharedShock;
  const found: FloorChange[] = [];
  for (let window = 0; window * windowWorkingDays < days + 90; window++) {
    if (draw(seed, salts.shock, window, 0) >= probability) continue;
    const after = Math.floor((window + draw(seed, salts.shock, window, 1)) * windowWorkingDays);
    const { low, high } = delayWorkingDays;
    const length = Math.round(low + draw(seed, salts.shock, window, 2) * (high - low));
    const from = addWorkingDays(floor.hours, firstDay, after);
    const to = addWorkingDays(floor.hours, from, length);
    found.push({ kind: "shop-closed", fromMinute: shopMinute(from, 0), toMinute: shopMinute(to, 0) });
  }
  return found;
}

interface HiddenYear {
  readonly openPairs: (now: number) => readonly PairOnFloor[];
  readonly pressDownToday: (date: IsoDate) => readonly FloorChange[];
  readonly readyOn: (index: number) => IsoDate;
  readonly history: (fromMinute: number, toMinute: number) => FloorHistory;
}

interface Failure {
  readonly rule: PairRedoRule;
  readonly at: number;
}

/** Everything that happens to these orders, from the first day on. */
function hiddenYear(
  { world: floor, seed, firstDay }: SeasonSettings,
  come: readonly { readonly pair: PairOnFloor; readonly cameOn: IsoDate }[],
  closures: readonly FloorChange[],
): HiddenYear {
  const now = shopMinute(firstDay, 0);
  const pairs = come.map(({ pair, cameOn }): PairOnFloor => {
    return { ...pair, waitingOn: [{ reason: "deposit", holdsUpStation: "release", expectedDate: cameOn }] };
  });
  const built = openQueue({ floor, changes: closures, pairs, now });
  if (!built.ok) throw new Error(JSON.stringify(built.refusal));
  const { problem: specified, operations } = built.value;
  const problem = compileProblem({ ...specified, jobs: specified.jobs });
  const rules = redoRules(floor, operations);
  const calendar = workCalendar([shopCalendar(floor, dayIndex(firstDay), closures)]);
  const sampler = new FloorSampler(floor, problem, operations, seed + 1000, calendar, 0, rules);
  const failures: Failure[] = [];
  const hidden: DispatchSampler = {
    minutes: (operation, visit) => sampler.minutes(operation, visit),
    unattended: (operation, visit) => sampler.unattended(operation, visit),
    outages: (resource) => sampler.outages(resource),
    redoFrom: (operation, visit, end) => {
      const from = sampler.redoFrom(operation, visit, end);
      const rule = rules.find((each) => each.operation === operation);
      if (from >= 0 && rule !== undefined) failures.push({ rule, at: end });
      return from;
    },
  };
  const stays: { readonly start: number; readonly end: number }[][] = operations.map(() => []);
  const nothing = { visits: [], redos: [], changes: [], plannedShut: [] };
  if (pairs.length === 0)
    return {
      openPairs: () => [],
      pressDownToday: pressDown,
      readyOn: () => firstDay,
      history: (fromMinute, toMinute) => ({ fromMinute, toMinute, ...nothing }),
    };
  const run = new DispatchRun(
    dispatchModel(problem, {
      rank: rankByPromise(problem, pairs, now),
      changeoverPenalty: floor.planning.mouldGroupingWorkingDays * minutesPerDay,
      redoRules: rules,
    }),
  );
  run.run(hidden);
  for (let at = 0; at < run.busy.length; at += 5) {
    const [, start = 0, end = 0, operation = 0] = run.busy.data.subarray(at, at + 4);
    const own = stays[operation] as { start: number; end: number }[];
    if (own.at(-1)?.start !== start) own.push({ start, end });
    else own[own.length - 1] = { start, end: Math.max(end, own.at(-1)?.end ?? 0) };
  }

  function pressDown(date: IsoDate): readonly FloorChange[] {
    return floor.presses.flatMap(({ id }): readonly FloorChange[] => {
      const resource = problem.problem.resources.findIndex((each) => each.id === `press:${id}`);
      const lost = sampler.outages(resource);
      const midnight = shopMinute(date, 0) - now;
      const isLost = lost?.some((minute, i) => i % 2 === 0 && minute === midnight) ?? false;
      const from = shopMinute(date, 0);
      return isLost ? [{ kind: "press-down", press: id, fromMinute: from, toMinute: from + minutesPerDay }] : [];
    });
  }

  function stateAt(index: number, minute: number): readonly OperationOnFloor[] {
    return operations.flatMap((meta, operation): readonly OperationOnFloor[] => {
      if (meta.pair !== index || meta.step.kind !== "work") return [];
      const failed = failures.filter(({ rule, at }) => at <= minute && rule.redo.includes(operation));
      const begun = (stays[operation] ?? []).filter(({ start }) => start < minute);
      const last = begun.at(-1);
      const { station } = meta.step;
      if (last !== undefined && last.end > minute) {
        const press = station === "press" ? { press: floor.presses[0]?.id ?? "" } : {};
        return [{ station, state: "running", startedAtMinute: now + last.start, visit: begun.length - 1, ...press }];
      }
      if (begun.length > failed.length && last !== undefined) {
        return [{ station, state: "done", doneAtMinute: now + last.end, visit: begun.length - 1 }];
      }
      const again = failed.at(-1);
      return again === undefined
        ? []
        : [{ station, state: "ready", visit: failed.length, minutesShare: again.rule.loop.minutesShare }];
    });
  }

  /** What was ticked, and what stood in the shop's list of changes. */
  function history(fromMinute: number, toMinute: number): FloorHistory {
    const visits = operations.flatMap((meta, operation): readonly FloorVisit[] => {
      if (meta.step.kind !== "work") return [];
      return (stays[operation] ?? []).flatMap(({ start, end }, visit): readonly FloorVisit[] => {
        if (now + start >= toMinute) return [];
        const loop = visit === 0 ? undefined : rules.find(({ redo }) => redo.includes(operation))?.loop;
        return [
          {
            pair: meta.pairKey,
            station: meta.step.station,
            startMinute: now + start,
            endMinute: now + end > toMinute ? null : now + end,
            by: null,
            extraMinutes: 0,
            share: loop?.minutesShare ?? 1,
          },
        ];
      });
    });
    const redos = failures.flatMap(({ rule, at }): readonly FloorRedo[] =>
      now + at >= toMinute
        ? []
        : [
            {
              pair: operations[rule.operation]?.pairKey ?? "",
              from: rule.loop.redoStations[0] ?? "",
              atMinute: now + at,
            },
          ],
    );
    const days = workingDaysBetween(floor.hours, dateOfShopMinute(fromMinute), dateOfShopMinute(toMinute));
    const downs = Array.from({ length: days }, (_, index) => addWorkingDays(floor.hours, firstDay, index));
    const changes = downs.flatMap((date) => pressDown(date));
    return { fromMinute, toMinute, visits, redos, changes: [...closures, ...changes], plannedShut: [] };
  }

  return {
    history,
    pressDownToday: pressDown,
    readyOn: (index) => dateOfShopMinute(now + (run.jobEnd[index] as number)),
    openPairs: (minute) =>
      come.flatMap(({ pair }, index) =>
        now + (run.jobEnd[index] as number) <= minute ? [] : [{ ...pair, operations: stateAt(index, minute - now) }],
      ),
  };
}

/** Seasons begin in July, before the orders come; they cluster from September to January. Common practice, no source. */
export function demoSeason(floor: FloorCatalog, seed: number, { load = 1, world = floor } = {}): SeasonSettings {
  return {
    floor,
    world,
    seed,
    firstDay: isoDate("2027-07-06"),
    days: 250,
    runs: 60,
    askEvery: 3,
    ordersPerDay: [1.4, 1, 0.4, 0.4, 0.4, 0.5, 0.7, 1, 1.7, 1.9, 1.9, 1.6].map((rate) => rate * load),
  };
}
