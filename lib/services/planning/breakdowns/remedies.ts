/** Ways on from a breakdown, before their effect is known. Rates and lengths are the shop's own settings. */

import names from "#content/copy/names.json";
import type { StationId } from "#engine/floor";
import { dayIndex, type FloorChange, minutesPerDay, pairRank, type QueueSituation, weekdayOf } from "#engine/routing";
import type { RemedySettings } from "#schemas/content/index";
import type { QueueEffect } from "#shop/queue/views";
import type { RemedyCode, RemedyOption } from "./views";

export interface Remedy extends Pick<RemedyOption, "changes" | "places" | "costCents" | "figures" | "procedure"> {
  readonly way: RemedyCode;
}

/**
 * A cure with nobody there is among them only where the shop has named its own written procedure for it.
 *
 * @param situation the queue with the breakdown in it
 * @param fromMinute when the extra hours begin: at the end of what is down, else now
 */
export function remedies(
  situation: QueueSituation,
  effect: QueueEffect,
  fromMinute: number,
  settings: RemedySettings,
): readonly Remedy[] {
  const { floor } = situation;
  const { overtime, overnightCure, secondPress, swap } = settings;
  const { procedure } = overnightCure;
  const crew = floor.crew.filter(({ isReserve }) => !isReserve).length;
  const hours = (overtime.evenings * overtime.minutesAnEvening) / 60;
  const evenings = { hours: overtime.minutesAnEvening / 60, days: overtime.evenings };
  const costOf = (people: number) => Math.round(hours * people * overtime.centsPerPersonHour);
  const places = swaps(situation, effect, swap.slackToLendWorkingDays);
  const [firstDay = Math.floor(fromMinute / minutesPerDay)] = workingDays(situation, situation.now, 2).slice(1);
  return [
    { way: "wait", changes: [], places: [], costCents: 0 },
    {
      way: "overtime",
      changes: extraHours(situation, fromMinute, overtime),
      places: [],
      costCents: costOf(crew),
      figures: evenings,
    },
    ...(procedure === null
      ? []
      : [
          {
            way: "overnight-cure" as const,
            changes: extraHours(situation, fromMinute, overtime, overnightCure.stations),
            places: [],
            costCents: costOf(overnightCure.people),
            figures: evenings,
            procedure,
          },
        ]),
    {
      way: "second-press",
      changes: [
        {
          kind: "extra-press",
          press: { id: `hired-press-${firstDay}`, label: names.hiredPress, kind: secondPress.kind },
          fromMinute: firstDay * minutesPerDay,
          toMinute: (firstDay + secondPress.weeks * 7) * minutesPerDay,
        },
      ],
      places: [],
      costCents: secondPress.weeks * secondPress.centsPerWeek,
      figures: { weeks: secondPress.weeks },
    },
    ...(places.length === 0 ? [] : [{ way: "swap-with-slack" as const, changes: [], places, costCents: 0 }]),
  ];
}

/** Evenings after closing time, one for each working day: one change from the first to the last. */
function extraHours(
  situation: QueueSituation,
  fromMinute: number,
  { evenings, minutesAnEvening }: RemedySettings["overtime"],
  stations?: readonly StationId[],
): readonly FloorChange[] {
  const days = workingDays(situation, fromMinute, evenings);
  const close = Math.max(...situation.floor.hours.windows.map(({ toMinute }) => toMinute));
  const daily = { fromMinute: close, toMinute: close + minutesAnEvening };
  const minuteOn = (day: number | undefined, minute: number) => (day ?? 0) * minutesPerDay + minute;
  return [
    {
      kind: "overtime",
      ...(stations === undefined ? {} : { stations }),
      fromMinute: minuteOn(days[0], daily.fromMinute),
      toMinute: minuteOn(days.at(-1), daily.toMinute),
      daily,
    },
  ];
}

/** Pairs that cross their promise go before the first pair with days in hand that would go before them. */
function swaps(situation: QueueSituation, effect: QueueEffect, slackToLend: number): RemedyOption["places"] {
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
