import type { StationId } from "#engine/floor";
import {
  type CompiledProblem,
  calendarNamed,
  compileProblem,
  type WorkCalendar,
  workMinutesBefore,
} from "#engine/schedule";
import { busyWidth, DispatchRun, dispatchModel } from "#engine/simulate";
import { accept, type Outcome } from "#engine/units";
import type { FloorCatalog } from "./floor";
import {
  calendarName,
  crewResource,
  type FloorProblem,
  type FloorRefusal,
  isOpenEnded,
  isPressWork,
  openQueue,
  pressResource,
  workingDayMinutes,
} from "./floor-problem";
import { rankByPromise } from "./rank";
import { dateOfShopMinute, minutesPerDay, shopMinute } from "./shop-time";
import type { QueueSituation } from "./situation";
import type { PairOnFloor, PlannedOperation, PlannedPair, PressSlot, QueuePlan, ShopMinute } from "./types";

/**
 * The plan as everybody on the floor sees it: typical minutes, nothing goes wrong, best promise first, pulled forward only
 * to spare a change of mould. Deterministic; it is optimistic, so dates are promised from {@link promiseRuns}, never from it.
 */
export function planQueue(situation: QueueSituation): Outcome<QueuePlan, FloorRefusal> {
  const { pairs, now } = situation;
  const built = openQueue(situation);
  if (!built.ok) return built;
  const { floor } = built.value;
  if (pairs.length === 0) return accept(emptyPlan(now));
  const queue = built.value;
  const problem = compileProblem(queue.problem);
  const rank = rankByPromise(problem, pairs, queue.originMinute);
  const penalty = floor.planning.mouldGroupingWorkingDays * minutesPerDay;
  const run = new DispatchRun(
    dispatchModel(problem, { rank, changeoverPenalty: penalty, startMinute: queue.nowMinute }),
  );
  run.run(null);
  const placement: Placed = {
    problem,
    start: run.start,
    workEnd: run.workEnd,
    end: run.end,
    ...takenBy(run, problem),
  };
  const finish = finishOfPairs(queue, pairs.length, run.end);
  const calendar = calendarNamed(queue.problem, calendarName);
  const pressPlan = pressSlots(queue, pairs, placement);
  const planned = pairs.map((pair, index) => plannedPair(pair, finish[index] as number, queue, calendar, floor));
  return accept({
    madeAtMinute: now,
    operations: plannedOperations(queue, pairs, placement),
    pairs: planned,
    pressPlan,
    totals: {
      weightedLateMinutes: planned.reduce((sum, pair) => sum + lateMinutes(pair), 0),
      changeoverMinutes: pressPlan.reduce((sum, slot) => sum + slot.changeoverMinutes, 0),
      finishMinute: planned.reduce((last, { finishMinute }) => Math.max(last, finishMinute), now),
    },
  });
}

/** The shop as one run has placed it. */
interface Placed {
  readonly problem: CompiledProblem;
  readonly start: Int32Array;
  readonly workEnd: Int32Array;
  readonly end: Int32Array;
  /** Who does each operation, by their ids on the floor. */
  readonly crewOf: readonly (readonly string[])[];
  /** The press of each operation as a resource; −1: none. */
  readonly pressOf: Int32Array;
}

function emptyPlan(now: ShopMinute): QueuePlan {
  const totals = { weightedLateMinutes: 0, changeoverMinutes: 0, finishMinute: now };
  return { madeAtMinute: now, operations: [], pairs: [], pressPlan: [], totals };
}

/** Clock minutes past the end of the promised day; a hard date counts three times. */
function lateMinutes({ promise, finishMinute }: PlannedPair): number {
  if (promise === null) return 0;
  const late = Math.max(0, finishMinute - shopMinute(promise.date, minutesPerDay));
  return promise.class === "hard-date" ? 3 * late : late;
}

function plannedOperations(
  queue: FloorProblem,
  pairs: readonly PairOnFloor[],
  placement: Placed,
): readonly PlannedOperation[] {
  const { originMinute } = queue;
  return queue.operations.flatMap((operation, index): readonly PlannedOperation[] => {
    if (operation.isDone || operation.isProofGate || operation.step.kind === "rest") return [];
    const startMinute = originMinute + (placement.start[index] as number);
    const state = operation.spentMinutes === null ? "planned" : "running";
    return [
      {
        pairId: operation.pairKey,
        station: operation.step.station,
        visit: visitOf(pairs[operation.pair], operation.step.station),
        startMinute: state === "running" ? startMinute - (operation.spentMinutes ?? 0) : startMinute,
        workEndMinute: originMinute + (placement.workEnd[index] as number),
        freeMinute: originMinute + (placement.end[index] as number),
        date: dateOfShopMinute(startMinute),
        crew: placement.crewOf[index] ?? [],
        state,
      },
    ];
  });
}

function visitOf(pair: PairOnFloor | undefined, station: StationId): number {
  let last = 0;
  for (const state of pair?.operations ?? []) {
    if (state.station === station && (state.visit ?? 0) > last) last = state.visit ?? 0;
  }
  return last;
}

/** The id on the floor of every resource with a prefix; null for the others. */
function idsWith(problem: CompiledProblem, prefix: string): readonly (string | null)[] {
  return problem.problem.resources.map(({ id }) => (id.startsWith(prefix) ? id.slice(prefix.length) : null));
}

/** What the run took for every operation. */
function takenBy({ busy }: DispatchRun, problem: CompiledProblem): Pick<Placed, "crewOf" | "pressOf"> {
  const people = idsWith(problem, crewResource(""));
  const presses = idsWith(problem, pressResource(""));
  const crewOf: string[][] = Array.from({ length: problem.operationCount }, () => []);
  const pressOf = new Int32Array(problem.operationCount).fill(-1);
  for (let at = 0; at < busy.length; at += busyWidth) {
    const resource = busy.data[at] as number;
    const operation = busy.data[at + 3] as number;
    const person = people[resource] ?? null;
    if (person !== null) crewOf[operation]?.push(person);
    else if (presses[resource] !== null) pressOf[operation] = resource;
  }
  return { crewOf, pressOf };
}

/** Problem minute at which everything of each pair is over; not before now. */
function finishOfPairs(queue: FloorProblem, count: number, end: Int32Array): Int32Array {
  const finish = new Int32Array(count).fill(queue.nowMinute);
  queue.operations.forEach(({ pair }, index) => {
    finish[pair] = Math.max(finish[pair] as number, end[index] as number);
  });
  return finish;
}

function pressSlots(queue: FloorProblem, pairs: readonly PairOnFloor[], placement: Placed): readonly PressSlot[] {
  const { problem, pressOf } = placement;
  const presses = idsWith(problem, pressResource(""));
  const pressed = queue.operations.flatMap((operation, index) =>
    isPressWork(operation.step) && !operation.isDone ? [index] : [],
  );
  pressed.sort((a, b) => (placement.start[a] as number) - (placement.start[b] as number));
  const mounted = new Map<number, number>();
  return pressed.map((index) => {
    const operation = queue.operations[index];
    const resource = pressOf[index] as number;
    const family = problem.family[index] as number;
    const before = mounted.get(resource) ?? (problem.initialFamily[resource] as number);
    mounted.set(resource, family);
    const startMinute = queue.originMinute + (placement.start[index] as number);
    return {
      press: presses[resource] ?? "",
      pairId: operation?.pairKey ?? "",
      mould: pairs[operation?.pair ?? 0]?.route.mould ?? "",
      startMinute,
      freeMinute: queue.originMinute + (placement.end[index] as number),
      date: dateOfShopMinute(startMinute),
      changeoverMinutes: operation?.spentMinutes === null ? changeover(problem, resource, before, family) : 0,
    };
  });
}

function changeover(problem: CompiledProblem, resource: number, before: number, family: number): number {
  if (before < 0 || family < 0) return 0;
  return problem.changeover[resource]?.[before * problem.familyCount + family] ?? 0;
}

function plannedPair(
  pair: PairOnFloor,
  finish: number,
  queue: FloorProblem,
  calendar: WorkCalendar,
  floor: FloorCatalog,
): PlannedPair {
  const finishMinute = queue.originMinute + finish;
  return {
    pairId: pair.pairId,
    finishMinute,
    // Work that ends at midnight sharp would belong to the day before; it cannot, the shop is closed then.
    finishDate: dateOfShopMinute(finishMinute),
    promise: pair.promise,
    slackWorkingDays: pair.promise === null ? null : slackDays(pair.promise.date, finish, queue, calendar, floor),
    waitingOn: pair.waitingOn,
    isOpenEnded: isOpenEnded(pair.waitingOn),
  };
}

function slackDays(
  date: NonNullable<PairOnFloor["promise"]>["date"],
  finish: number,
  queue: FloorProblem,
  calendar: WorkCalendar,
  floor: FloorCatalog,
): number {
  const promised = Math.max(0, shopMinute(date, minutesPerDay) - queue.originMinute);
  const work = workMinutesBefore(calendar, promised) - workMinutesBefore(calendar, finish);
  return Math.round((work / workingDayMinutes(floor)) * 10) / 10;
}
