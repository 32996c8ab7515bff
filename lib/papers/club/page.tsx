/** A club's offer: one line a skier, one price, one day for all. Each skier's own quote says why that ski, and the cautions whole. */

import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import type { Paper } from "#papers/parts/facts";
import { clockText, dayText, money } from "#papers/parts/format";
import { Cautions } from "../parts/cautions";
import { Frame } from "../parts/frame";
import { Bullets, KeyFacts, rangeText, TwoColumns, When } from "../parts/letter";
import { PriceTable } from "../parts/price";
import { Rows, Section, Table } from "../parts/table";
import type { ClubQuoteData } from "./compose";

const w = words.club;

export function ClubQuotePages({ data, paper }: { readonly data: ClubQuoteData; readonly paper: Paper }) {
  return (
    <Frame
      paper={paper}
      kind={w.kind}
      part={fill(w.part, { name: data.name, madeAt: clockText(data.madeAt) })}
      subject={data.number}
      subjectNote={data.urlNote}
      codeText={data.url}
      shop={data.shop}
      stamp={data.stamp}
    >
      <KeyFacts
        facts={[
          [w.totalKey, money(data.price.totalCents, data.price.currency)],
          [w.validUntil, dayText(data.validUntil)],
          [
            data.dates.shares === null ? w.ready : fill(w.readyShares, { shares: data.dates.shares }),
            rangeText(data.dates),
          ],
        ]}
      />
      <TwoColumns left={<Parties data={data} />} right={<When dates={data.dates} />} />
      <Section title={w.who} note={w.whoNote} keep={false}>
        <Members data={data} />
      </Section>
      <Section title={w.priceOfAll} keep={false}>
        <PriceTable price={data.price} taxNote={data.taxNote} />
      </Section>
      <TwoColumns
        left={
          <Section title={w.howToAccept}>
            <Bullets lines={data.howToAccept} />
          </Section>
        }
        right={
          <Section title={w.cancel} note={w.cancelNote}>
            <Rows rows={data.cancellation} labelWidth={140} size={8} />
          </Section>
        }
      />
      <Section title={w.pleaseNote}>
        <Cautions cautions={data.cautions} />
      </Section>
    </Frame>
  );
}

function Parties({ data }: { readonly data: ClubQuoteData }) {
  return (
    <Section title={w.for}>
      <Rows
        labelWidth={56}
        rows={[
          { label: w.club, value: data.name },
          { label: w.buyer, value: data.buyerName },
          ...data.palette,
          { label: w.reachUs, value: `${data.shop.phone}, ${data.shop.email}` },
          { label: w.workshop, value: data.shop.postalAddress },
        ]}
      />
    </Section>
  );
}

function Members({ data }: { readonly data: ClubQuoteData }) {
  return (
    <Table
      columns={[
        { title: w.skier, flex: 3 },
        { title: w.ski, flex: 4 },
        { title: w.flexClass, flex: 2 },
        { title: w.lettering, flex: 3 },
        { title: w.quote, flex: 2, mono: true },
        { title: w.total, flex: 2, align: "right", mono: true },
      ]}
      rows={data.members.map((member) => ({
        key: member.quoteNumber,
        cells: [
          member.skierName,
          member.ski,
          member.flexClass,
          member.lettering ?? "–",
          member.quoteNumber,
          money(member.totalCents, data.price.currency),
        ],
      }))}
    />
  );
}
