/** Learnt against setting, one line a station: the dot is the learnt mean, the line where it lies nine times of ten. */
import { scaleLinear } from "d3-scale";
import words from "#content/copy/learning.json";
import type { FloorLearningView } from "#services";
import { stationText } from "./tables";

const w = words.floor;
/** As wide as a phone, so that its words keep their size there. */
const width = 360;
const rowHeight = 30;
const margin = { left: 24, right: 24, top: 22, bottom: 6 };
/** Names begin at the edge, left of the scale. */
const nameX = 4;

export function Paces({ view }: { readonly view: FloorLearningView }) {
  const rows = view.learning.stations.filter(({ visits }) => visits > 0);
  if (rows.length === 0) return null;
  const share = (minutes: number, mean: number) => (100 * minutes) / mean;
  const all = rows.flatMap(({ interval, assumedMeanMinutes: mean }) => [
    share(interval.low, mean),
    share(interval.high, mean),
  ]);
  const x = scaleLinear([Math.min(80, ...all), Math.max(120, ...all)], [margin.left, width - margin.right]).nice(4);
  const bottom = margin.top + rows.length * rowHeight;
  return (
    <figure className="mb-6 max-w-md">
      <svg
        viewBox={`0 0 ${width} ${bottom + margin.bottom}`}
        role="img"
        aria-label={w.chart}
        className="w-full text-xs"
      >
        {x.ticks(4).map((tick) => (
          <g key={tick}>
            <path
              d={`M${x(tick)} ${margin.top - 6}V${bottom}`}
              className={tick === 100 ? "stroke-ink" : "stroke-rule"}
            />
            <text x={x(tick)} y={margin.top - 10} textAnchor="middle" className="fill-pencil">
              {tick} %
            </text>
          </g>
        ))}
        {rows.map((row, index) => {
          const y = margin.top + index * rowHeight;
          const mean = row.assumedMeanMinutes;
          return (
            <g key={row.station}>
              <text x={nameX} y={y + 11} className="fill-ink" stroke="var(--paper)" strokeWidth={3} paintOrder="stroke">
                {stationText(view, row.station)}
              </text>
              <path
                d={`M${x(share(row.interval.low, mean))} ${y + 21}H${x(share(row.interval.high, mean))}`}
                className="stroke-tarn"
                strokeWidth={3}
              />
              <circle cx={x(share(row.learntMeanMinutes, mean))} cy={y + 21} r={4.5} className="fill-ink" />
            </g>
          );
        })}
      </svg>
      <figcaption className="mt-1 text-sm text-pencil">{w.chartText}</figcaption>
    </figure>
  );
}
