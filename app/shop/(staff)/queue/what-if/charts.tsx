/** Before and after as strips and bars on one axis; each has its table beside it, which says the same. */
import { scaleLinear } from "d3-scale";
import { Table } from "#app/_ui/table.tsx";
import words from "#content/copy/breakdowns.json";
import type { QueueEffect } from "#services";

const w = words.whatIf;
const size = { width: 360, left: 62, right: 14 } as const;
const wholeHeight = 152;
/** Two numbers of two figures side by side, with air. */
const labelGap = 16;
const levels = ["p10", "p50", "p80", "p90", "p95"] as const;

/** Before in pencil and dashed, after in larch and solid: told apart in black and white. */
const looks = {
  before: { stroke: "var(--pencil)", dash: "5 3" },
  after: { stroke: "var(--larch)", dash: undefined },
} as const;

/** On a wide screen no larger than its words are meant to be. */
const chartClass = "w-full max-w-lg font-mono text-[11px]";

export function OneMoreStrips({ oneMore }: { readonly oneMore: NonNullable<QueueEffect["oneMore"]> }) {
  const all = levels.flatMap((level) => [oneMore.before.workingDays[level], oneMore.after.workingDays[level]]);
  const x = scaleLinear([Math.min(...all), Math.max(...all) + 0.01], [size.left + 6, size.width - size.right]).nice();
  return (
    <div className="grid grid-cols-1 gap-6 lg:grid-cols-2">
      <svg viewBox={`0 0 ${size.width} ${wholeHeight}`} role="img" aria-label={w.oneMore} className={chartClass}>
        {x.ticks(5).map((tick) => (
          <g key={tick}>
            <path d={`M${x(tick)} 8V118`} stroke="var(--rule)" />
            <text x={x(tick)} y={132} textAnchor="middle" fill="var(--pencil)">
              {tick}
            </text>
          </g>
        ))}
        {(["before", "after"] as const).map((when, row) => {
          const days = oneMore[when].workingDays;
          const y = 34 + row * 54;
          const { stroke, dash } = looks[when];
          return (
            <g key={when} stroke={stroke} fill="none">
              <text x={4} y={y} dy="0.32em" fill="var(--ink)" stroke="none">
                {w[when]}
              </text>
              <path d={`M${x(days.p10)} ${y}H${x(days.p95)}`} strokeWidth={2} strokeDasharray={dash} />
              <path
                d={`M${x(days.p50)} ${y - 9}H${x(days.p90)}V${y + 9}H${x(days.p50)}Z`}
                strokeWidth={1.5}
                strokeDasharray={dash}
              />
              <path d={`M${x(days.p80)} ${y - 9}V${y + 9}`} strokeWidth={1} />
              {placed(above, (level) => x(days[level])).map(({ level, at }) => (
                <LevelText key={level} level={level} x={at} y={y - 13} />
              ))}
              {placed(below, (level) => x(days[level])).map(({ level, at }) => (
                <LevelText key={level} level={level} x={at} y={y + 21} />
              ))}
            </g>
          );
        })}
        <text x={size.width - size.right} y={147} textAnchor="end" fill="var(--pencil)">
          {w.days}
        </text>
      </svg>
      <Table
        caption={w.days}
        dense
        columns={[
          { key: "level", head: w.level, numeric: true, cell: (row) => `${row.slice(1)} %` },
          { key: "before", head: w.before, numeric: true, cell: (row) => oneMore.before.workingDays[row].toFixed(1) },
          { key: "after", head: w.after, numeric: true, cell: (row) => oneMore.after.workingDays[row].toFixed(1) },
        ]}
        rows={levels}
        rowKey={(row) => row}
      />
    </div>
  );
}

/** Neighbours on a strip stand on opposite sides of it. */
const above = ["p50", "p90"] as const;
const below = ["p10", "p80", "p95"] as const;
type Level = (typeof levels)[number];

/** From left to right, none over the one before it. */
function placed(shown: readonly Level[], x: (level: Level) => number) {
  let least = Number.NEGATIVE_INFINITY;
  return shown.map((level) => {
    const at = Math.max(x(level), least);
    least = at + labelGap;
    return { level, at };
  });
}

/** How many of a hundred runs are ready by the mark. */
function LevelText(props: { readonly level: Level; readonly x: number; readonly y: number }) {
  return (
    <text
      x={props.x}
      y={props.y}
      textAnchor="middle"
      fill="var(--ink)"
      stroke="var(--paper)"
      strokeWidth={3}
      paintOrder="stroke"
      className="text-[10px]"
    >
      {props.level.slice(1)}
    </text>
  );
}

interface Bin {
  readonly from: number;
  readonly before: number;
  readonly after: number;
}

const binDays = 5;
const bars = { left: 28, top: 26, floor: 118 } as const;

/** Which bars are which, and what their height counts. */
function Legend() {
  return (
    <g>
      <text x={4} y={12} fill="var(--pencil)">
        {w.pairsAxis}
      </text>
      <path d="M200 14V4h12v10" fill="none" stroke={looks.before.stroke} strokeDasharray={looks.before.dash} />
      <text x={217} y={13} fill="var(--ink)">
        {w.before}
      </text>
      <path d="M280 14V4h12v10Z" fill={looks.after.stroke} />
      <text x={297} y={13} fill="var(--ink)">
        {w.after}
      </text>
    </g>
  );
}

/** Pairs by working days in hand, in bins of a week. */
function binsOf(slack: QueueEffect["slack"]): readonly Bin[] {
  if (slack.length === 0) return [];
  const bin = (days: number) => Math.floor(days / binDays) * binDays;
  const all = slack.flatMap(({ before, after }) => [bin(before), bin(after)]);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  return Array.from({ length: (high - low) / binDays + 1 }, (_, index) => {
    const from = low + index * binDays;
    const count = (when: "before" | "after") => slack.filter((each) => bin(each[when]) === from).length;
    return { from, before: count("before"), after: count("after") };
  });
}

const minus = (value: number) => String(value).replace("-", "−");
const binText = ({ from }: Bin) => `${minus(from)} … ${minus(from + binDays)}`;

export function SlackBars({ slack }: { readonly slack: QueueEffect["slack"] }) {
  const bins = binsOf(slack);
  if (bins.length === 0) return null;
  const most = Math.max(...bins.flatMap(({ before, after }) => [before, after]));
  const y = scaleLinear([0, most], [bars.floor, bars.top]).nice(4);
  const wide = (size.width - bars.left - 10) / bins.length;
  return (
    <div className="grid grid-cols-1 gap-6 lg:grid-cols-2">
      <svg viewBox={`0 0 ${size.width} ${wholeHeight}`} role="img" aria-label={w.slack} className={chartClass}>
        <Legend />
        {y.ticks(4).map((count) => (
          <g key={count}>
            <path d={`M${bars.left} ${y(count)}H${size.width - 10}`} stroke="var(--rule)" />
            <text x={bars.left - 5} y={y(count)} dy="0.32em" textAnchor="end" fill="var(--pencil)">
              {count}
            </text>
          </g>
        ))}
        <path d={`M${bars.left} ${bars.floor}H${size.width - 10}`} stroke="var(--ink)" />
        {bins.map((bin, index) => {
          const left = bars.left + index * wide;
          const bar = wide * 0.36;
          const isLabelled = index % Math.ceil(bins.length / 8) === 0;
          return (
            <g key={bin.from}>
              <path
                d={`M${left + wide * 0.1} ${bars.floor}V${y(bin.before)}h${bar}V${bars.floor}`}
                fill="none"
                stroke={looks.before.stroke}
                strokeDasharray={looks.before.dash}
              />
              <path
                d={`M${left + wide * 0.5} ${bars.floor}V${y(bin.after)}h${bar}V${bars.floor}Z`}
                fill={looks.after.stroke}
              />
              {isLabelled ? (
                <text x={left} y={132} textAnchor="middle" fill="var(--pencil)">
                  {minus(bin.from)}
                </text>
              ) : null}
            </g>
          );
        })}
        <text x={size.width - 10} y={147} textAnchor="end" fill="var(--pencil)">
          {w.slackAxis}
        </text>
      </svg>
      <Table
        caption={w.slackNote}
        dense
        columns={[
          { key: "range", head: w.slackRange, cell: binText },
          { key: "before", head: w.countBefore, numeric: true, cell: (bin) => bin.before },
          { key: "after", head: w.countAfter, numeric: true, cell: (bin) => bin.after },
        ]}
        rows={bins}
        rowKey={({ from }) => String(from)}
      />
    </div>
  );
}
