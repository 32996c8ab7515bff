/** Who gets what is left of a base colour, and what would fit for the others. */
import { dayText } from "#app/_ui/date-range.tsx";
import { Badge } from "#app/_ui/notice.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { PairLink } from "#app/shop/cells.tsx";
import words from "#content/copy/breakdowns.json";
import type { BaseNeed, BaseShortage } from "#services";

const w = words.base;
const metres = (value: number) => value.toFixed(2);

export function Base({ base }: { readonly base: BaseShortage }) {
  return (
    <div className="grid grid-cols-1 gap-4">
      <p className="max-w-measure">
        {fill(w.summary, {
          label: base.label,
          needed: metres(base.neededM),
          left: metres(base.leftM),
          short: metres(base.shortM),
        })}
      </p>
      <Table
        caption={w.title}
        hideCaption
        dense
        stacks
        columns={[
          {
            key: "pair",
            head: w.pair,
            cell: (row: BaseNeed) => (
              <>
                <PairLink serial={row.serial} /> {row.skierFirstName}
              </>
            ),
          },
          { key: "need", head: w.need, numeric: true, cell: (row) => metres(row.needM) },
          {
            key: "gets",
            head: w.gets,
            cell: (row) => (
              <>
                <Badge tone={row.isServed ? "moss" : "amber"}>
                  {row.isServed ? w.served : fill(w.short, { day: dayText(base.expectedOn, false) })}
                </Badge>
                {row.counterchangedWith === null ? null : (
                  <Counterchanged {...row.counterchangedWith} isServed={row.isServed} />
                )}
              </>
            ),
          },
          {
            key: "other",
            head: w.other,
            cell: ({ isServed, alternatives }) =>
              isServed
                ? "–"
                : alternatives.length === 0
                  ? w.none
                  : alternatives.map(({ label, lot }) => fill(w.lot, { label, lot })).join(", "),
          },
        ]}
        rows={base.pairs}
        rowKey={(row) => row.pairId}
      />
    </div>
  );
}

function Counterchanged({
  label,
  lot,
  isServed,
}: {
  readonly label: string;
  readonly lot: string | null;
  readonly isServed: boolean;
}) {
  return (
    <span className="mt-1 block text-sm">
      {fill(w.counterchanged, { label })}
      {isServed
        ? "."
        : `. ${lot === null ? fill(w.counterchangedNoLot, { label }) : fill(w.counterchangedLot, { lot })}`}
    </span>
  );
}
