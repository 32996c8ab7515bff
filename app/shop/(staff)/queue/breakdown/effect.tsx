/** Who moves and who crosses a promise, worst first. */
import { Badge, type Tone } from "#app/_ui/notice.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { Day, DayWithShare, PairLink } from "#app/shop/cells.tsx";
import words from "#content/copy/breakdowns.json";
import type { PromiseEffect, QueueEffect } from "#services";

const w = words.effect;

const tones: Readonly<Record<PromiseEffect["standingAfter"], Tone>> = {
  safe: "moss",
  "at-risk": "amber",
  late: "iron",
  open: "info",
};

/** With a real minus sign. */
export const signedDays = (days: number) => `${days > 0 ? "+" : ""}${days.toFixed(1)}`.replace("-", "−");

export function EffectTable(props: {
  readonly caption: string;
  readonly empty: string;
  readonly rows: readonly PromiseEffect[];
}) {
  return (
    <Table
      caption={props.caption}
      empty={<p className="text-pencil">{props.empty}</p>}
      dense
      stacks
      columns={[
        {
          key: "pair",
          head: w.serial,
          cell: (row) => (
            <>
              <PairLink serial={row.serial} /> {row.skierFirstName}
            </>
          ),
        },
        { key: "promised", head: w.promised, cell: (row) => <Day on={row.promisedOn} /> },
        { key: "before", head: w.before, cell: (row) => <Day on={row.before.p90} /> },
        {
          key: "after",
          head: w.after,
          cell: (row) => <DayWithShare on={row.after.p90} share={row.after.shares?.p90} />,
        },
        { key: "moves", head: w.move, numeric: true, cell: (row) => signedDays(row.movedWorkingDays) },
        {
          key: "slack",
          head: w.slack,
          numeric: true,
          cell: (row) => (row.slackWorkingDays === null ? "–" : signedDays(row.slackWorkingDays)),
        },
        {
          key: "standing",
          head: w.standing,
          cell: (row) => <Badge tone={tones[row.standingAfter]}>{words.standing[row.standingAfter]}</Badge>,
        },
      ]}
      rows={props.rows}
      rowKey={(row) => row.pairId}
    />
  );
}

export function Effect({ effect }: { readonly effect: QueueEffect }) {
  return (
    <div className="grid grid-cols-1 gap-6">
      <p className="max-w-measure">
        {fill(w.summary, {
          moved: effect.moved.length,
          pairs: effect.pairs,
          crossing: effect.crossing.length,
          before: effect.expectedLate.before,
          after: effect.expectedLate.after,
          runs: effect.basis.runs,
        })}
      </p>
      <EffectTable caption={w.crossing} empty={w.nobodyCrosses} rows={effect.crossing} />
      <EffectTable caption={w.moved} empty={w.nobodyMoves} rows={effect.moved} />
    </div>
  );
}
