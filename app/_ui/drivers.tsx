/** What the days until ready are spent on, largest first, in words, with the days that can be named. */

import { textForPeople } from "#engine/units";
import { onlyWeekdays } from "#lib/engine/routing/shop-time";
import type { DateRange } from "#services/views";
import { dayText } from "./date-range";
import type { SheetWords } from "./sheet/words";
import { fill, wordOf } from "./words";

type Driver = DateRange["drivers"][number];

export function Drivers({
  drivers,
  words,
}: {
  readonly drivers: DateRange["drivers"];
  readonly words: SheetWords["date"];
}) {
  return (
    <ul className="list-disc pl-5">
      {drivers.map((driver) => (
        <li key={`${driver.code} ${driver.mould ?? driver.station ?? ""}`}>
          {causeText(driver, words)}:{" "}
          <span className="measure">
            {driver.workingDays === 1
              ? words.oneWorkingDay
              : fill(words.workingDays, { days: textForPeople(driver.workingDays, 1) })}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** "The press is full until 12 January; your mould runs on Tuesdays" */
export function causeText(driver: Driver, words: SheetWords["date"]): string {
  const station = stationText(driver, words);
  const until = driver.untilDate;
  const sentence = until === undefined ? undefined : (words.driverUntil as Record<string, string>)[driver.code];
  if (until === undefined || sentence === undefined) {
    const place = driver.mould ?? station;
    return `${wordOf(words.driverNames, driver.code)}${place === "" ? "" : `, ${place}`}`;
  }
  const told = fill(sentence, { until: dayText(until, false), station, mould: driver.mould });
  const days = driver.mouldDays ?? [];
  return days.length === 0 ? told : `${told}; ${fill(words.mouldOn, { days: daysText(days, words) })}`;
}

/** In the skier's words where there are any for this station, else by the name it has on its floor. */
function stationText({ station, stationName }: Driver, words: SheetWords["date"]): string {
  if (station === undefined) return "";
  return (words.stations as Readonly<Record<string, string>>)[station] ?? stationName ?? station;
}

function daysText(days: NonNullable<Driver["mouldDays"]>, words: SheetWords["date"]): string {
  const weekdays = onlyWeekdays(days);
  const names =
    weekdays.length > 0
      ? weekdays.map((weekday) => wordOf(words.weekdays, String(weekday)))
      : days.map((day) => dayText(day, false));
  const last = names.at(-1) ?? "";
  return names.length < 2 ? last : `${names.slice(0, -1).join(", ")}${words.and}${last}`;
}
