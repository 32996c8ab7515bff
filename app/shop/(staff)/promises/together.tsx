/** How many promises fail in the same future: in words, and as bars of the futures by the share that fails. */
import { scaleBand, scaleLinear } from "d3-scale";
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/promises.json";
import type { FailTogether } from "#engine/routing";
import { textForPeople } from "#engine/units";

const w = words.kept;
/** As wide as a phone, so that its words keep their size there. */
const width = 360;
const height = 170;
const margin = { left: 12, right: 12, top: 18, bottom: 40 };

const percent = (share: number) => `${textForPeople(100 * share, 0)} %`;

export function Together({ risk }: { readonly risk: FailTogether | null }) {
  if (risk === null) return <p className="text-pencil">{w.togetherNone}</p>;
  const { promises, runs, mean, oneOfTen, oneOfTwenty, oneOfTwentyAlone } = risk;
  return (
    <div className="grid max-w-measure gap-2">
      <p className="text-pencil">{fill(w.togetherLead, { runs, promises })}</p>
      <p className="text-lg">
        {fill(w.togetherTail, { oneOfTen: percent(oneOfTen), oneOfTwenty: percent(oneOfTwenty) })}
      </p>
      <p>
        {fill(w.togetherMean, { mean: percent(mean) })} {fill(w.togetherAlone, { alone: percent(oneOfTwentyAlone) })}
      </p>
      <Bars histogram={risk.histogram} />
    </div>
  );
}

function Bars({ histogram }: { readonly histogram: readonly number[] }) {
  const step = 100 / histogram.length;
  const bins = histogram.map((runs, index) => ({ from: index * step, to: (index + 1) * step, runs }));
  const x = scaleBand<number>([margin.left, width - margin.right])
    .domain(bins.map(({ from }) => from))
    .paddingInner(0.15);
  const y = scaleLinear([0, Math.max(...histogram)], [height - margin.bottom, margin.top]);
  const list = bins.flatMap((bin) => (bin.runs === 0 ? [] : [fill(w.togetherBin, { ...bin })])).join(", ");
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={fill(w.togetherChart, { list })}
      className="mt-2 w-full max-w-md text-xs"
    >
      {bins.map(({ from, runs }) => (
        <g key={from}>
          <rect
            x={x(from)}
            width={x.bandwidth()}
            y={y(runs)}
            height={height - margin.bottom - y(runs)}
            className="fill-tarn"
          />
          {runs > 0 ? (
            <text x={(x(from) ?? 0) + x.bandwidth() / 2} y={y(runs) - 4} textAnchor="middle" className="fill-ink">
              {runs}
            </text>
          ) : null}
          <text x={x(from)} y={height - margin.bottom + 14} className="fill-pencil">
            {from}
          </text>
        </g>
      ))}
      <path d={`M${margin.left} ${height - margin.bottom}H${width - margin.right}`} className="stroke-ink" />
      <text x={width / 2} y={height - 6} textAnchor="middle" className="fill-pencil">
        {w.togetherAxis}
      </text>
    </svg>
  );
}
