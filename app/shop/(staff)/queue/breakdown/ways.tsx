/** The computed ways on, side by side. */
import { PageCautions } from "#app/_server/page-cautions.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { PairLinks } from "#app/shop/cells.tsx";
import words from "#content/copy/breakdowns.json";
import type { RemedyOption } from "#services";
import { optionWords } from "./option-words";

const w = words.ways;

export function Ways({ options, showCost }: { readonly options: readonly RemedyOption[]; readonly showCost: boolean }) {
  return (
    <div className="grid gap-3 *:min-w-0">
      <Table
        caption={w.title}
        hideCaption
        stacks
        columns={[
          {
            key: "way",
            head: w.way,
            cell: (row: RemedyOption) => (
              <>
                {optionWords(row)}
                {row.places.length > 0 ? (
                  <span className="block text-sm text-pencil">{fill(w.swaps, { count: row.places.length })}</span>
                ) : null}
              </>
            ),
          },
          ...(showCost
            ? [
                {
                  key: "cost",
                  head: w.cost,
                  numeric: true,
                  cell: (row: RemedyOption) => moneyText(row.costCents, "short"),
                },
              ]
            : []),
          { key: "saved", head: w.saved, numeric: true, cell: (row) => row.saved },
          {
            key: "still",
            head: w.still,
            cell: (row) =>
              row.crossing.length === 0 ? w.nobody : <PairLinks serials={row.crossing.map(({ serial }) => serial)} />,
          },
          { key: "late", head: w.late, numeric: true, cell: (row) => row.expectedLate.toFixed(2) },
        ]}
        rows={options}
        rowKey={(row) => row.way}
      />
      <PageCautions page="breakdown" />
    </div>
  );
}
