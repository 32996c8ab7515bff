/** A book for the floor: what its own starts and ends say against what is assumed. */
import { stationFor } from "#engine/floor";
import { dateOfDay, dateOfShopMinute, type FloorCatalog, minutesPerDay } from "#engine/routing";
import { daysLookedAt, learnPersonDays, learnPressDays, learnShocks } from "./lost-days";
import { learnRate } from "./rates";
import { learnStation, residualsOf } from "./stations";
import type { FloorHistory, FloorLearning, FloorLearningSettings, ReworkLearning } from "./types";
import { floorClock, sortVisits } from "./visits";
import { learnWeeks } from "./weeks";

/**
 * What the history teaches about a floor, and the book that would follow from it.
 *
 * @param floor the settings, without any book: what was learnt once is not learnt again from the same days
 */
export function learnFloor(
  floor: FloorCatalog,
  history: FloorHistory,
  settings: FloorLearningSettings,
  version: string,
): FloorLearning {
  const clock = floorClock(floor, history);
  const sorted = sortVisits(floor, history, settings, clock);
  const fits = new Map(floor.stations.map((station) => [station.id, learnStation(station, sorted, settings)] as const));
  const stations = [...fits.values()].map(({ learning }) => learning);
  const days = daysLookedAt(floor, history);
  const rework = floor.rework.map((loop) => learnLoop(floor, history, settings, loop));
  const pressDays = learnPressDays(floor, history, settings, days);
  const personDays = learnPersonDays(floor, history, settings, days);
  const shocks = learnShocks(floor, history, settings, days);
  const weeks = learnWeeks(residualsOf(fits), floor.weekPaceLogSd ?? 0, settings);
  const pairs = pairsThrough(floor, history);
  return {
    fromDate: dateOfDay(days[0] ?? Math.floor(history.fromMinute / minutesPerDay)),
    toDate: dateOfShopMinute(history.toMinute),
    workingDays: days.length,
    pairs,
    enoughPairs: pairs >= settings.leastPairs,
    stations,
    rework,
    pressDays,
    personDays,
    shocks,
    weeks,
    leftOut: sorted.leftOut,
    proposal: {
      version,
      stations: stations.map(({ station, learnt }) => ({ station, minutes: learnt })),
      rework: rework.map(({ loop, learnt }) => ({ loop, probability: shortChance(learnt) })),
      pressDayLostProbability: shortChance(pressDays.learnt),
      personDayLostProbability: shortChance(personDays.learnt),
      sharedShock: { probability: shortChance(shocks.learnt), delayWorkingDays: shocks.learntDelay },
      weekPaceLogSd: Math.round(weeks.learnt * 1000) / 1000,
    },
  };
}

/** A book has numbers a person can read out: tenths of a per cent, at most nine of ten. */
function shortChance(chance: number): number {
  return Math.min(0.9, Math.round(chance * 1000) / 1000);
}

/** Pairs that have passed the last station. */
function pairsThrough(floor: FloorCatalog, { visits }: FloorHistory): number {
  const check = stationFor(floor, "check").id;
  return new Set(
    visits.flatMap(({ pair, station, endMinute }) => (station === check && endMinute !== null ? [pair] : [])),
  ).size;
}

/**
 * A redo belongs to the loop that has its first station and the fewest others: from the finish on it was found at the check,
 * from the core on at the trim. A pass is a redo, or the end of the loop's last station with no redo of the loop after it.
 */
function learnLoop(
  floor: FloorCatalog,
  { visits, redos }: FloorHistory,
  settings: FloorLearningSettings,
  loop: FloorCatalog["rework"][number],
): ReworkLearning {
  const loopOf = (from: string) =>
    floor.rework
      .filter(({ redoStations }) => redoStations.includes(from))
      .toSorted((a, b) => a.redoStations.length - b.redoStations.length)[0]?.id;
  const own = redos.filter(({ from }) => loopOf(from) === loop.id);
  const lastRedo = new Map<string, number>();
  for (const { pair, atMinute } of own) lastRedo.set(pair, Math.max(atMinute, lastRedo.get(pair) ?? atMinute));
  const passed = new Set(
    visits.flatMap(({ pair, station, endMinute }) =>
      station === loop.afterStation &&
      endMinute !== null &&
      endMinute > (lastRedo.get(pair) ?? Number.NEGATIVE_INFINITY)
        ? [pair]
        : [],
    ),
  );
  const rate = learnRate(own.length + passed.size, own.length, loop.probability, settings.prior.passes);
  return { loop: loop.id, afterStation: loop.afterStation, ...rate };
}
