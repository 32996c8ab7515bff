import {
  busyWidth,
  type CompiledProblem,
  compileProblem,
  DispatchRun,
  dispatchModel,
  type WorkCalendar,
  workCalendar,
  workMinutesBefore,
} from "../schedule";
import { accept, type Outcome } from "../units";
import type { FloorCatalog } from "./floor";
import {
  type FloorProblem,
  type FloorRefusal,
  isOpenEnded,
  isPressWork,
  openQueue,
  shopCalendar,
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
  const { pairs, now, changes } = situation;
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
    taken: takenBy(run, problem),
  };
  const finish = finishOfPairs(queue, pairs.length, run.end);
  const calendar = workCalendar([shopCalendar(floor, Math.floor(queue.originMinute / minutesPerDay), changes)]);
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

/** The shop as one run has placed it; `taken` lists the resources of every operation. */
interface Placed {
  readonly problem: CompiledProblem;
  readonly start: Int32Array;
  readonly workEnd: Int32Array;
  readonly end: Int32Array;
  readonly taken: readonly (readonly number[])[];
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
        crew: resourcesOf(placement, index, "crew:"),
        state,
      },
    ];
  });
}

function visitOf(pair: PairOnFloor | undefined, station: number): number {
  const visits = (pair?.operations ?? []).filter((state) => state.station === station).map(({ visit }) => visit ?? 0);
  return Math.max(0, ...visits);
}

/** Ids of the resources with a prefix that an operation occupies, without the prefix. */
function resourcesOf({ problem, taken }: Placed, operation: number, prefix: string): readonly string[] {
  return (taken[operation] ?? [])
    .map((resource) => problem.problem.resources[resource]?.id ?? "")
    .filter((id) => id.startsWith(prefix))
    .map((id) => id.slice(prefix.length));
}

/** What the run took for every operation. */
function takenBy({ busy }: DispatchRun, problem: CompiledProblem): readonly (readonly number[])[] {
  const taken: number[][] = Array.from({ length: problem.operationCount }, () => []);
  for (let at = 0; at < busy.length; at += busyWidth) {
    taken[busy.data[at + 3] as number]?.push(busy.data[at] as number);
  }
  return taken;
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
  const { problem } = placement;
  const pressed = queue.operations.flatMap((operation, index) =>
    isPressWork(operation.step) && !operation.isDone ? [index] : [],
  );
  pressed.sort((a, b) => (placement.start[a] as number) - (placement.start[b] as number));
  const mounted = new Map<string, number>();
  return pressed.map((index) => {
    const operation = queue.operations[index];
    const press = resourcesOf(placement, index, "press:")[0] ?? "";
    const resource = problem.problem.resources.findIndex(({ id }) => id === `press:${press}`);
    const family = problem.family[index] as number;
    const before = mounted.get(press) ?? (problem.initialFamily[resource] as number);
    mounted.set(press, family);
    const startMinute = queue.originMinute + (placement.start[index] as number);
    return {
      press,
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
