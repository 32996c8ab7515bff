/** Days lost: of a press, of a person, and of the whole shop at once. */

import { portableExp, portableLog } from "#engine/math";
import {
  dateOfDay,
  type FloorCatalog,
  type FloorChange,
  isWorkingDay,
  minutesPerDay,
  workingDayMinutes,
} from "#engine/routing";
import type { IsoDate } from "#engine/units";
import { learnRate } from "./rates";
import type { FloorHistory, FloorLearningSettings, RateLearning, ShockLearning } from "./types";

/** A day is lost when at least this share of its hours is. */
const lostShare = 0.5;
const dayStep = 0.5;

/** Working days that are over and were not shut on purpose. */
export function daysLookedAt(floor: FloorCatalog, history: FloorHistory): readonly number[] {
  const planned = new Set<IsoDate>(history.plannedShut);
  const first = Math.floor(history.fromMinute / minutesPerDay);
  const last = Math.floor(history.toMinute / minutesPerDay);
  return Array.from({ length: Math.max(0, last - first) }, (_, index) => first + index).filter(
    (day) => isWorkingDay(floor.hours, dateOfDay(day)) && !planned.has(dateOfDay(day)),
  );
}

export function learnPressDays(
  floor: FloorCatalog,
  history: FloorHistory,
  settings: FloorLearningSettings,
  days: readonly number[],
): RateLearning {
  const lost = floor.presses.map(({ id }) =>
    lostDays(
      floor,
      history.changes.filter((change) => change.kind === "press-down" && change.press === id),
      days,
    ),
  );
  return learnRate(days.length * floor.presses.length, total(lost), floor.pressDayLostProbability, settings.prior.days);
}

export function learnPersonDays(
  floor: FloorCatalog,
  history: FloorHistory,
  settings: FloorLearningSettings,
  days: readonly number[],
): RateLearning {
  const crew = floor.crew.filter(({ isReserve }) => !isReserve);
  const lost = crew.map(({ id }) =>
    lostDays(
      floor,
      history.changes.filter((change) => change.kind === "person-away" && change.person === id),
      days,
    ),
  );
  return learnRate(days.length * crew.length, total(lost), floor.personDayLostProbability ?? 0, settings.prior.days);
}

const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);

function lostDays(floor: FloorCatalog, changes: readonly FloorChange[], days: readonly number[]): number {
  const whole = workingDayMinutes(floor);
  const lostOn = (day: number) =>
    total(
      floor.hours.windows.map(({ fromMinute, toMinute }) => {
        const [from, to] = [day * minutesPerDay + fromMinute, day * minutesPerDay + toMinute];
        return Math.max(
          0,
          ...changes.map((change) =>
            "toMinute" in change ? Math.min(to, change.toMinute ?? to) - Math.max(from, change.fromMinute) : 0,
          ),
        );
      }),
    );
  return days.filter((day) => lostOn(day) >= lostShare * whole).length;
}

/**
 * Standstills: some working days in a row on which nobody began or ended anything although pairs were under way. Their chance a
 * window is beta-binomial, their length scales the setting's range by a shrunk logarithm.
 */
export function learnShocks(
  floor: FloorCatalog,
  history: FloorHistory,
  settings: FloorLearningSettings,
  days: readonly number[],
): ShockLearning {
  const { probability, windowWorkingDays, delayWorkingDays } = floor.sharedShock;
  const standstills = standstillsOf(history, settings, days);
  const windows = Math.max(standstills.length, days.length / windowWorkingDays);
  const rate = learnRate(windows, standstills.length, probability, settings.prior.windows);
  const assumedMean = (delayWorkingDays.low + delayWorkingDays.high) / 2;
  const seen = standstills.length;
  const mean = seen === 0 ? assumedMean : total(standstills.map(({ workingDays }) => workingDays)) / seen;
  const scale =
    assumedMean === 0 ? 1 : portableExp((seen * portableLog(mean / assumedMean)) / (seen + settings.prior.shocks));
  const round = (value: number) => Math.round((value * scale) / dayStep) * dayStep;
  return {
    ...rate,
    windowWorkingDays,
    standstills,
    assumedDelay: delayWorkingDays,
    learntDelay: { low: round(delayWorkingDays.low), high: Math.max(dayStep, round(delayWorkingDays.high)) },
  };
}

function standstillsOf(
  { visits }: FloorHistory,
  { still }: FloorLearningSettings,
  days: readonly number[],
): ShockLearning["standstills"] {
  const ticked = new Set<number>();
  const underWay = new Map<string, { first: number; last: number }>();
  for (const { pair, startMinute, endMinute } of visits) {
    const [from, to] = [dayOf(startMinute), endMinute === null ? Number.POSITIVE_INFINITY : dayOf(endMinute)];
    ticked.add(from).add(to);
    const known = underWay.get(pair) ?? { first: from, last: to };
    underWay.set(pair, { first: Math.min(known.first, from), last: Math.max(known.last, to) });
  }
  const stays = [...underWay.values()];
  const isStill = (day: number) =>
    !ticked.has(day) && stays.filter(({ first, last }) => first < day && day < last).length >= still.leastPairs;
  const runs: number[][] = [];
  let run: number[] = [];
  for (const day of days) {
    if (isStill(day)) run.push(day);
    else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  if (run.length > 0) runs.push(run);
  return runs
    .filter(({ length }) => length >= still.leastDays)
    .map((each) => ({ from: dateOfDay(each[0] as number), workingDays: each.length }));
}

const dayOf = (minute: number) => Math.floor(minute / minutesPerDay);
