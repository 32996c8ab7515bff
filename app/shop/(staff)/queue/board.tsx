/** Stations by days with real widths: every visit from its start to its end, as the plan has it. */

import { Badge } from "#app/_ui/notice.tsx";
import { fill } from "#app/_ui/words.ts";
import { clock } from "#app/shop/say.ts";
import breakdowns from "#content/copy/breakdowns.json";
import words from "#content/copy/queue.json";
import shopWords from "#content/copy/shop.json";
import type { QueueBoard, QueueChange } from "#services";
import { axisOf } from "./board-axis";
import { DayHeads, StationStrip } from "./board-strips";

const w = words.board;

export function Board({ board: queue }: { readonly board: QueueBoard }) {
  const { board, stations } = queue;
  const axis = axisOf(board.days);
  return (
    <>
      <Changes changes={board.changes} />
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset is for controls; this groups a drawing that may scroll */}
      <div
        role="group"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
        tabIndex={0}
        aria-label={w.label}
        className="board overflow-x-auto border-y border-rule"
      >
        <div className="w-max min-w-full">
          <div className="flex border-b border-control">
            <p className="sticky left-0 z-10 w-60 flex-none bg-paper px-2 py-2 text-sm text-pencil">{w.station}</p>
            <DayHeads board={board} axis={axis} today={queue.today} />
          </div>
          <ul>
            {board.rows.map((row) => {
              const station = stations.find((each) => each.station === row.station);
              return (
                <li key={row.station} className="flex border-b border-rule last:border-b-0">
                  <div className="sticky left-0 z-10 w-60 flex-none bg-paper px-2 py-1 text-sm leading-tight">
                    <a href={`/shop/queue?view=floor&station=${row.station}`}>
                      {station?.number} {station?.name}
                    </a>
                    <span className="block text-xs text-pencil">
                      {fill(shopWords.queue.onStation, {
                        ready: station?.ready ?? 0,
                        running: station?.running ?? 0,
                      })}
                    </span>
                  </div>
                  <StationStrip row={row} board={board} axis={axis} />
                </li>
              );
            })}
          </ul>
        </div>
      </div>
      <p className="mt-2 max-w-measure text-sm text-pencil">{w.note}</p>
      <p className="mt-4">
        <a href="/shop/queue?view=list" className="inline-flex min-h-9 items-center">
          {w.asList}
        </a>
      </p>
    </>
  );
}

/** Press down, somebody away, closures, overtime: said in words above the drawing. */
function Changes({ changes }: { readonly changes: readonly QueueChange[] }) {
  if (changes.length === 0) return null;
  return (
    <ul aria-label={w.changes} className="mb-4 grid gap-1">
      {changes.map((change) => (
        <li key={`${change.kind}${change.what}${change.from}${change.reason}`} className="flex flex-wrap gap-x-2">
          <Badge tone={change.kind === "overtime" || change.kind.startsWith("extra") ? "info" : "amber"}>
            {breakdowns.whatIf.changes[change.kind]}
          </Badge>
          <span>
            {[
              change.what,
              change.from === null
                ? null
                : `${clock(change.from)} – ${change.to === null ? w.forGood : clock(change.to)}`,
              change.reason,
            ]
              .filter(Boolean)
              .join(" · ")}
          </span>
        </li>
      ))}
    </ul>
  );
}
