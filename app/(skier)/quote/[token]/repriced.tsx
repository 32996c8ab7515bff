import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { DateRange } from "#app/_ui/date-range.tsx";
import { Part } from "#app/_ui/page.tsx";
import { PriceDifferences } from "#app/_ui/price-differences.tsx";
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
      <PriceDifferences title={w.expiredLead} before={before} after={after} comparison={comparison} />
      <p className="my-4">
        {w.dateText} <DateRange from={dateRange.p50} to={dateRange.p90} shares={dateRange.shares} withYear />.
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
