/**
 * The live queue as a scheduling problem: stations, people, presses, moulds and cassettes as resources, every open pair as a
 * job in its present state. Problem minute 0 is the midnight before `now`.
 */
import { findStation, placeOf, type StationId, stationFor, stationOf, stationsOfRole } from "#engine/floor";
import type {
  CalendarSpec,
  JobSpec,
  OperationSpec,
  ResourceSpec,
  ResourceUse,
  ScheduleProblem,
} from "#engine/schedule";
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import type { FloorCatalog, Mould } from "./floor";
import {
  type FloorChange,
  floorWithChanges,
  hoursChanges,
  singleChanges,
  stationsWithOvertime,
  unavailableWindows,
} from "./floor-changes";
import { type RouteStep, routeFor } from "./route";
import { dayIndex, minutesPerDay, shopMinute, weekdayOf } from "./shop-time";
import type { QueueSituation } from "./situation";
import type { CandidatePair, OperationOnFloor, PairOnFloor, RouteFacts, ShopMinute, WaitingOn } from "./types";

export const calendarName = "shop";

/** What an operation of the problem stands for. */
export interface FloorOperation {
  /** Index of the pair. */
  readonly pair: number;
  readonly pairKey: string;
  readonly step: RouteStep;
  /** Nothing to do on the first pass: finished before, or not part of this job. */
  readonly isDone: boolean;
  /** Work minutes already spent when running; null when not running. */
  readonly spentMinutes: number | null;
  /** Wait for the skier's approval, sampled: the step is a gate without work. */
  readonly isProofGate: boolean;
  readonly minutesShare: number;
}

export interface FloorProblem {
  /** The floor with what is added to it. */
  readonly floor: FloorCatalog;
  readonly problem: ScheduleProblem;
  readonly operations: readonly FloorOperation[];
  /** Shop minute of problem minute 0. */
  readonly originMinute: ShopMinute;
  readonly nowMinute: number;
}

export interface FloorRefusal extends Refusal {
  readonly code: "unknown-mould" | "unknown-station" | "unknown-press";
  readonly path: string;
}

/**
 * The shop's hours as a calendar whose day 0 is the given day.
 *
 * @param station also the overtime of this station, or of any; null: of the whole shop only
 */
export function shopCalendar(
  floor: FloorCatalog,
  firstDay: number,
  changes: readonly FloorChange[] = [],
  station: StationId | "any" | null = null,
): CalendarSpec {
  return {
    ...hoursChanges(singleChanges(changes, floor.hours), firstDay * minutesPerDay, station),
    windows: floor.hours.windows.map(({ fromMinute, toMinute }) => [fromMinute, toMinute] as const),
    weekdays: floor.hours.workingWeekdays,
    firstWeekday: weekdayOf(firstDay),
    closedDays: floor.hours.closedDays.map(({ date }) => dayIndex(date) - firstDay),
  };
}

/**
 * Builds the problem. Refused when a pair names a mould, station or press that the floor does not have.
 */
export function openQueue(situation: QueueSituation): Outcome<FloorProblem, FloorRefusal> {
  const { changes, pairs, now } = situation;
  const floor = floorWithChanges(situation.floor, changes);
  const refusal = pairs.map((pair, index) => checkPair(floor, pair, index)).find((found) => found !== null);
  if (refusal) return refuse(refusal);
  const firstDay = Math.floor(now / minutesPerDay);
  const originMinute = firstDay * minutesPerDay;
  const builder = new JobBuilder(floor, originMinute, now - originMinute);
  const jobs = pairs.map((pair, index) => builder.openJob(pair, index));
  return accept({
    floor,
    problem: {
      resources: floorResources(floor, pairs, changes, originMinute),
      calendars: floorCalendars(floor, firstDay, changes),
      jobs,
      objective: { weightedTardiness: 1, changeover: 0.1 },
    },
    operations: builder.operations,
    originMinute,
    nowMinute: now - originMinute,
  });
}

/** The problem of one more pair alone, on the same resources in the same order. */
export function candidateProblem(queue: FloorProblem, candidate: CandidatePair): Outcome<FloorProblem, FloorRefusal> {
  const { floor } = queue;
  const refusal = checkRoute(floor, candidate.route, "candidate");
  if (refusal !== null) return refuse(refusal);
  const builder = new JobBuilder(floor, queue.originMinute, queue.nowMinute);
  const job = builder.openJob(
    {
      pairId: "one-more",
      route: candidate.route,
      operations: [],
      waitingOn: candidate.waitingOn,
      queuedAtMinute: queue.originMinute + queue.nowMinute,
      promise: null,
    },
    0,
  );
  return accept({ ...queue, problem: { ...queue.problem, jobs: [job] }, operations: builder.operations });
}

function checkPair(floor: FloorCatalog, pair: PairOnFloor, index: number): FloorRefusal | null {
  const path = `pairs.${index}`;
  const strange = pair.operations.find(({ station }) => findStation(floor, station) === null);
  if (strange !== undefined) return { code: "unknown-station", path: `${path}.operations`, station: strange.station };
  const press = pair.operations.find((operation) => operation.press !== undefined && !hasPress(floor, operation.press));
  if (press !== undefined) return { code: "unknown-press", path: `${path}.operations`, press: press.press };
  return checkRoute(floor, pair.route, path);
}

function hasPress(floor: FloorCatalog, id: string): boolean {
  return floor.presses.some((press) => press.id === id);
}

function checkRoute(floor: FloorCatalog, route: RouteFacts, path: string): FloorRefusal | null {
  if (route.kind === "print-only") {
    const hasPrint = stationsOfRole(floor, "print").length > 0;
    return hasPrint ? null : { code: "unknown-station", path: `${path}.route.kind`, station: "print" };
  }
  if (floor.moulds.some(({ id }) => id === route.mould)) return null;
  return { code: "unknown-mould", path: `${path}.route.mould`, mould: route.mould };
}

/** Calendar of people and presses, who are there whenever any station has overtime. */
const anyoneName = "anyone";

function floorCalendars(
  floor: FloorCatalog,
  firstDay: number,
  changes: readonly FloorChange[],
): Readonly<Record<string, CalendarSpec>> {
  const own = [...stationsWithOvertime(changes)];
  return {
    [calendarName]: shopCalendar(floor, firstDay, changes),
    [anyoneName]: shopCalendar(floor, firstDay, changes, "any"),
    ...Object.fromEntries(
      own.map((station) => [stationResource(station), shopCalendar(floor, firstDay, changes, station)]),
    ),
  };
}

function floorResources(
  floor: FloorCatalog,
  pairs: readonly PairOnFloor[],
  changes: readonly FloorChange[],
  originMinute: ShopMinute,
): readonly ResourceSpec[] {
  const overtime = stationsWithOvertime(changes);
  const away = (who: Parameters<typeof unavailableWindows>[1]) => {
    const unavailable = unavailableWindows(changes, who, originMinute);
    return unavailable.length === 0 ? {} : { unavailable };
  };
  const matrix = changeoverMatrix(floor);
  const pressing = stationFor(floor, "press").id;
  return [
    ...floor.stations.map(({ id, capacity }) => ({
      id: stationResource(id),
      capacity,
      calendar: overtime.has(id) ? stationResource(id) : calendarName,
      ...away({ station: id }),
    })),
    ...floor.crew.map(({ id }) => ({
      id: crewResource(id),
      capacity: 1,
      calendar: anyoneName,
      ...away({ person: id }),
    })),
    ...floor.presses.map((press) => {
      const initialFamily = mountedOn(press.id, pressing, pairs) ?? press.initialMould;
      return {
        id: pressResource(press.id),
        capacity: 1,
        calendar: anyoneName,
        changeoverMinutes: matrix,
        ...(initialFamily === undefined ? {} : { initialFamily }),
        ...away({ press: press.id }),
      };
    }),
    ...floor.moulds.map(({ id }) => ({ id: bedResource(id), capacity: 1, ...away({ mould: id }) })),
    ...floor.moulds.map(({ id, cassettes }) => ({ id: cassetteResource(id), capacity: cassettes })),
  ];
}

/** The mould of the pair that was pressed last. */
function mountedOn(press: string, pressing: StationId, pairs: readonly PairOnFloor[]): string | undefined {
  let latest = Number.NEGATIVE_INFINITY;
  let mould: string | undefined;
  for (const pair of pairs) {
    for (const operation of pair.operations) {
      if (operation.station !== pressing || (operation.press ?? press) !== press || pair.route.mould === null) continue;
      const at =
        operation.state === "running" ? Number.POSITIVE_INFINITY : (operation.doneAtMinute ?? Number.NEGATIVE_INFINITY);
      if (at > latest) {
        latest = at;
        mould = pair.route.mould;
      }
    }
  }
  return mould;
}

function changeoverMatrix(floor: FloorCatalog): Record<string, Record<string, number>> {
  const { sameMould, sameFamily, otherFamily, hotExtra } = floor.changeoverMinutes;
  const isHot = floor.presses.some(({ kind }) => kind === "heated");
  const minutes = (from: Mould, to: Mould) => {
    if (from.id === to.id) return sameMould;
    return (from.family === to.family ? sameFamily : otherFamily) + (isHot ? hotExtra : 0);
  };
  return Object.fromEntries(
    floor.moulds.map((from) => [from.id, Object.fromEntries(floor.moulds.map((to) => [to.id, minutes(from, to)]))]),
  );
}

export const stationResource = (id: StationId): string => `station:${id}`;
export const crewResource = (id: string): string => `crew:${id}`;
export const pressResource = (id: string): string => `press:${id}`;
const bedResource = (mould: string): string => `mould:${mould}`;
const cassetteResource = (mould: string): string => `cassette:${mould}`;

/** Minutes the press stays shut with nobody at it. */
export function pressCycleMinutes(floor: FloorCatalog): number {
  const { heatUpMinutes, dwellMinutes, coolMinutes } = floor.pressProgramme;
  return heatUpMinutes + dwellMinutes + coolMinutes;
}

/** Makes jobs, and notes for every operation in the same order what it stands for. */
class JobBuilder {
  readonly operations: FloorOperation[] = [];
  private readonly busyCrew = new Set<string>();
  private readonly busyAt = new Map<string, number>();
  private readonly able = new Map<StationId, readonly string[]>();
  private readonly needsAhead = new Map<string, Needs>();

  constructor(
    private readonly floor: FloorCatalog,
    private readonly originMinute: ShopMinute,
    private readonly nowMinute: number,
  ) {}

  openJob(pair: PairOnFloor, index: number): JobSpec {
    const route = routeFor(pair.route, this.floor);
    const states = statesOf(pair, route);
    const gates = this.gatesOf(pair, index, route);
    const operations = route.map((_, position) => this.operationOf(pair, index, route, states, position, gates));
    return {
      id: pair.pairId,
      releaseMinute: this.nowMinute,
      dueMinute: pair.promise === null ? null : shopMinute(pair.promise.date, minutesPerDay) - this.originMinute,
      weight: pair.promise?.class === "hard-date" ? 3 : 1,
      operations: [...gates.map(({ spec }) => spec), ...operations],
    };
  }

  /** A proof without a date is waited for as long as proofs usually take. */
  private gatesOf(pair: PairOnFloor, index: number, route: readonly RouteStep[]): readonly ProofGate[] {
    const open = pair.waitingOn.filter(({ reason, expectedDate }) => reason === "proof" && expectedDate === undefined);
    return open.slice(0, 1).map(({ holdsUpStation }) => {
      const { low, typ, high } = this.floor.proof.workingDays;
      const day = workingDayMinutes(this.floor);
      const waitMinutes = { low: low * day, typ: typ * day, high: high * day };
      const step: RouteStep = { ...(route[0] as RouteStep), kind: "rest", waitMinutes, after: [] };
      this.operations.push({
        pair: index,
        pairKey: pair.pairId,
        step: { ...step, station: holdsUpStation, place: placeOf(this.floor, holdsUpStation) + 1 },
        isDone: false,
        spentMinutes: null,
        isProofGate: true,
        minutesShare: 1,
      });
      // Working days as clock minutes: seven days of the clock hold five of work.
      const unattendedMinutes = Math.round(typ * minutesPerDay * (7 / this.floor.hours.workingWeekdays.length));
      return { station: holdsUpStation, spec: { id: "proof", minutes: 0, unattendedMinutes, after: [] } };
    });
  }

  private operationOf(
    pair: PairOnFloor,
    index: number,
    route: readonly RouteStep[],
    states: readonly (OperationOnFloor | undefined)[],
    position: number,
    gates: readonly ProofGate[],
  ): OperationSpec {
    const step = route[position] as RouteStep;
    const state = states[position];
    const isDone = state?.state === "done";
    const isRunning = state?.state === "running";
    const spent = isRunning
      ? this.nowMinute + this.originMinute - (state?.startedAtMinute ?? this.nowMinute + this.originMinute)
      : null;
    const minutesShare = step.share * (state?.minutesShare ?? 1);
    this.operations.push({
      pair: index,
      pairKey: pair.pairId,
      step,
      isDone,
      spentMinutes: spent,
      isProofGate: false,
      minutesShare,
    });
    const { uses, held } = this.needsOf(pair, step, state);
    const planned = plannedMinutes(this.floor, step, minutesShare, spent);
    const release = this.releaseOf(pair, route, states, position);
    const waitsInPress = isPressWork(step);
    const family = waitsInPress ? pair.route.mould : null;
    const layUpIsOpen =
      waitsInPress && !isRunning && !isDone && step.after.every((earlier) => isAhead(states[earlier]));
    return {
      id: stepId(step),
      uses,
      minutes: isDone ? 0 : planned.work,
      unattendedMinutes: isDone ? 0 : planned.wait,
      after: [
        ...step.after.map((earlier) => stepId(route[earlier] as RouteStep)),
        ...gates.filter(({ station }) => station === step.station && step.kind === "work").map(({ spec }) => spec.id),
      ],
      ...(release > 0 ? { releaseMinute: release } : {}),
      ...(held === null ? {} : { holdsDuring: held }),
      ...(family === null ? {} : { family }),
      ...(layUpIsOpen ? { maxGapMinutes: this.floor.pressProgramme.closeWithinMinutes } : {}),
      ...(stationOf(this.floor, step.station).isUninterrupted && step.kind === "work" && !isRunning
        ? { uninterrupted: true }
        : {}),
      ...(isRunning ? { fixed: { startMinute: this.nowMinute } } : {}),
    };
  }

  /** Equal for all pairs of a mould until a step runs: then one list serves them all. */
  private needsOf(pair: PairOnFloor, step: RouteStep, state: OperationOnFloor | undefined): Needs {
    const key = state?.state === "running" ? null : `${stepId(step)} ${pair.route.mould}`;
    const known = key === null ? undefined : this.needsAhead.get(key);
    if (known !== undefined) return known;
    const uses = this.usesOf(pair, step, state);
    const needs = { uses, held: isPressWork(step) ? uses.flatMap(heldInPress) : null };
    if (key !== null) this.needsAhead.set(key, needs);
    return needs;
  }

  private usesOf(pair: PairOnFloor, step: RouteStep, state: OperationOnFloor | undefined): readonly ResourceUse[] {
    if (step.kind === "rest") return [];
    const { mould } = pair.route;
    const uses: ResourceUse[] = [];
    if (isPressWork(step)) {
      const presses = this.floor.presses.map(({ id }) => pressResource(id));
      const held = state?.state === "running" ? (state.press ?? this.floor.presses[0]?.id ?? "") : null;
      uses.push(held === null ? { anyOf: presses } : { resource: pressResource(held) });
      if (mould !== null) uses.push({ resource: bedResource(mould) });
    } else if (
      state?.state !== "running" ||
      this.hasRoom(stationResource(step.station), stationOf(this.floor, step.station).capacity)
    ) {
      uses.push({ resource: stationResource(step.station) });
    }
    if (step.uses.includes("mould") && mould !== null) uses.push({ resource: cassetteResource(mould) });
    return [...uses, ...this.crewUse(step, state)];
  }

  /** More pairs may be started at a station than it has places; the plan then knows no better than the floor. */
  private hasRoom(resource: string, capacity: number): boolean {
    const busy = this.busyAt.get(resource) ?? 0;
    this.busyAt.set(resource, busy + 1);
    return busy < capacity;
  }

  private crewUse(step: RouteStep, state: OperationOnFloor | undefined): readonly ResourceUse[] {
    if (state?.state !== "running") {
      return [{ anyOf: this.ableAt(step.station), units: step.crewNeeded }];
    }
    const able = ableCrew(this.floor, step.station);
    const free = able.filter(({ id }) => !this.busyCrew.has(id)).slice(0, step.crewNeeded);
    for (const { id } of free) this.busyCrew.add(id);
    return free.map(({ id }) => ({ resource: crewResource(id) }));
  }

  /** Who can work at a station, in order of preference. */
  private ableAt(station: StationId): readonly string[] {
    let ids = this.able.get(station);
    if (ids === undefined) {
      ids = byFewestSkills(ableCrew(this.floor, station)).map(({ id }) => crewResource(id));
      this.able.set(station, ids);
    }
    return ids;
  }

  private releaseOf(
    pair: PairOnFloor,
    route: readonly RouteStep[],
    states: readonly (OperationOnFloor | undefined)[],
    position: number,
  ): number {
    const step = route[position] as RouteStep;
    let release = 0;
    for (const earlier of step.after) {
      const doneAt = states[earlier]?.state === "done" ? states[earlier]?.doneAtMinute : undefined;
      const wait = (route[earlier] as RouteStep).waitMinutes?.typ ?? 0;
      if (doneAt !== undefined) release = Math.max(release, doneAt + wait - this.originMinute);
    }
    for (const { holdsUpStation, expectedDate } of pair.waitingOn) {
      if (holdsUpStation !== step.station || expectedDate === undefined) continue;
      release = Math.max(release, shopMinute(expectedDate, 0) - this.originMinute);
    }
    if (pair.frozenPressStart !== undefined && step.station === stationFor(this.floor, "lay-up").id) {
      const layUp = plannedMinutes(this.floor, step, 1, null).work;
      release = Math.max(release, pair.frozenPressStart.startMinute - layUp - this.originMinute);
    }
    return release;
  }
}

/** What a step occupies, and what of it until the press opens; null: nothing longer than the work. */
interface Needs {
  readonly uses: readonly ResourceUse[];
  readonly held: readonly string[] | null;
}

interface ProofGate {
  readonly station: StationId;
  readonly spec: OperationSpec;
}

export function stepId(step: RouteStep): string {
  return step.kind === "rest" ? `${step.station}.rest` : step.station;
}

export function isPressWork(step: RouteStep): boolean {
  return step.kind === "work" && step.uses.includes("press");
}

function heldInPress(use: ResourceUse): readonly string[] {
  const ids = "anyOf" in use ? use.anyOf : [use.resource];
  return ids.filter((id) => !id.startsWith("crew:"));
}

/** People who know a station, the reserve left out. */
function ableCrew(floor: FloorCatalog, station: StationId): readonly FloorCatalog["crew"][number][] {
  return floor.crew.filter(({ stations, isReserve }) => !isReserve && stations.includes(station));
}

/** The person with the fewest other skills first, so that the many-sided stay free. */
function byFewestSkills(crew: readonly FloorCatalog["crew"][number][]): readonly FloorCatalog["crew"][number][] {
  return [...crew].sort((a, b) => a.stations.length - b.stations.length);
}

/** State of each step; whatever comes before begun work has been done, even if nobody ticked it. */
function statesOf(pair: PairOnFloor, route: readonly RouteStep[]): readonly (OperationOnFloor | undefined)[] {
  const states = route.map((step) => latestState(pair.operations, step));
  for (let position = route.length - 1; position >= 0; position--) {
    if (isAhead(states[position])) continue;
    for (const earlier of route[position]?.after ?? []) {
      const station = route[earlier]?.station;
      if (station !== undefined && states[earlier]?.state !== "done") states[earlier] = { station, state: "done" };
    }
  }
  return states;
}

/** Still to begin. */
function isAhead(state: OperationOnFloor | undefined): boolean {
  return state?.state !== "done" && state?.state !== "running";
}

function latestState(operations: readonly OperationOnFloor[], step: RouteStep): OperationOnFloor | undefined {
  const found = operations.filter(({ station }) => station === step.station);
  const latest = found.reduce<OperationOnFloor | undefined>(
    (last, next) => (last === undefined || (next.visit ?? 0) >= (last.visit ?? 0) ? next : last),
    undefined,
  );
  if (latest === undefined || step.kind === "work") return latest;
  // The rest is over with the station's work only when the next station has begun: it is kept by its end instead.
  return latest.state === "done" ? { station: step.station, state: "done", ...doneAt(latest) } : undefined;
}

function doneAt({ doneAtMinute }: OperationOnFloor): { readonly doneAtMinute?: ShopMinute } {
  return doneAtMinute === undefined ? {} : { doneAtMinute };
}

export function workingDayMinutes(floor: FloorCatalog): number {
  return floor.hours.windows.reduce((sum, { fromMinute, toMinute }) => sum + toMinute - fromMinute, 0);
}

/** Typical minutes of a step: elapsed work (people side by side) and wait; what a running step has left, at least 5. */
export function plannedMinutes(
  floor: FloorCatalog,
  step: RouteStep,
  minutesShare: number,
  spentMinutes: number | null,
): { readonly work: number; readonly wait: number } {
  const touch = step.minutes.typ * minutesShare + step.extraMinutes;
  return splitMinutes(floor, step, touch, step.waitMinutes?.typ ?? 0, spentMinutes);
}

const leastLeftMinutes = 5;

/** Elapsed work and wait of a step from its touch minutes, planned or sampled. */
export function splitMinutes(
  floor: FloorCatalog,
  step: RouteStep,
  touchMinutes: number,
  waitMinutes: number,
  spentMinutes: number | null,
): { readonly work: number; readonly wait: number } {
  if (step.kind === "rest") return { work: 0, wait: Math.round(waitMinutes) };
  const cycle = isPressWork(step) ? pressCycleMinutes(floor) : 0;
  const unload = isPressWork(step) ? floor.pressProgramme.unloadMinutes : 0;
  const work = Math.max(1, Math.round(touchMinutes / Math.max(1, step.crewNeeded)) + unload);
  const wait = Math.round(waitMinutes) + cycle;
  if (spentMinutes === null) return { work, wait };
  if (cycle === 0) return { work: Math.max(leastLeftMinutes, work - spentMinutes), wait };
  // In the press the clock runs on after the loading.
  const left = Math.max(leastLeftMinutes, work + cycle - spentMinutes);
  return left > cycle ? { work: left - cycle, wait: cycle } : { work: 0, wait: left };
}

/** Waiting for something that has neither a date nor a usual length. */
export function isOpenEnded(waitingOn: readonly WaitingOn[]): boolean {
  return waitingOn.some(({ reason, expectedDate }) => expectedDate === undefined && reason !== "proof");
}
