/** The drawn part of the board: one strip for the days, one for each station. The list below says the same in words. */

import { dayText } from "#app/_ui/date-range.tsx";
import { fill } from "#app/_ui/words.ts";
import { timeOfDay } from "#app/shop/say.ts";
import words from "#content/copy/queue.json";
import shopWords from "#content/copy/shop.json";
import type { BarPiece, BoardRow, DaySpan, QueueBar, StationBoard } from "#services";
import { type Axis, pixelsPerMinute, placeOf } from "./board-axis";

const w = words.board;
const laneHeight = 26;
const pad = 4;
const headHeight = 40;
/** A name of two lines and its counts. */
const leastHeight = 68;

const weekdays = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"] as const;
const weekday = (iso: string) => weekdays[new Date(`${iso}T00:00:00Z`).getUTCDay()];
const time = (minute: number) =>
  `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
const times = (spans: readonly DaySpan[]) =>
  spans.map(({ fromMinute, toMinute }) => `${time(fromMinute)}–${time(toMinute)}`).join(", ");

export function DayHeads(props: { readonly board: StationBoard; readonly axis: Axis; readonly today: string }) {
  const { board, axis, today } = props;
  const now = board.now === null ? null : placeOf(axis, board.now.date, board.now.minute);
  return (
    <svg width={axis.width} height={headHeight} aria-hidden="true" className="flex-none text-xs">
      {axis.columns.map(({ day, left, width }) => {
        const isToday = day.date === today;
        const hours = day.open.length === 0 ? w.closed : `${time(day.axis.fromMinute)}–${time(day.axis.toMinute)}`;
        return (
          <g key={day.date}>
            <path d={`M${left + 0.5} 0V${headHeight}`} stroke="var(--rule)" />
            <text x={left + 6} y={16} fill={isToday ? "var(--larch)" : "var(--ink)"} fontWeight={isToday ? 600 : 400}>
              {weekday(day.date)} {width < 120 ? Number(day.date.slice(8)) : dayText(day.date, false)}
            </text>
            <text x={left + 6} y={32} fill="var(--pencil)">
              {day.overtime.length > 0 ? fill(w.overtime, { times: times(day.overtime) }) : hours}
              {day.closedBecause === null ? null : (
                <title>{fill(w.closedBecause, { reason: day.closedBecause })}</title>
              )}
            </text>
          </g>
        );
      })}
      {now === null ? null : (
        <text x={now + 3} y={32} fill="var(--larch)" stroke="var(--paper)" strokeWidth={4} paintOrder="stroke">
          {w.now}
        </text>
      )}
    </svg>
  );
}

export function StationStrip(props: { readonly row: BoardRow; readonly board: StationBoard; readonly axis: Axis }) {
  const { row, board, axis } = props;
  const height = Math.max(leastHeight, row.lanes * laneHeight + 2 * pad);
  const now = board.now === null ? null : placeOf(axis, board.now.date, board.now.minute);
  const hatch = `rest-${row.station}`;
  const away = `away-${row.station}`;
  return (
    <svg width={axis.width} height={height} aria-hidden="true" className="flex-none font-mono text-[11px]">
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V6" stroke="var(--pencil)" strokeWidth="1.5" />
        </pattern>
        <pattern id={away} width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
          <path d="M0 0V8M0 0H8" stroke="var(--iron)" strokeWidth="1.5" />
        </pattern>
      </defs>
      {axis.columns.map((column) => (
        <Ground key={column.day.date} column={column} height={height} />
      ))}
      {row.down.map((piece) => (
        <g key={`${piece.date}${piece.fromMinute}`}>
          <rect {...boxOf(piece, axis)} y={0} height={height} fill={`url(#${away})`} opacity={0.5} />
          <text x={boxOf(piece, axis).x + 4} y={height - 6} fill="var(--iron)" {...halo}>
            {w.down}
          </text>
        </g>
      ))}
      {/* All hatching first: a bench that rests one pair may work on the next. */}
      {row.bars.flatMap((bar) =>
        bar.unattended.map((piece) => (
          <rect
            key={`${bar.operationId}${piece.date}`}
            {...boxOf(piece, axis)}
            y={topOf(bar) + 6}
            height={laneHeight - 14}
            fill={`url(#${hatch})`}
            opacity={0.6}
          />
        )),
      )}
      {row.bars.map((bar) => (
        <Bar key={bar.operationId} bar={bar} axis={axis} />
      ))}
      {now === null ? null : <path d={`M${now} 0V${height}`} stroke="var(--larch)" strokeWidth={1.5} />}
    </svg>
  );
}

const halo = { stroke: "var(--paper)", strokeWidth: 3, paintOrder: "stroke" } as const;

/** A day's column: its left line, shaded where nobody works. */
function Ground({ column, height }: { readonly column: Axis["columns"][number]; readonly height: number }) {
  const { day, left, width } = column;
  const gaps = day.open.slice(1).map((span, index) => {
    const from = day.open[index]?.toMinute ?? span.fromMinute;
    const x = left + (from - day.axis.fromMinute) * pixelsPerMinute;
    return { x, width: (span.fromMinute - from) * pixelsPerMinute };
  });
  const shaded = day.open.length === 0 ? [{ x: left, width }] : gaps;
  return (
    <g>
      {shaded.map((gap) => (
        <rect key={gap.x} x={gap.x} width={gap.width} y={0} height={height} fill="var(--rule)" opacity={0.45} />
      ))}
      <path d={`M${left + 0.5} 0V${height}`} stroke="var(--rule)" />
    </g>
  );
}

function boxOf(piece: BarPiece, axis: Axis): { readonly x: number; readonly width: number } {
  return {
    x: placeOf(axis, piece.date, piece.fromMinute) ?? 0,
    width: Math.max(2, (piece.toMinute - piece.fromMinute) * pixelsPerMinute),
  };
}

const topOf = (bar: QueueBar) => pad + bar.lane * laneHeight;

const stateSigns: Readonly<Record<QueueBar["state"], string>> = {
  running: "▸",
  ready: "○",
  blocked: "·",
  done: "✓",
  redo: "↺",
};
const standingSigns: Readonly<Record<QueueBar["standing"], string>> = { safe: "", open: "", "at-risk": "!", late: "✕" };
const edges: Readonly<Record<QueueBar["standing"], string>> = {
  safe: "var(--ink)",
  open: "var(--pencil)",
  "at-risk": "var(--amber)",
  late: "var(--iron)",
};

/** Links are for the pointer; the keyboard has them in the list, in reading order. */
function Bar({ bar, axis }: { readonly bar: QueueBar; readonly axis: Axis }) {
  const y = topOf(bar);
  const edge = edges[bar.standing];
  const { piece, isBeside } = bar.label;
  const labelled = boxOf(piece, axis);
  const ground = isBeside ? "var(--paper)" : bar.state === "running" ? "var(--wood)" : "var(--sheet)";
  const isOnWood = !isBeside && bar.state === "running";
  return (
    <a href={`/shop/pair/${bar.serial}`} tabIndex={-1} className="no-underline">
      <title>{titleOf(bar)}</title>
      {bar.attended.map((piece) => (
        <rect
          key={`${piece.date}${piece.fromMinute}`}
          {...boxOf(piece, axis)}
          y={y}
          height={laneHeight - 3}
          fill={bar.state === "running" ? "var(--wood)" : "var(--sheet)"}
          stroke={edge}
          strokeWidth={bar.standing === "safe" || bar.standing === "open" ? 1 : 2}
          strokeDasharray={bar.state === "blocked" ? "4 2" : undefined}
        />
      ))}
      <text
        x={labelled.x + (isBeside ? labelled.width + 3 : 4)}
        y={y + 15}
        // Wood is light in both themes.
        fill={isOnWood ? "var(--on-wood)" : edge}
        stroke={ground}
        strokeWidth={3}
        paintOrder="stroke"
      >
        {stateSigns[bar.state]}
        {bar.serial.replace(/^[A-Z]+-/, "")}
        {standingSigns[bar.standing]}
      </text>
    </a>
  );
}

function titleOf(bar: QueueBar): string {
  const text = fill(w.bar, {
    serial: bar.serial,
    state: shopWords.queue.states[bar.state],
    standing: words.promises.standings[bar.standing],
    day: dayText((bar.attended[0] ?? bar.unattended[0])?.date ?? "", false),
    from: timeOfDay(bar.startsAt),
    to: timeOfDay(bar.endsAt),
  });
  return bar.freeAt > bar.endsAt ? `${text}, ${fill(w.until, { free: timeOfDay(bar.freeAt) })}` : text;
}
