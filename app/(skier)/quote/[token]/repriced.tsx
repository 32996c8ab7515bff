import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { DateRange } from "#app/_ui/date-range.tsx";
import { moneyChangeText, moneyText } from "#app/_ui/money.ts";
import { Part } from "#app/_ui/page.tsx";
import { Table } from "#app/_ui/table.tsx";
import words from "#content/copy/skier.json";
import { type Context, previewReprice, type QuoteView } from "#services";
import { reprice } from "../actions";

/** An expired quote on today's price book, line by line beside the old one. */
export async function Repriced({
  quote,
  token,
  ctx,
}: {
  readonly quote: QuoteView;
  readonly token: string;
  readonly ctx: Context;
}) {
  const w = words.quote;
  const offer = await previewReprice(ctx, { quoteId: quote.quoteId });
  if (!offer.ok) return null;
  const { before, after, comparison, dateRange, blockedBy } = offer.value;
  return (
    <Part title={w.expiredLead} id="reprice">
      <Table
        caption={w.expiredLead}
        hideCaption
        columns={[
          { key: "label", head: "Line", cell: (line) => line.label },
          { key: "before", head: w.before, numeric: true, cell: (line) => moneyText(line.beforeCents) },
          { key: "after", head: w.after, numeric: true, cell: (line) => moneyText(line.afterCents) },
          {
            key: "change",
            head: w.difference,
            numeric: true,
            cell: (line) => (line.change === "same" ? "–" : moneyChangeText(line.differenceCents)),
          },
        ]}
        rows={comparison.lines}
        rowKey={(line) => line.code}
        foot={
          <tr>
            <th scope="row" className="px-3 py-2 text-left">
              {words.priceWords.total}
            </th>
            <td className="measure px-3 py-2 text-right">{moneyText(before.totalCents)}</td>
            <td className="measure px-3 py-2 text-right font-semibold">{moneyText(after.totalCents)}</td>
            <td className="measure px-3 py-2 text-right">{moneyChangeText(comparison.totalDifferenceCents)}</td>
          </tr>
        }
      />
      <p className="my-4">
        {w.dateText} <DateRange from={dateRange.p50} to={dateRange.p90} withYear />.
      </p>
      {blockedBy.length === 0 ? (
        <ActionForm
          action={reprice}
          fields={[{ kind: "hidden", name: "token", value: token }]}
          submit={w.repriceButton}
        />
      ) : null}
    </Part>
  );
}
