/** Before and after as strips and bars on one axis; each has its table beside it, which says the same. */
import { scaleLinear } from "d3-scale";
import { Table } from "@/app/_ui/table";
import words from "@/content/copy/breakdowns.json";
import type { QueueEffect } from "@/lib/services";

const w = words.whatIf;
const size = { width: 360, left: 62, right: 14 } as const;
const levels = ["p10", "p50", "p80", "p90", "p95"] as const;

/** Before in pencil and dashed, after in larch and solid: told apart in black and white. */
const looks = {
  before: { stroke: "var(--pencil)", dash: "5 3" },
  after: { stroke: "var(--larch)", dash: undefined },
} as const;

export function OneMoreStrips({ oneMore }: { readonly oneMore: NonNullable<QueueEffect["oneMore"]> }) {
  const all = levels.flatMap((level) => [oneMore.before.workingDays[level], oneMore.after.workingDays[level]]);
  const x = scaleLinear([Math.min(...all), Math.max(...all) + 0.01], [size.left + 6, size.width - size.right]).nice();
  return (
    <div className="grid grid-cols-1 gap-6 lg:grid-cols-2">
      <svg viewBox={`0 0 ${size.width} 130`} role="img" aria-label={w.oneMore} className="w-full font-mono text-[11px]">
        {x.ticks(5).map((tick) => (
          <g key={tick}>
            <path d={`M${x(tick)} 8V100`} stroke="var(--rule)" />
            <text x={x(tick)} y={114} textAnchor="middle" fill="var(--pencil)">
              {tick}
            </text>
          </g>
        ))}
        {(["before", "after"] as const).map((when, row) => {
          const days = oneMore[when].workingDays;
          const y = 32 + row * 44;
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
            </g>
          );
        })}
        <text x={size.width - size.right} y={128} textAnchor="end" fill="var(--pencil)">
          {w.days}
        </text>
      </svg>
      <Table
        caption={w.days}
        dense
        columns={[
          { key: "level", head: w.level, cell: (row) => `${row.slice(1)} %` },
          { key: "before", head: w.before, numeric: true, cell: (row) => oneMore.before.workingDays[row].toFixed(1) },
          { key: "after", head: w.after, numeric: true, cell: (row) => oneMore.after.workingDays[row].toFixed(1) },
        ]}
        rows={levels}
        rowKey={(row) => row}
      />
    </div>
  );
}

interface Bin {
  readonly from: number;
  readonly before: number;
  readonly after: number;
}

const binDays = 5;

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
  const y = scaleLinear([0, Math.max(...bins.flatMap(({ before, after }) => [before, after]))], [100, 10]);
  const wide = (size.width - 20) / bins.length;
  return (
    <div className="grid grid-cols-1 gap-6 lg:grid-cols-2">
      <svg viewBox={`0 0 ${size.width} 130`} role="img" aria-label={w.slack} className="w-full font-mono text-[10px]">
        <path d={`M10 100H${size.width - 10}`} stroke="var(--ink)" />
        {bins.map((bin, index) => {
          const left = 10 + index * wide;
          const bar = wide * 0.36;
          const isLabelled = index % Math.ceil(bins.length / 8) === 0;
          return (
            <g key={bin.from}>
              <path
                d={`M${left + wide * 0.1} 100V${y(bin.before)}h${bar}V100`}
                fill="none"
                stroke={looks.before.stroke}
                strokeDasharray={looks.before.dash}
              />
              <path d={`M${left + wide * 0.5} 100V${y(bin.after)}h${bar}V100Z`} fill={looks.after.stroke} />
              {isLabelled ? (
                <text x={left} y={114} fill="var(--pencil)">
                  {minus(bin.from)}
                </text>
              ) : null}
            </g>
          );
        })}
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
