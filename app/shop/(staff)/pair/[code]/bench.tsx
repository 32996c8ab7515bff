/** The quality bench: one form for each ski, with target and limits beside, and both skis against each other. */

import { PageCautions } from "#app/_server/page-cautions.tsx";
import { ActionForm, type FormField } from "#app/_ui/action-form.client.tsx";
import { Badge } from "#app/_ui/notice.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { benchNumber, benchText } from "#app/shop/(staff)/measured/figures.ts";
import { clock } from "#app/shop/say.ts";
import { permit } from "#auth";
import words from "#content/copy/learning.json";
import { unbuiltStates } from "#engine/floor";
import { benchScales } from "#schemas";
import { type BenchRow, type Context, type PairBenchView, type PairView, readPairBench } from "#services";
import { measure } from "./bench-actions";
import { TwistBench } from "./twist-bench";

const w = words.bench;

export async function PairBench({ ctx, pair }: { readonly ctx: Context; readonly pair: PairView }) {
  const read = await readPairBench(ctx, { pairId: pair.pairId });
  if (!read.ok) return null;
  if (unbuiltStates.includes(pair.state)) return <p className="text-pencil">{w.notYet}</p>;
  const mayMeasure = permit(ctx.actor, "bench.record").ok;
  return (
    <div className="grid gap-6 *:min-w-0">
      <BenchTable rows={read.value.rows} />
      {mayMeasure ? (
        <>
          <p className="max-w-measure text-pencil">{w.lead}</p>
          <PageCautions page="bench" size="floor" />
          {read.value.twistTest ? (
            <TwistBench test={read.value.twistTest} lengthMm={10 * pair.spec.lengthCm} rows={read.value.rows} />
          ) : null}
          <div className="grid gap-6 *:min-w-0 md:grid-cols-2">
            {read.value.skis.map((ski) => (
              <SkiForm key={ski.serial} pair={pair} ski={ski} rows={read.value.rows} />
            ))}
          </div>
        </>
      ) : (
        <p className="text-sm text-pencil">{w.deskOnly}</p>
      )}
    </div>
  );
}

function SkiForm(props: {
  readonly pair: PairView;
  readonly ski: PairBenchView["skis"][number];
  readonly rows: readonly BenchRow[];
}) {
  const { pair, ski, rows } = props;
  const side = words.sides[ski.side];
  const fields = rows.map((row): FormField => {
    const value = ski.values[row.measure];
    return {
      kind: "number",
      name: row.measure,
      label: words.measures[row.measure],
      unit: benchScales[row.measure].unit,
      hint: targetText(row),
      optional: true,
      ...(value === undefined ? {} : { value: benchNumber(row.measure, value) }),
    };
  });
  return (
    <section
      aria-labelledby={`bench-${ski.side}`}
      className="grid content-start gap-3 border border-control bg-sheet p-4"
    >
      <h3 id={`bench-${ski.side}`} className="text-lg font-semibold">
        {side} <span className="measure font-normal">{ski.serial}</span>
      </h3>
      {ski.measuredAt ? (
        <p className="text-sm text-pencil">{fill(w.by, { at: clock(ski.measuredAt), by: ski.measuredBy ?? "" })}</p>
      ) : null}
      <ActionForm
        action={measure}
        idPrefix={`bench-${ski.side}-`}
        size="floor"
        tone="plain"
        fields={[
          { kind: "hidden", name: "serial", value: pair.serial },
          { kind: "hidden", name: "pairId", value: pair.pairId },
          { kind: "hidden", name: "side", value: ski.side },
          { kind: "hidden", name: "version", value: String(ski.version) },
          ...fields,
        ]}
        submit={fill(w.save, { side: side.toLowerCase() })}
        busy={w.saving}
        done={w.saved}
      />
    </section>
  );
}

function targetText({ measure: of, target, limit }: BenchRow): string {
  const { unit } = benchScales[of];
  if (limit === null) return fill(w.targetOnly, { target: benchNumber(of, target), unit });
  const [low, high] = [target - limit, target + limit].map((value) => benchNumber(of, value));
  return fill(w.target, { target: benchNumber(of, target), unit, low, high });
}

function BenchTable({ rows }: { readonly rows: readonly BenchRow[] }) {
  const cell = (row: BenchRow, value: number | null, state: "in" | "out" | null) =>
    value === null ? (
      <span className="text-pencil">–</span>
    ) : (
      <span className="inline-flex flex-wrap items-baseline justify-end gap-2">
        {benchNumber(row.measure, value)}
        {state ? <Badge tone={state === "in" ? "moss" : "iron"}>{w.states[state]}</Badge> : null}
      </span>
    );
  return (
    <Table
      caption={w.table}
      hideCaption
      columns={[
        { key: "measure", head: w.heads.measure, cell: (row) => words.measures[row.measure] },
        { key: "target", head: w.heads.target, numeric: true, cell: (row) => benchText(row.measure, row.target) },
        { key: "left", head: w.heads.left, numeric: true, cell: (row) => cell(row, row.left, row.states.L) },
        { key: "right", head: w.heads.right, numeric: true, cell: (row) => cell(row, row.right, row.states.R) },
        {
          key: "twins",
          head: w.heads.twins,
          numeric: true,
          cell: (row) => cell(row, row.twinDifference, row.states.twins),
        },
        {
          key: "limit",
          head: w.heads.limit,
          numeric: true,
          cell: (row) => (row.twinLimit === null ? "–" : benchText(row.measure, row.twinLimit)),
        },
      ]}
      rows={rows}
      rowKey={(row) => row.measure}
    />
  );
}
