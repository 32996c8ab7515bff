/** What the days until ready are spent on, largest first, in words. */

import { textForPeople } from "../../lib/engine/units";
import type { DateRange } from "../../lib/services/views";
import type { SheetWords } from "./sheet/words";
import { wordOf } from "./words";

export function Drivers({
  drivers,
  words,
}: {
  readonly drivers: DateRange["drivers"];
  readonly words: SheetWords["date"];
}) {
  return (
    <ul className="list-disc pl-5">
      {drivers.map((driver) => {
        const place =
          driver.mould ?? (driver.station === undefined ? "" : wordOf(words.stations, String(driver.station)));
        return (
          <li key={`${driver.code} ${place}`}>
            {wordOf(words.driverNames, driver.code)}
            {place ? `, ${place}` : ""}: <span className="measure">{textForPeople(driver.workingDays, 1)}</span> working
            days
          </li>
        );
      })}
    </ul>
  );
}
