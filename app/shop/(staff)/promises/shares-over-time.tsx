/** One dot a month: the share ready by the nine-of-ten day, with the span that chance alone gives. The table says the same. */
import { scaleLinear, scalePoint } from "d3-scale";
import type { KeptPeriod } from "@/lib/services";

const width = 640;
const height = 180;
const margin = { left: 44, right: 12, top: 12, bottom: 28 };

export function SharesOverTime({ months, label }: { readonly months: readonly KeptPeriod[]; readonly label: string }) {
  const points = months.flatMap(({ month, shares }) => {
    const p90 = shares.find(({ level }) => level === "p90");
    if (month === null || p90 === undefined || p90.orders === 0) return [];
    const { kept, orders, band } = p90;
    return [{ month, share: kept / orders, low: band.low / orders, high: band.high / orders }];
  });
  const x = scalePoint([margin.left, width - margin.right])
    .domain(points.map(({ month }) => month))
    .padding(0.5);
  const y = scaleLinear([0, 1], [height - margin.bottom, margin.top]);
  return (
    <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label} className="mb-4 w-full max-w-3xl">
      {[0, 0.5, 1].map((tick) => (
        <g key={tick}>
          <line x1={margin.left} x2={width - margin.right} y1={y(tick)} y2={y(tick)} className="stroke-rule" />
          <text x={margin.left - 8} y={y(tick) + 4} textAnchor="end" className="fill-pencil text-xs">
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
      {points.map(({ month, share, low, high }) => (
        <g key={month}>
          <line x1={x(month)} x2={x(month)} y1={y(low)} y2={y(high)} strokeWidth={6} className="stroke-rule" />
          <circle cx={x(month)} cy={y(share)} r={5} className="fill-ink" />
          <text x={x(month)} y={height - 8} textAnchor="middle" className="fill-pencil text-xs">
            {month}
          </text>
        </g>
      ))}
    </svg>
  );
}
