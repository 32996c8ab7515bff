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
      <Ground axis={axis} height={Math.max(leastHeight, ...board.rows.map(heightOf))} />
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
  const height = heightOf(row);
  const now = board.now === null ? null : placeOf(axis, board.now.date, board.now.minute);
  const resting = row.bars.flatMap((bar) =>
    bar.unattended.map((piece) => {
      const { x, width } = boxOf(piece, axis);
      return `M${x} ${topOf(bar) + 6}h${width}v${laneHeight - 14}h-${width}z`;
    }),
  );
  return (
    <svg width={axis.width} height={height} aria-hidden="true" className="flex-none font-mono text-[11px]">
      <use href="#board-ground" />
      {row.down.map((piece) => (
        <g key={`${piece.date}${piece.fromMinute}`}>
          <rect {...boxOf(piece, axis)} y={0} height={height} className="away" />
          <text x={boxOf(piece, axis).x + 4} y={height - 6} className="away">
            {w.down}
          </text>
        </g>
      ))}
      {/* All hatching first: a bench that rests one pair may work on the next. */}
      {resting.length === 0 ? null : <path d={resting.join("")} className="rest" />}
      {row.bars.map((bar) => (
        <Bar key={bar.operationId.slice(0, 8)} bar={bar} axis={axis} />
      ))}
      {now === null ? null : <path d={`M${now} 0V${height}`} className="now" />}
    </svg>
  );
}

const heightOf = (row: BoardRow) => Math.max(leastHeight, row.lanes * laneHeight + 2 * pad);

/** What all strips share, drawn once: a line where a day begins, shaded where nobody works; and the two hatchings. */
function Ground({ axis, height }: { readonly axis: Axis; readonly height: number }) {
  const shaded = axis.columns.flatMap(({ day, left, width }) =>
    day.open.length === 0
      ? [{ x: left, width }]
      : day.open.slice(1).map((span, index) => {
          const from = day.open[index]?.toMinute ?? span.fromMinute;
          const x = left + (from - day.axis.fromMinute) * pixelsPerMinute;
          return { x, width: (span.fromMinute - from) * pixelsPerMinute };
        }),
  );
  return (
    <defs>
      <pattern id="board-rest" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path d="M0 0V6" stroke="var(--pencil)" strokeWidth="1.5" />
      </pattern>
      <pattern id="board-away" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
        <path d="M0 0V8M0 0H8" stroke="var(--iron)" strokeWidth="1.5" />
      </pattern>
      <g id="board-ground">
        {shaded.map((gap) => (
          <rect key={gap.x} x={gap.x} width={gap.width} height={height} fill="var(--rule)" opacity={0.45} />
        ))}
        <path d={axis.columns.map(({ left }) => `M${left + 0.5} 0V${height}`).join("")} stroke="var(--rule)" />
      </g>
    </defs>
  );
}

/** To a tenth of a pixel. */
function boxOf(piece: BarPiece, axis: Axis): { readonly x: number; readonly width: number } {
  const tenths = (px: number) => Math.round(px * 10) / 10;
  return {
    x: tenths(placeOf(axis, piece.date, piece.fromMinute) ?? 0),
    width: tenths(Math.max(2, (piece.toMinute - piece.fromMinute) * pixelsPerMinute)),
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

/** Links are for the pointer; the keyboard has them in the list, in reading order. Looks come from the style sheet (.board). */
function Bar({ bar, axis }: { readonly bar: QueueBar; readonly axis: Axis }) {
  const y = topOf(bar);
  const { piece, isBeside } = bar.label;
  const { x, width } = boxOf(piece, axis);
  return (
    <a
      href={`/shop/pair/${bar.serial}`}
      tabIndex={-1}
      className={[bar.state, bar.standing, ...(isBeside ? ["beside"] : [])].join(" ")}
    >
      <title>{titleOf(bar)}</title>
      {bar.attended.map((each) => (
        <rect key={`${each.date}${each.fromMinute}`} {...boxOf(each, axis)} y={y} height={laneHeight - 3} />
      ))}
      <text x={x + (isBeside ? width + 3 : 4)} y={y + 15}>
        {`${stateSigns[bar.state]}${bar.serial.replace(/^[A-Z]+-/, "")}${standingSigns[bar.standing]}`}
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
