/** The customer's page of a club order: who rides what, one price, one day, and the yes to some or all of it. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { linkContext } from "@/app/_server/request";
import { ActionForm } from "@/app/_ui/action-form.client";
import { DateRange, dayText } from "@/app/_ui/date-range";
import { moneyText } from "@/app/_ui/money";
import { Notice } from "@/app/_ui/notice";
import { Page, Part } from "@/app/_ui/page";
import { PriceTable } from "@/app/_ui/price-table";
import { Table } from "@/app/_ui/table";
import { fill, wordOf } from "@/app/_ui/words";
import shop from "@/content/catalog/shop.json";
import words from "@/content/copy/clubs.json";
import sheetWords from "@/content/copy/sheet.json";
import skierWords from "@/content/copy/skier.json";
import { type ClubId, type ClubMember, type ClubView, readClub } from "@/lib/services";
import { Terms } from "../../terms";
import { accept } from "../actions";

const w = words.club;
const online = words.online;
export const metadata: Metadata = { title: words.online.tab, robots: { index: false } };

export default async function ClubPage({ params }: { readonly params: Promise<{ readonly token: string }> }) {
  const { token } = await params;
  const { ctx, subject } = await linkContext(token, "club");
  const read = await readClub(ctx, { clubId: subject.id as ClubId });
  if (!read.ok) notFound();
  const club = read.value;
  return (
    <Page title={club.name} lead={fill(online.lead, { number: club.number, name: club.customer.name })}>
      <Part title={w.skiers} id="skiers">
        <Members members={club.members} />
      </Part>
      {club.open === null ? (
        <p className="text-pencil">{fill(online.nothingOpen, shop)}</p>
      ) : (
        <Open club={club} open={club.open} token={token} />
      )}
    </Page>
  );
}

function Members({ members }: { readonly members: readonly ClubMember[] }) {
  return (
    <Table
      caption={w.skiers}
      hideCaption
      stacks
      empty={<p className="text-pencil">{fill(online.noSkiers, shop)}</p>}
      columns={[
        { key: "skier", head: w.heads.skier, cell: (row) => row.skierName },
        { key: "ski", head: w.heads.ski, cell: ({ quote }) => quote?.ski ?? online.noQuote },
        { key: "flex", head: w.heads.flex, cell: ({ quote }) => quote?.flexClassLabel ?? "–" },
        { key: "name", head: w.heads.name, cell: ({ quote }) => quote?.lettering ?? "–" },
        {
          key: "price",
          head: w.heads.price,
          numeric: true,
          cell: ({ quote }) => (quote === null ? "–" : moneyText(quote.totalCents)),
        },
        {
          key: "state",
          head: online.state,
          cell: ({ quote, pair }) =>
            pair === null
              ? quote === null
                ? "–"
                : fill(wordOf(online.states, quote.state), shop)
              : fill(online.ordered, { serial: pair.serial }),
        },
      ]}
      rows={members}
      rowKey={(row) => row.sheetId}
    />
  );
}

function Open(props: {
  readonly club: ClubView;
  readonly open: NonNullable<ClubView["open"]>;
  readonly token: string;
}) {
  const { club, open, token } = props;
  const { price, dateRange, keepsWish, quoteIds, validUntilDay } = open;
  const picks = club.members.flatMap(({ skierName, quote }) =>
    quote !== null && quoteIds.includes(quote.quoteId) ? [{ skierName, quote }] : [],
  );
  return (
    <>
      <div className="grid gap-x-12 *:min-w-0 lg:grid-cols-2">
        <Part title={online.price} id="price">
          <PriceTable price={price} words={sheetWords.price} caption={w.lines} hideCaption />
          <p className="mt-2 text-sm text-pencil">
            {fill(sheetWords.price.book, { book: price.priceBook })},{" "}
            {fill(skierWords.quote.states.open, { day: dayText(validUntilDay) })}.
          </p>
        </Part>
        <Part title={online.date} id="date">
          <p>
            <DateRange verb={w.all} from={dateRange.p50} to={dateRange.p90} withYear />.
          </p>
          <p className="my-2 text-pencil">{sheetWords.date.clock}</p>
          {club.wantedOn === null || keepsWish === null ? null : (
            <Notice
              tone={keepsWish ? "moss" : "amber"}
              title={fill(keepsWish ? w.keeps : w.misses, { day: dayText(club.wantedOn) })}
            />
          )}
        </Part>
      </div>
      <Terms
        specified={picks.map(({ skierName, quote }) =>
          fill(online.specified, { name: skierName, items: quote.customerSpecified.join(", ") }),
        )}
      />
      <section aria-labelledby="accept-title" className="no-print border-t border-ink pt-6">
        <h2 id="accept-title" className="mb-4 text-xl">
          {online.accept}
        </h2>
        <ActionForm
          action={accept}
          idPrefix="accept-"
          fields={[
            { kind: "hidden", name: "token", value: token },
            {
              kind: "checks",
              name: "quoteIds",
              label: w.picks,
              hint: online.picksHint,
              value: quoteIds.join(","),
              choices: picks.map(({ skierName, quote }) => ({
                value: quote.quoteId,
                label: fill(w.pick, { name: skierName, ski: quote.ski, price: moneyText(quote.totalCents) }),
              })),
            },
            {
              kind: "text",
              name: "name",
              label: skierWords.quote.acceptName,
              value: club.customer.name,
              autoComplete: "name",
            },
            { kind: "checkbox", name: "acceptsTerms", label: online.acceptTerms },
            { kind: "checkbox", name: "sawWithdrawalNotice", label: skierWords.quote.acceptNotice },
          ]}
          submit={skierWords.quote.acceptButton}
          busy={skierWords.quote.accepting}
        />
        <p className="mt-6 max-w-measure text-pencil">{fill(online.ask, { phone: shop.phone, number: club.number })}</p>
      </section>
    </>
  );
}
