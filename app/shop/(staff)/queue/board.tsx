/** Stations by days: each pair at its station on its day, as the plan has it. */

import { cx } from "@/app/_ui/cx";
import { dayText } from "@/app/_ui/date-range";
import { fill } from "@/app/_ui/words";
import words from "@/content/copy/shop.json";
import type { QueueBoard, QueueCell, QueueDay } from "@/lib/services";
import { timeOfDay } from "../../say";

const w = words.queue;

const signs: Readonly<Record<QueueCell["state"], string>> = {
  running: "▸",
  ready: "○",
  blocked: "·",
  done: "✓",
  redo: "↺",
};

const weekdays = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"] as const;
const weekday = (iso: string) => weekdays[new Date(`${iso}T00:00:00Z`).getUTCDay()];

export function Board({ board }: { readonly board: QueueBoard }) {
  const days = board.days.filter((day) => day.isWorkingDay || day.cells.length > 0);
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset is for controls; this groups a table that may scroll */}
      <div
        role="group"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
        tabIndex={0}
        aria-label={w.view.board}
        className="overflow-x-auto border-y border-rule"
      >
        <table className="w-full border-collapse text-sm">
          <caption className="sr-only">{w.view.board}</caption>
          <thead>
            <tr>
              <th scope="col" className="sticky left-0 bg-paper px-2 py-2 text-left font-medium text-pencil">
                {w.station}
              </th>
              {days.map((day) => (
                <th
                  key={day.date}
                  scope="col"
                  className={cx(
                    "border-l border-rule px-2 py-2 text-left font-medium whitespace-nowrap",
                    day.date === board.today ? "text-larch" : "text-pencil",
                  )}
                >
                  {weekday(day.date)} {dayText(day.date, false)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {board.stations.map((station) => (
              <tr key={station.number} className="border-t border-rule align-top">
                <th scope="row" className="sticky left-0 min-w-40 bg-paper px-2 py-2 text-left font-normal">
                  <a href={`/shop/queue?view=floor&station=${station.number}`}>
                    {station.number} {station.name}
                  </a>
                  <span className="block text-xs text-pencil">
                    {fill(w.onStation, { ready: station.ready, running: station.running })}
                  </span>
                </th>
                {days.map((day) => (
                  <td key={day.date} className="border-l border-rule px-2 py-2">
                    <Cells day={day} station={station.number} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="mt-2 text-sm text-pencil">{w.legend}</p>
    </>
  );
}

function Cells({ day, station }: { readonly day: QueueDay; readonly station: number }) {
  const cells = day.cells.filter((cell) => cell.station === station);
  if (cells.length === 0) return null;
  return (
    <ul className="flex flex-wrap gap-x-3 gap-y-1">
      {cells.map((cell) => (
        <li key={cell.operationId} className="whitespace-nowrap">
          <span aria-hidden="true" className={cx("mr-1", cell.state === "running" ? "text-larch" : "text-pencil")}>
            {signs[cell.state]}
          </span>
          <a
            href={`/shop/pair/${cell.serial}`}
            className="measure inline-block min-h-6"
            aria-label={`${cell.serial}, ${w.states[cell.state]}, ${timeOfDay(cell.startsAt)}`}
          >
            {cell.serial.replace(/^[A-Z]+-/, "")}
          </a>
        </li>
      ))}
    </ul>
  );
}
