/** The customer's page of a club order: who rides what, one price, one day, and the yes to some or all of it. */

import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { type ChosenClub, type ClubQuery, readChosenClub } from "#app/_server/club-choice.ts";
import { linkContext } from "#app/_server/request.ts";
import { ClubDay, ClubOrderForm, ClubWish, namesOfSome, openPicks, pricedPicks } from "#app/_ui/club-offer.tsx";
import { dayText } from "#app/_ui/date-range.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Page, Part } from "#app/_ui/page.tsx";
import { PriceTable } from "#app/_ui/price-table.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill, wordOf } from "#app/_ui/words.ts";
import { Terms } from "#app/(skier)/terms.tsx";
import words from "#content/copy/clubs.json";
import sheetWords from "#content/copy/sheet.json";
import skierWords from "#content/copy/skier.json";
import { idOf } from "#schemas/ids";
import type { ClubMember, ClubView } from "#services";
import { settings } from "#services";
import { accept } from "../actions";

const w = words.club;
const online = words.online;
export const metadata: Metadata = { title: words.online.tab, robots: { index: false } };

interface Props {
  readonly params: Promise<{ readonly token: string }>;
  readonly searchParams: Promise<ClubQuery>;
}

/** `?pairs=` shows price and day of those quotes alone. */
export default async function ClubPage({ params, searchParams }: Props) {
  const { token } = await params;
  const { ctx, subject } = await linkContext(token, "club");
  const chosen = await readChosenClub(ctx, idOf("club", subject.id), await searchParams);
  if (chosen === null) notFound();
  const { club } = chosen;
  return (
    <Page title={club.name} lead={fill(online.lead, { number: club.number, name: club.customer.name })}>
      <Part title={w.skiers} id="skiers">
        <Members members={club.members} />
      </Part>
      {openPicks(club).length === 0 ? (
        <p className="text-pencil">{fill(online.nothingOpen, settings().shop)}</p>
      ) : (
        <>
          {club.open === null ? <p className="mb-6 max-w-measure">{online.deliveriesDiffer}</p> : null}
          <Open club={club} open={club.open} />
          <Order chosen={chosen} token={token} />
        </>
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
      empty={<p className="text-pencil">{fill(online.noSkiers, settings().shop)}</p>}
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
                : fill(wordOf(online.states, quote.state), settings().shop)
              : fill(online.ordered, { serial: pair.serial }),
        },
      ]}
      rows={members}
      rowKey={(row) => row.sheetId}
    />
  );
}

/** Price, day and terms of what is ticked, or of all. */
function Open({ club, open }: { readonly club: ClubView; readonly open: ClubView["open"] }) {
  if (open === null) return null;
  const { price, validUntilDay } = open;
  const names = namesOfSome(club);
  return (
    <>
      <div className="grid gap-x-12 *:min-w-0 lg:grid-cols-2">
        <Part title={names === null ? online.price : fill(online.priceSome, { names })} id="price">
          <PriceTable price={price} words={sheetWords.price} caption={w.lines} hideCaption />
          <p className="mt-2 text-sm text-pencil">
            {fill(sheetWords.price.book, { book: price.priceBook })},{" "}
            {fill(skierWords.quote.states.open, { day: dayText(validUntilDay) })}.
          </p>
        </Part>
        <Part title={online.date} id="date">
          <p>
            <ClubDay open={open} />
          </p>
          <p className="my-2 text-pencil">{sheetWords.date.clock}</p>
          <ClubWish club={club} />
        </Part>
      </div>
      <Terms
        specified={pricedPicks(club).map(({ skierName, quote }) =>
          fill(online.specified, { name: skierName, items: quote.customerSpecified.join(", ") }),
        )}
        soldFor={pricedPicks(club).map(({ quote }) => quote.soldFor)}
      />
    </>
  );
}

function Order({ chosen: { club, start }, token }: { readonly chosen: ChosenClub; readonly token: string }) {
  return (
    <section aria-labelledby="accept-title" className="no-print border-t border-ink pt-6">
      <h2 id="accept-title" className="mb-4 text-xl">
        {online.accept}
      </h2>
      <ClubOrderForm
        club={club}
        start={start}
        action={accept}
        idPrefix="accept-"
        hint={online.picksHint}
        fields={[
          { kind: "hidden", name: "token", value: token },
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
      <p className="mt-6 max-w-measure text-pencil">
        {fill(online.ask, { phone: settings().shop.phone, number: club.number })}
      </p>
    </section>
  );
}
