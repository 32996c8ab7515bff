/**
 * Why a date is where it is: the working days that each cause takes on the chain that decides the finish, and the days that
 * can be named, such as the day until which the press is taken.
 */
import { orderStatistic } from "#engine/math";
import type { IsoDate } from "#engine/units";
import type { FloorCatalog } from "./floor";
import { workingDayMinutes } from "./floor-problem";
import { dateOfShopMinute, minutesPerDay } from "./shop-time";
import type { DateDriver, ShopMinute } from "./types";

interface CauseTally {
  /** Working minutes over all runs. */
  minutes: number;
  /** Problem minute at which the last wait of each run that met this cause was over. */
  readonly untilMinutes: number[];
  lastRun: number;
}

const leastShownDays = 0.1;
/** A day is named when at least this share of the runs met the cause: what is free last at the press changes from run to run. */
const namedShare = 0.25;
/** A mould's day is one on which at least this share of the runs has it in a press. */
const usualShare = 0.5;
const mostMouldDays = 6;
/** Causes whose end is a day that means something to the reader. */
const datedCodes: ReadonlySet<string> = new Set([
  "press-queue",
  "mould",
  "crew",
  "station-queue",
  "proof",
  "deposit",
  "material",
  "other-wait",
]);

/** Waits in front of a press, where the mould's own days say when another of its shape runs. */
const pressCodes: ReadonlySet<string> = new Set(["press-queue", "mould"]);

/** Counts causes over runs; keys are `code`, `code:station` or `mould:id`. */
export class CauseTallies {
  private readonly tallies = new Map<string, CauseTally>();
  private runs = 0;

  /** Ends a run: what is booked from here on belongs to the next one. */
  endRun(): void {
    this.runs += 1;
  }

  /**
   * Books working minutes to a cause.
   *
   * @param untilMinute problem minute at which the wait was over; of several in one run the latest counts
   */
  book(cause: string, minutes: number, untilMinute?: number): void {
    if (minutes <= 0) return;
    let tally = this.tallies.get(cause);
    if (tally === undefined) {
      tally = { minutes: 0, untilMinutes: [], lastRun: -1 };
      this.tallies.set(cause, tally);
    }
    tally.minutes += minutes;
    if (untilMinute === undefined) return;
    if (tally.lastRun === this.runs) {
      const last = tally.untilMinutes.length - 1;
      tally.untilMinutes[last] = Math.max(tally.untilMinutes[last] as number, untilMinute);
      return;
    }
    tally.lastRun = this.runs;
    tally.untilMinutes.push(untilMinute);
  }

  /**
   * The causes of a mean run, largest first, those under 0.1 working days left out. A day is the median of the runs that met
   * the cause, and is left out when fewer than a quarter of all did.
   *
   * @param originMinute shop minute of problem minute 0
   * @param mouldDaysOf days on which others have the mould in a press before a problem minute, in the same runs
   */
  drivers(
    floor: FloorCatalog,
    originMinute: ShopMinute,
    mouldDaysOf: (beforeMinute: number) => readonly IsoDate[],
  ): readonly DateDriver[] {
    const day = workingDayMinutes(floor);
    return [...this.tallies]
      .map(([cause, { minutes, untilMinutes }]): DateDriver => {
        const [code = "work", detail] = cause.split(":");
        const workingDays = Math.round((minutes / Math.max(1, this.runs) / day) * 10) / 10;
        const isUsual = untilMinutes.length >= namedShare * this.runs;
        const until = datedCodes.has(code) && isUsual ? median(untilMinutes) : null;
        const mouldDays = pressCodes.has(code) && until !== null ? mouldDaysOf(until) : undefined;
        return {
          code: code as DateDriver["code"],
          workingDays,
          ...(detail === undefined ? {} : code === "mould" ? { mould: detail } : { station: detail }),
          ...(until === null ? {} : { untilDate: dateOfShopMinute(originMinute + until) }),
          ...(mouldDays === undefined || mouldDays.length === 0 ? {} : { mouldDays }),
        };
      })
      .filter(({ workingDays }) => workingDays >= leastShownDays)
      .sort((a, b) => b.workingDays - a.workingDays);
  }
}

function median(minutes: readonly number[]): number | null {
  if (minutes.length === 0) return null;
  return orderStatistic(Float64Array.from(minutes).sort(), 0.5);
}

/**
 * Days on which something is taken up in at least half of the runs, earliest first, at most six.
 *
 * @param startsOfRuns problem minutes at which it is taken up, one list for each run
 */
export function usualDays(startsOfRuns: readonly (readonly number[])[], originMinute: ShopMinute): readonly number[] {
  const seen = new Map<number, number>();
  for (const starts of startsOfRuns) {
    for (const day of new Set(starts.map((start) => Math.floor((originMinute + start) / minutesPerDay)))) {
      seen.set(day, (seen.get(day) ?? 0) + 1);
    }
  }
  return [...seen]
    .filter(([, runs]) => runs >= usualShare * startsOfRuns.length)
    .map(([day]) => day)
    .sort((a, b) => a - b)
    .slice(0, mostMouldDays);
}
