/** What can be done with the quote now: make it an order, price it anew, let the old price stand, take it back. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { DateRange } from "#app/_ui/date-range.tsx";
import { Part } from "#app/_ui/page.tsx";
import { PriceDifferences } from "#app/_ui/price-differences.tsx";
import { More } from "#app/_ui/section.tsx";
import { changedCopy } from "#app/shop/(staff)/call/actions.ts";
import { say } from "#app/shop/say.ts";
import { permit } from "#auth";
import words from "#content/copy/shop.json";
import { type Context, previewReprice, type QuoteView } from "#services";
import { honour, makeOrder, priceAnew, withdraw } from "../actions";

const w = words.quote;

interface Props {
  readonly quote: QuoteView;
  readonly ctx: Context;
}

export function QuoteAnswers({ quote, ctx }: Props) {
  const id = { kind: "hidden", name: "quoteId", value: quote.quoteId } as const;
  return (
    <>
      {quote.state === "open" ? (
        <Part title={w.order} id="order">
          <p className="mb-3 text-pencil">{w.orderLead}</p>
          <ActionForm
            action={makeOrder}
            idPrefix="order-"
            fields={[
              id,
              { kind: "text", name: "name", label: w.orderName, value: quote.customer.name, autoComplete: "off" },
              {
                kind: "radio",
                name: "how",
                label: w.orderHow,
                value: "phone",
                choices: Object.entries(w.orderHows).map(([value, label]) => ({ value, label })),
              },
              { kind: "checkbox", name: "told", label: w.orderTold },
            ]}
            submit={w.orderButton}
            busy={w.ordering}
          />
        </Part>
      ) : null}
      {quote.state === "expired" ? <Expired quote={quote} ctx={ctx} /> : null}
      {quote.state === "open" || quote.state === "expired" ? (
        <div className="mb-8 grid gap-x-8 sm:grid-cols-2">
          <More summary={w.withdraw}>
            <ActionForm
              action={withdraw}
              idPrefix="withdraw-"
              tone="danger"
              fields={[id, { kind: "text", name: "reason", label: w.withdrawReason, autoComplete: "off" }]}
              submit={w.withdrawButton}
            />
          </More>
          <More summary={words.call.copy} open={quote.changeRequest !== null}>
            <ActionForm
              action={changedCopy}
              idPrefix="copy-"
              tone="plain"
              fields={[{ kind: "hidden", name: "sheetId", value: quote.sheetId }]}
              submit={words.call.copy}
            />
          </More>
        </div>
      ) : null}
    </>
  );
}

/** Past its days: today's price beside the old one, and the owner's word. */
async function Expired({ quote, ctx }: Props) {
  const offer = await previewReprice(ctx, { quoteId: quote.quoteId });
  const id = { kind: "hidden", name: "quoteId", value: quote.quoteId } as const;
  const mayHonour = permit(ctx.actor, "pair.override").ok;
  return (
    <>
      <Part title={w.reprice} id="reprice">
        {offer.ok ? (
          <>
            <p className="mb-3">{w.repriceLead}</p>
            <PriceDifferences
              title={w.reprice}
              before={offer.value.before}
              after={offer.value.after}
              comparison={offer.value.comparison}
            />
            <p className="my-4">
              <DateRange
                verb="Ready"
                from={offer.value.dateRange.p50}
                to={offer.value.dateRange.p90}
                shares={offer.value.dateRange.shares}
                withYear
              />
              .
            </p>
            {offer.value.blockedBy.length === 0 ? (
              <ActionForm action={priceAnew} idPrefix="reprice-" fields={[id]} submit={w.repriceButton} />
            ) : (
              <>
                <p>{w.repriceBlocked}</p>
                <ul className="list-disc pl-5">
                  {offer.value.blockedBy.map((refusal) => (
                    <li key={refusal.code}>{say(refusal)}</li>
                  ))}
                </ul>
              </>
            )}
          </>
        ) : (
          <p>{say(offer.refusal)}</p>
        )}
      </Part>
      <Part title={w.honour} id="honour">
        <p className="mb-3 text-pencil">{mayHonour ? w.honourLead : w.honourOnly}</p>
        {mayHonour ? (
          <ActionForm
            action={honour}
            idPrefix="honour-"
            tone="plain"
            fields={[id, { kind: "text", name: "reason", label: w.honourReason, autoComplete: "off" }]}
            submit={w.honourButton}
          />
        ) : null}
      </Part>
    </>
  );
}
