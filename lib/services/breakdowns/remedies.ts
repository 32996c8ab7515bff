/** Ways on from a breakdown, before their effect is known. Rates and lengths are the demo shop's own: invented, no source. */
import {
  dayIndex,
  type FloorChange,
  minutesPerDay,
  pairRank,
  type QueueSituation,
  weekdayOf,
} from "../../engine/routing";
import type { QueueEffect, RemedyCode, RemedyOption } from "../views";
import { extraHourCents, secondPressCentsPerWeek } from "./rates";

export interface Remedy extends Pick<RemedyOption, "changes" | "places" | "costCents"> {
  readonly way: RemedyCode;
}

const evenings = 10;
const eveningMinutes = 120;
const layUpAndPress = [10, 11] as const;
/** A pair with this many working days in hand can let another pass. */
const slackToLend = 3;

/**
 * @param situation the queue with the breakdown in it
 * @param fromMinute when the extra hours begin: at the end of what is down, else now
 */
export function remedies(situation: QueueSituation, effect: QueueEffect, fromMinute: number): readonly Remedy[] {
  const { floor } = situation;
  const days = workingDays(situation, fromMinute, evenings);
  const close = Math.max(...floor.hours.windows.map(({ toMinute }) => toMinute));
  const overtime = (stations?: readonly number[]): readonly FloorChange[] =>
    days.map((day) => ({
      kind: "overtime",
      fromMinute: day * minutesPerDay + close,
      toMinute: day * minutesPerDay + close + eveningMinutes,
      ...(stations === undefined ? {} : { stations }),
    }));
  const crew = floor.crew.filter(({ isReserve }) => !isReserve).length;
  const hours = (days.length * eveningMinutes) / 60;
  const places = swaps(situation, effect);
  const [firstDay = Math.floor(fromMinute / minutesPerDay)] = workingDays(situation, situation.now, 2).slice(1);
  return [
    { way: "wait", changes: [], places: [], costCents: 0 },
    { way: "overtime", changes: overtime(), places: [], costCents: hours * crew * extraHourCents },
    {
      way: "overnight-cure",
      changes: overtime(layUpAndPress),
      places: [],
      costCents: hours * 2 * extraHourCents,
    },
    {
      way: "second-press",
      changes: [
        {
          kind: "extra-press",
          press: { id: `hired-press-${firstDay}`, label: "Hired press", kind: "heated" },
          fromMinute: firstDay * minutesPerDay,
          toMinute: (firstDay + 14) * minutesPerDay,
        },
      ],
      places: [],
      costCents: 2 * secondPressCentsPerWeek,
    },
    ...(places.length === 0 ? [] : [{ way: "swap-with-slack" as const, changes: [], places, costCents: 0 }]),
  ];
}

/** Pairs that cross their promise go before the first pair with days in hand that would go before them. */
function swaps(situation: QueueSituation, effect: QueueEffect): RemedyOption["places"] {
  const slack = new Map(effect.slack.map(({ pairId, after }) => [pairId as string, after] as const));
  const crossing = new Set<string>(effect.crossing.map(({ pairId }) => pairId));
  const lenders = situation.pairs.filter(
    (pair) => !crossing.has(pair.pairId) && (slack.get(pair.pairId) ?? 0) >= slackToLend,
  );
  const ranks = lenders.map(pairRank);
  return situation.pairs
    .filter(({ pairId }) => crossing.has(pairId))
    .flatMap((pair, index) => {
      const earlier = ranks.filter((rank) => rank <= pairRank(pair));
      return earlier.length === 0 ? [] : [{ pairId: pair.pairId, placeMinute: Math.min(...earlier) - 60 + index }];
    });
}

function workingDays({ floor }: QueueSituation, fromMinute: number, count: number): readonly number[] {
  const closed = new Set(floor.hours.closedDays.map(({ date }) => dayIndex(date)));
  const days: number[] = [];
  for (let day = Math.floor(fromMinute / minutesPerDay); days.length < count; day += 1) {
    if (floor.hours.workingWeekdays.includes(weekdayOf(day)) && !closed.has(day)) days.push(day);
  }
  return days;
}
