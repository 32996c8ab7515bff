import { hashText, keyedDraw, normalTable, portableExp, sampleTable, unitFromU32 } from "#engine/math";
import { type CompiledProblem, clockMinuteOf, type WorkCalendar, workMinutesBefore } from "#engine/schedule";
import { type DispatchSampler, type RedoRule, threePointTable } from "#engine/simulate";
import type { FloorCatalog, ReworkLoop } from "./floor";
import { crewResource, type FloorOperation, pressResource, splitMinutes, workingDayMinutes } from "./floor-problem";
import { minutesPerDay } from "./shop-time";

/** Salts that keep draws of different meaning apart. */
const waitSalt = 100;
const reworkSalt = 200;
const delaySalt = 300;
const shockSalt = 400;
const paceSalt = 500;
/** A second redo of the same work is a matter for people, not for dates. */
const mostRedos = 2;
/** Days of presses and people drawn ahead. */
export const outageDays = 400;

export interface PairRedoRule extends RedoRule {
  readonly loop: ReworkLoop;
  readonly loopIndex: number;
}

/** Redo rules of every pair whose route has the loop's stations. */
export function redoRules(floor: FloorCatalog, operations: readonly FloorOperation[]): readonly PairRedoRule[] {
  const byPair = new Map<number, number[]>();
  operations.forEach((operation, index) => {
    const list = byPair.get(operation.pair) ?? [];
    list.push(index);
    byPair.set(operation.pair, list);
  });
  return [...byPair.values()].flatMap((indices) =>
    floor.rework.flatMap((loop, loopIndex): readonly PairRedoRule[] => {
      const at = (index: number) => operations[index] as FloorOperation;
      const last = indices.find(
        (index) => at(index).step.station === loop.afterStation && at(index).step.kind === "work",
      );
      if (last === undefined) return [];
      const redo = indices.filter(
        (index) => !at(index).isProofGate && loop.redoStations.includes(at(index).step.station),
      );
      return [{ operation: last, redo, loop, loopIndex }];
    }),
  );
}

/** Draws for one set of operations; set {@link FloorSampler.replication} and run. */
export class FloorSampler implements DispatchSampler {
  replication = 0;
  private readonly keys: Int32Array;
  private readonly touchTables: (Float64Array | null)[];
  private readonly waitTables: (Float64Array | null)[];
  private readonly ruleOf = new Map<number, PairRedoRule>();
  private readonly touchShare: Float64Array;
  private outageOf = new Map<number, Int32Array>();
  private outagesFor = -1;
  /** What can be away for a day, with its chance. */
  private readonly fallible: readonly { readonly resource: number; readonly key: number; readonly chance: number }[];

  constructor(
    private readonly floor: FloorCatalog,
    problem: CompiledProblem,
    private readonly operations: readonly FloorOperation[],
    private readonly seed: number,
    private readonly calendar: WorkCalendar,
    private readonly nowMinute: number,
    rules: readonly PairRedoRule[],
  ) {
    this.keys = Int32Array.from(operations, ({ pairKey }) => hashText(pairKey));
    this.touchTables = operations.map(({ step }) => (step.kind === "work" ? threePointTable(step.minutes) : null));
    this.waitTables = operations.map(({ step }) =>
      step.waitMinutes === null ? null : threePointTable(step.waitMinutes),
    );
    this.touchShare = Float64Array.from(operations, ({ minutesShare }) => minutesShare);
    for (const rule of rules) this.ruleOf.set(rule.operation, rule);
    for (const rule of rules) for (const operation of rule.redo) this.ruleRedoing.set(operation, rule);
    const fallible = (name: string, id: string, chance: number) => ({
      resource: problem.problem.resources.findIndex((resource) => resource.id === name),
      key: hashText(id),
      chance,
    });
    const away = floor.personDayLostProbability ?? 0;
    this.fallible = [
      ...floor.presses.map(({ id }) => fallible(pressResource(id), id, floor.pressDayLostProbability)),
      ...(away > 0 ? floor.crew.map(({ id }) => fallible(crewResource(id), id, away)) : []),
    ];
  }

  private readonly ruleRedoing = new Map<number, PairRedoRule>();

  minutes(operation: number, visit: number): number {
    const meta = this.operations[operation] as FloorOperation;
    if (meta.step.kind === "rest" || (meta.isDone && visit === 0)) return 0;
    return this.split(operation, visit).work;
  }

  unattended(operation: number, visit: number): number {
    const meta = this.operations[operation] as FloorOperation;
    if (meta.isDone && visit === 0) return 0;
    if (meta.isProofGate) return this.proofClockMinutes(operation);
    return this.split(operation, visit).wait;
  }

  private last: { readonly work: number; readonly wait: number } = { work: 0, wait: 0 };
  private lastOperation = -1;
  private lastVisit = -1;
  private lastReplication = -1;

  /** Work and wait of a pass; asked for one after the other, drawn once. */
  private split(operation: number, visit: number): { readonly work: number; readonly wait: number } {
    if (this.lastOperation === operation && this.lastVisit === visit && this.lastReplication === this.replication)
      return this.last;
    this.last = this.drawSplit(operation, visit);
    this.lastOperation = operation;
    this.lastVisit = visit;
    this.lastReplication = this.replication;
    return this.last;
  }

  private drawSplit(operation: number, visit: number): { readonly work: number; readonly wait: number } {
    const meta = this.operations[operation] as FloorOperation;
    const share = visit === 0 ? 1 : (this.ruleRedoing.get(operation)?.loop.minutesShare ?? 1);
    const touch = this.touchTables[operation] ?? null;
    const touchMinutes =
      touch === null
        ? 0
        : (sampleTable(touch, this.draw(operation, 0, visit)) * (this.touchShare[operation] as number) +
            meta.step.extraMinutes) *
          share;
    const spent = visit === 0 ? meta.spentMinutes : null;
    return splitMinutes(this.floor, meta.step, touchMinutes, this.waitOf(operation, visit), spent);
  }

  private waitOf(operation: number, visit: number): number {
    const table = this.waitTables[operation] ?? null;
    return table === null ? 0 : sampleTable(table, this.draw(operation, waitSalt, visit));
  }

  /** A proof takes working days: from now to the clock minute at which that much working time has passed. */
  private proofClockMinutes(operation: number): number {
    const work = Math.round(this.waitOf(operation, 0));
    return clockMinuteOf(this.calendar, workMinutesBefore(this.calendar, this.nowMinute) + work) - this.nowMinute;
  }

  private draw(operation: number, salt: number, visit: number): number {
    const step = (this.operations[operation] as FloorOperation).step;
    const code = step.place * 4 + (step.kind === "rest" ? 1 : 0);
    return keyedDraw(this.seed, this.replication, this.keys[operation] as number, code + salt, visit);
  }

  redoFrom(operation: number, visit: number, end: number): number {
    const rule = this.ruleOf.get(operation);
    const meta = this.operations[operation] as FloorOperation;
    if (rule === undefined || visit >= mostRedos || (meta.isDone && visit === 0)) return -1;
    const chance = unitFromU32(this.draw(operation, reworkSalt + rule.loopIndex, visit));
    if (chance >= rule.loop.probability) return -1;
    const delay = rule.loop.delayWorkingDays;
    if (delay === undefined) return end;
    const share = unitFromU32(this.draw(operation, delaySalt + rule.loopIndex, visit));
    const minutes = Math.round((delay.low + (delay.high - delay.low) * share) * workingDayMinutes(this.floor));
    return clockMinuteOf(this.calendar, workMinutesBefore(this.calendar, end) + minutes);
  }

  outages(resource: number): Int32Array | null {
    if (this.outagesFor !== this.replication) this.drawOutages();
    return this.outageOf.get(resource) ?? null;
  }

  private drawOutages(): void {
    this.outagesFor = this.replication;
    this.outageOf = new Map();
    const today = Math.floor(this.nowMinute / minutesPerDay);
    for (const { resource, key, chance } of this.fallible) {
      const lost: number[] = [];
      for (let day = today + 1; day < today + outageDays; day++) {
        const draw = unitFromU32(keyedDraw(this.seed, this.replication, key, waitSalt, day));
        if (draw < chance) lost.push(day * minutesPerDay, (day + 1) * minutesPerDay);
      }
      this.outageOf.set(resource, Int32Array.from(lost));
    }
  }
}

/** A shock of one replication on the working-time axis: everything that ends after it comes later by `delay`. */
export interface Shock {
  readonly afterWorkMinutes: number;
  readonly delayWorkMinutes: number;
}

/** Windows drawn ahead: about a year, longer than any order waits. */
const shockWindows = 9;

/**
 * The shared shocks of a replication, in order of time: into each window of the floor's setting one falls with its chance, at
 * any time alike, and stops the whole shop for some working days. Independent noise averages out over a long route; this
 * does not.
 */
export function sharedShocks(floor: FloorCatalog, seed: number, replication: number): readonly Shock[] {
  const { probability, windowWorkingDays, delayWorkingDays } = floor.sharedShock;
  const day = workingDayMinutes(floor);
  const found: Shock[] = [];
  for (let window = 0; window < shockWindows; window++) {
    const draw = (index: number) => unitFromU32(keyedDraw(seed, replication, shockSalt, 3 * window + index, 0));
    if (draw(0) >= probability) continue;
    found.push({
      afterWorkMinutes: Math.round((window + draw(1)) * windowWorkingDays * day),
      delayWorkMinutes: Math.round(
        (delayWorkingDays.low + draw(2) * (delayWorkingDays.high - delayWorkingDays.low)) * day,
      ),
    });
  }
  return [...found, ...weekPaces(floor, seed, replication)].sort((a, b) => a.afterWorkMinutes - b.afterWorkMinutes);
}

/** Weeks drawn ahead: as far as the shocks. */
const paceWeeks = 54;

/**
 * Slow and quick weeks of a replication as delays, negative for quick ones: lognormal paces with mean 1. A week has as many
 * working days as the shop's calendar; what rests meanwhile is stretched with the work.
 */
function weekPaces(floor: FloorCatalog, seed: number, replication: number): readonly Shock[] {
  const sd = floor.weekPaceLogSd ?? 0;
  if (sd === 0) return [];
  const week = workingDayMinutes(floor) * floor.hours.workingWeekdays.length;
  return Array.from({ length: paceWeeks }, (_, index) => {
    const draw = (which: number) => keyedDraw(seed, replication, paceSalt, 2 * index + which, 0);
    const pace = portableExp(sd * sampleTable(normalTable(), draw(0)) - sd ** 2 / 2);
    return {
      afterWorkMinutes: Math.round((index + unitFromU32(draw(1))) * week),
      delayWorkMinutes: Math.round((pace - 1) * week),
    };
  });
}
