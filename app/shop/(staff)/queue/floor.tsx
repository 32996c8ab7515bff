/** One station at a time, for the phone on the floor: what is running, what is ready, each a target for cold hands. */
import { PageCautions } from "#app/_server/page-cautions.tsx";
import { Part } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { StationCautions } from "#app/shop/station-cautions.tsx";
import words from "#content/copy/shop.json";
import type { QueueBoard } from "#services";

const w = words.queue;

export function Floor({ board, station }: { readonly board: QueueBoard; readonly station: string | undefined }) {
  const busiest = [...board.stations].sort((a, b) => b.running + b.ready - (a.running + a.ready))[0];
  const chosen = board.stations.find((each) => each.station === station) ?? busiest;
  if (!chosen) return null;
  const work = workAt(board, chosen.station);
  return (
    <div className="grid gap-x-10 gap-y-6 *:min-w-0 md:grid-cols-[18rem_minmax(0,1fr)]">
      <nav aria-label={w.station} className="grid grid-cols-4 gap-2 self-start md:grid-cols-1 md:gap-0">
        {board.stations.map((each) => (
          <a
            key={each.station}
            href={`/shop/queue?view=floor&station=${each.station}`}
            aria-label={`${each.number} ${each.name}, ${fill(w.onStation, { ready: each.ready, running: each.running })}`}
            aria-current={each.station === chosen.station ? "page" : undefined}
            className="flex min-h-12 items-center justify-between gap-2 border border-rule px-2 no-underline aria-[current=page]:bg-sheet aria-[current=page]:font-semibold aria-[current=page]:text-ink md:border-x-0 md:border-t-0"
          >
            <span>
              {each.number}
              <span className="max-md:hidden"> {each.name}</span>
            </span>
            <span className="measure text-pencil">{each.ready + each.running || ""}</span>
          </a>
        ))}
      </nav>
      <Part title={`${chosen.number} ${chosen.name}`} id="station">
        {work.length === 0 ? (
          <p className="text-pencil">{w.noWork}</p>
        ) : (
          <ul className="grid gap-3">
            {work.map((pair) => (
              <li key={pair.serial}>
                <a
                  href={`/shop/pair/${pair.serial}`}
                  className="flex min-h-14 flex-wrap items-center justify-between gap-x-4 border border-control bg-sheet px-4 py-2 text-ink no-underline"
                >
                  <span className="text-lg font-semibold">{pair.serial}</span>
                  <span>{pair.ski}</span>
                  <span className={pair.state === "running" ? "text-larch" : "text-pencil"}>
                    {pair.state === "running" ? "▸" : "○"} {w.states[pair.state]}
                  </span>
                </a>
              </li>
            ))}
          </ul>
        )}
        <div className="mt-6 grid gap-4">
          <StationCautions station={chosen.station} />
          <PageCautions page="floor" size="floor" />
        </div>
      </Part>
    </div>
  );
}

interface Work {
  readonly serial: string;
  readonly ski: string;
  readonly state: "running" | "ready";
}

/** What stands at the station now: the plan holds every open operation of the next days with its state. */
function workAt(board: QueueBoard, station: string): readonly Work[] {
  const skis = new Map(board.pairs.map((pair) => [pair.serial, `${pair.modelName}, ${pair.lengthCm} cm`]));
  const found = new Map<string, Work>();
  for (const cell of board.days.flatMap((day) => day.cells)) {
    if (cell.station !== station || (cell.state !== "running" && cell.state !== "ready")) continue;
    found.set(cell.serial, { serial: cell.serial, ski: skis.get(cell.serial) ?? "", state: cell.state });
  }
  return [...found.values()].sort((a, b) => b.state.localeCompare(a.state) || a.serial.localeCompare(b.serial));
}
