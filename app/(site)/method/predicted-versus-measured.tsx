/** Computed against measured for every ski that was on the bench: chart, table and plain words. */
import { requestContext } from "#app/_server/request.ts";
import { More } from "#app/_ui/section.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/learning.json";
import type { Quality } from "#engine/calibration";
import { textForPeople } from "#engine/units";
import { readPredictedVersusMeasured, type PredictedVersusMeasured as Shown } from "#services";

const w = words.method;
const CM = 10;

export async function PredictedVersusMeasured() {
  const read = await readPredictedVersusMeasured(await requestContext());
  if (!read.ok) return null;
  const shown = read.value;
  const springs = shown.points.filter((point) => point.measure === "springCentreNPerMm" && !point.leftOut);
  if (springs.length === 0) return <p>{w.none}</p>;
  const number = (nPerMm: number) => textForPeople(nPerMm * CM, 1);
  return (
    <div className="mt-5 grid gap-5 *:min-w-0">
      <p className="max-w-measure">{fill(w.lead, { skis: shown.skis, pairs: shown.pairs })}</p>
      <Scatter points={springs} />
      <More summary={w.tableTitle}>
        <Table
          caption={w.tableTitle}
          hideCaption
          dense
          columns={[
            { key: "ski", head: w.heads.ski, cell: (row) => <span className="measure">{row.skiId}</span> },
            { key: "measured", head: w.heads.measured, numeric: true, cell: (row) => number(row.measured) },
            { key: "before", head: w.heads.before, numeric: true, cell: (row) => number(row.predictedBefore) },
            { key: "after", head: w.heads.after, numeric: true, cell: (row) => number(row.predictedAfter) },
          ]}
          rows={springs}
          rowKey={(row) => row.skiId}
        />
      </More>
      <Agreement quality={shown.quality} />
      <p className="max-w-measure text-pencil">{w.honest}</p>
      <p>{shown.bookInForce ? fill(w.inForce, { version: shown.bookInForce }) : w.noBook}</p>
    </div>
  );
}

function Agreement({ quality }: { readonly quality: readonly Quality[] }) {
  const q = words.measured;
  const text = ({ measure }: Quality, value: number) =>
    measure === "camberMm" ? `${textForPeople(value, 2)} mm` : `${textForPeople(value, 1)} %`;
  return (
    <Table
      caption={q.quality}
      columns={[
        { key: "measure", head: q.qualityHeads.measure, cell: (row) => words.measures[row.measure] },
        { key: "readings", head: q.qualityHeads.readings, numeric: true, cell: (row) => row.readings },
        { key: "before", head: q.qualityHeads.rmsBefore, numeric: true, cell: (row) => text(row, row.rmsBefore) },
        { key: "after", head: q.qualityHeads.rmsAfter, numeric: true, cell: (row) => text(row, row.rmsAfter) },
      ]}
      rows={quality}
      rowKey={(row) => row.measure}
    />
  );
}

/** The drawing's own units. */
const size = 400;
const edge = 44;

function Scatter({ points }: { readonly points: Shown["points"] }) {
  const values = points.flatMap((point) => [point.measured, point.predictedBefore, point.predictedAfter]);
  const step = 5;
  const low = Math.floor((Math.min(...values) * CM) / step) * step;
  const high = Math.ceil((Math.max(...values) * CM) / step) * step;
  const along = (nPerCm: number) => edge + ((nPerCm - low) / (high - low)) * (size - edge - 8);
  const x = (nPerMm: number) => along(nPerMm * CM);
  const y = (nPerMm: number) => size - x(nPerMm);
  const ticks = Array.from({ length: Math.round((high - low) / step) + 1 }, (_, index) => low + index * step);
  const shownTicks = ticks.filter((_, index) => ticks.length < 8 || index % 2 === 0);
  return (
    <figure className="grid max-w-lg gap-2">
      <figcaption className="font-medium">{w.chart}</figcaption>
      <svg viewBox={`0 0 ${size} ${size}`} role="img" aria-label={`${w.chart}. ${w.chartText}`} className="w-full">
        {shownTicks.map((tick) => (
          <g key={tick} className="text-pencil">
            <line x1={along(tick)} x2={along(tick)} y1={8} y2={size - edge} stroke="var(--rule)" />
            <line x1={edge} x2={size - 8} y1={size - along(tick)} y2={size - along(tick)} stroke="var(--rule)" />
            <text x={along(tick)} y={size - edge + 16} fontSize={12} textAnchor="middle" fill="currentColor">
              {tick}
            </text>
            <text x={edge - 6} y={size - along(tick) + 4} fontSize={12} textAnchor="end" fill="currentColor">
              {tick}
            </text>
          </g>
        ))}
        <line x1={along(low)} y1={size - along(low)} x2={along(high)} y2={size - along(high)} stroke="var(--ink)" />
        {points.map((point) => (
          <g key={point.skiId}>
            <circle cx={x(point.predictedBefore)} cy={y(point.measured)} r={3.5} fill="none" stroke="var(--tarn)" />
            <circle cx={x(point.predictedAfter)} cy={y(point.measured)} r={3.5} fill="var(--larch)" />
          </g>
        ))}
        <text x={size - 8} y={size - 8} fontSize={12} textAnchor="end" fill="var(--pencil)">
          {w.computed}
        </text>
        <text x={edge + 6} y={24} fontSize={12} fill="var(--pencil)">
          {w.read}
        </text>
      </svg>
      <p className="flex flex-wrap gap-x-6 text-sm" aria-hidden="true">
        <span>
          <span className="text-tarn">○</span> {w.before}
        </span>
        <span>
          <span className="text-larch">●</span> {w.after}
        </span>
      </p>
      <p className="text-sm text-pencil">{w.chartText}</p>
    </figure>
  );
}
