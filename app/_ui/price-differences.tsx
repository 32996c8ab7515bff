/** Two prices line by line. Every figure and difference comes from the engine. */

import words from "#content/copy/shop.json";
import skierWords from "#content/copy/skier.json";
import type { Price, PriceComparison } from "#engine/pricing";
import { moneyChangeText, moneyText } from "./money";
import { Table } from "./table";

const w = words.quote;

export function PriceDifferences({
  title,
  before,
  after,
  comparison,
}: {
  readonly title: string;
  readonly before: Price;
  readonly after: Price;
  readonly comparison: PriceComparison;
}) {
  return (
    <Table
      caption={title}
      hideCaption
      columns={[
        {
          key: "line",
          head: w.line,
          cell: (line) =>
            line.change === "same" ? line.label : <strong className="font-semibold">{line.label}</strong>,
        },
        { key: "before", head: w.before, numeric: true, cell: (line) => moneyText(line.beforeCents) },
        { key: "after", head: w.after, numeric: true, cell: (line) => moneyText(line.afterCents) },
        {
          key: "difference",
          head: w.difference,
          numeric: true,
          cell: (line) => (line.change === "same" ? "–" : moneyChangeText(line.differenceCents)),
        },
      ]}
      rows={comparison.lines}
      rowKey={(line) => line.code}
      foot={
        <>
          <Sum
            label={skierWords.priceWords.net}
            before={comparison.exTaxBeforeCents}
            after={comparison.exTaxAfterCents}
            difference={comparison.exTaxDifferenceCents}
          />
          <Sum
            label={skierWords.priceWords.total}
            before={before.totalCents}
            after={after.totalCents}
            difference={comparison.totalDifferenceCents}
            isTotal
          />
        </>
      }
    />
  );
}

function Sum(sum: {
  readonly label: string;
  readonly before: number;
  readonly after: number;
  readonly difference: number;
  readonly isTotal?: boolean;
}) {
  return (
    <tr className={sum.isTotal ? "font-semibold" : ""}>
      <th scope="row" className="px-3 py-1 text-left font-[inherit]">
        {sum.label}
      </th>
      <td className="measure px-3 py-1 text-right">{moneyText(sum.before)}</td>
      <td className="measure px-3 py-1 text-right">{moneyText(sum.after)}</td>
      <td className="measure px-3 py-1 text-right">{sum.difference === 0 ? "–" : moneyChangeText(sum.difference)}</td>
    </tr>
  );
}
