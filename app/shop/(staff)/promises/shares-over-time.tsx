/** One dot a month: the share ready by the nine-of-ten day, with the span that chance alone gives. The table says the same. */
import { scaleLinear, scalePoint } from "d3-scale";
import words from "#content/copy/promises.json";
import type { KeptPeriod } from "#services";
import { shortMonth } from "./month";

const w = words.kept.chartWords;
/** As wide as a phone, so that its words keep their size there. */
const width = 360;
const height = 200;
const margin = { left: 48, right: 12, top: 34, bottom: 28 };
/** So many months have room for their names. */
const mostNames = 6;

export function SharesOverTime({ months, label }: { readonly months: readonly KeptPeriod[]; readonly label: string }) {
  const points = months.flatMap(({ month, shares }) => {
    const p90 = shares.find(({ level }) => level === "p90");
    if (month === null || p90 === undefined || p90.orders === 0) return [];
    const { kept, orders, band } = p90;
    return [{ month, share: kept / orders, low: band.low / orders, high: band.high / orders }];
  });
  if (points.length === 0) return null;
  const x = scalePoint([margin.left, width - margin.right])
    .domain(points.map(({ month }) => month))
    .padding(0.5);
  const y = scaleLinear([0, 1], [height - margin.bottom, margin.top]);
  const every = Math.ceil(points.length / mostNames);
  return (
    <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label} className="mb-4 w-full max-w-md text-xs">
      <circle cx={margin.left + 6} cy={11} r={4} className="fill-ink" />
      <text x={margin.left + 16} y={15} className="fill-ink">
        {w.share}
      </text>
      <Band x={margin.left + 152} low={17} high={5} />
      <text x={margin.left + 162} y={15} className="fill-ink">
        {w.chance}
      </text>
      {[0, 0.5, 1].map((tick) => (
        <g key={tick}>
          <line x1={margin.left} x2={width - margin.right} y1={y(tick)} y2={y(tick)} className="stroke-rule" />
          <text x={margin.left - 6} y={y(tick) + 4} textAnchor="end" className="fill-pencil">
            {tick * 100} %
          </text>
        </g>
      ))}
      <line
        x1={margin.left}
        x2={width - margin.right}
        y1={y(0.9)}
        y2={y(0.9)}
        strokeDasharray="6 4"
        className="stroke-larch"
      />
      <text x={width - margin.right} y={y(0.9) + 15} textAnchor="end" className="fill-larch">
        {w.nineOfTen}
      </text>
      {points.map(({ month, share, low, high }, index) => (
        <g key={month}>
          <Band x={x(month) ?? 0} low={y(low)} high={y(high)} />
          <circle cx={x(month)} cy={y(share)} r={5} className="fill-ink" />
          {index % every === 0 ? (
            <text x={x(month)} y={height - 8} textAnchor="middle" className="fill-pencil">
              {shortMonth(month)}
            </text>
          ) : null}
        </g>
      ))}
    </svg>
  );
}

/** What chance alone allows, as a dimension line. */
function Band({ x, low, high }: { readonly x: number; readonly low: number; readonly high: number }) {
  return <path d={`M${x - 4} ${high}h8M${x} ${high}V${low}M${x - 4} ${low}h8`} className="fill-none stroke-pencil" />;
}
