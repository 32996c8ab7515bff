/** What is open, as one offer: lines, sum, one day, and the yes. */
import { ActionForm } from "@/app/_ui/action-form.client";
import { DateRange, dayText } from "@/app/_ui/date-range";
import { moneyText } from "@/app/_ui/money";
import { Notice } from "@/app/_ui/notice";
import { PriceTable } from "@/app/_ui/price-table";
import { fill } from "@/app/_ui/words";
import words from "@/content/copy/clubs.json";
import sheetWords from "@/content/copy/sheet.json";
import type { ClubView } from "@/lib/services";
import { order } from "../actions";

const w = words.club;

export function Offer({ club }: { readonly club: ClubView }) {
  const isOpen = club.members.some(({ quote }) => quote?.state === "open");
  if (club.open === null) return <p className="text-pencil">{isOpen ? w.deliveriesDiffer : w.nothingOpen}</p>;
  const { quoteIds, price, dateRange, keepsWish } = club.open;
  const picks = club.members.flatMap(({ skierName, quote }) =>
    quote !== null && quoteIds.includes(quote.quoteId) ? [{ skierName, quote }] : [],
  );
  return (
    <div className="grid grid-cols-1 gap-6">
      <p className="max-w-measure">
        {quoteIds.length === 1 ? w.openOne : fill(w.openCount, { count: quoteIds.length })}
      </p>
      <PriceTable price={price} words={sheetWords.price} caption={w.lines} hideCaption />
      <p>
        <DateRange verb={w.all} from={dateRange.p50} to={dateRange.p90} withYear />.
      </p>
      <p className="flex flex-wrap gap-x-4">
        <a href={`/files/clubs/${club.clubId}`}>{w.print}</a>
        <a href={`/files/clubs/${club.clubId}?paper=letter`}>{w.printLetter}</a>
      </p>
      {club.wantedOn === null || keepsWish === null ? null : (
        <Notice
          tone={keepsWish ? "moss" : "amber"}
          title={fill(keepsWish ? w.keeps : w.misses, { day: dayText(club.wantedOn) })}
        />
      )}
      <section aria-labelledby="accept">
        <h3 id="accept" className="mb-4 text-lg">
          {w.accept}
        </h3>
        <ActionForm
          action={order}
          idPrefix="order-"
          fields={[
            { kind: "hidden", name: "clubId", value: club.clubId },
            {
              kind: "checks",
              name: "quoteIds",
              label: w.picks,
              hint: w.picksHint,
              value: quoteIds.join(","),
              choices: picks.map(({ skierName, quote }) => ({
                value: quote.quoteId,
                label: fill(w.pick, { name: skierName, ski: quote.ski, price: moneyText(quote.totalCents) }),
              })),
            },
            {
              kind: "radio",
              name: "how",
              label: w.how,
              choices: [
                { value: "phone", label: w.phoneYes },
                { value: "counter", label: w.counterYes },
              ],
            },
            { kind: "text", name: "name", label: w.who, value: club.customer.name, autoComplete: "off" },
          ]}
          submit={w.submit}
          busy={w.submitting}
        />
      </section>
    </div>
  );
}
