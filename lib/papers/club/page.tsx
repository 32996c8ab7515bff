/** A club's offer: one line a skier, one price, one day for all. Each skier's own quote says why that ski. */

import type { Paper } from "#papers/parts/facts";
import { clockText, dayText, money } from "#papers/parts/format";
import { Frame } from "../parts/frame";
import { Bullets, KeyFacts, rangeText, TwoColumns, When } from "../parts/letter";
import { PriceTable } from "../parts/price";
import { Rows, Section, Table } from "../parts/table";
import type { ClubQuoteData } from "./facts";

export function ClubQuotePages({ data, paper }: { readonly data: ClubQuoteData; readonly paper: Paper }) {
  return (
    <Frame
      paper={paper}
      kind="Offer"
      part={`for ${data.name}, as of ${clockText(data.madeAt)}`}
      subject={data.number}
      subjectNote={data.urlNote}
      codeText={data.url}
      shop={data.shop}
      stamp={data.stamp}
    >
      <KeyFacts
        facts={[
          ["Total, tax and shipping in", money(data.price.totalCents, data.price.currency)],
          ["Valid until the end of", dayText(data.validUntil)],
          ["All ready, nine times out of ten by the later day", rangeText(data.dates)],
        ]}
      />
      <TwoColumns left={<Parties data={data} />} right={<When dates={data.dates} />} />
      <Section title="Who rides what" note="each skier has a quote of their own, with the reasons" keep={false}>
        <Members data={data} />
      </Section>
      <Section title="Price of all" keep={false}>
        <PriceTable price={data.price} taxNote={data.taxNote} />
      </Section>
      <TwoColumns
        left={
          <Section title="How to accept">
            <Bullets lines={data.howToAccept} />
          </Section>
        }
        right={
          <Section title="If you cancel" note="what the workshop keeps">
            <Rows rows={data.cancellation} labelWidth={140} size={8} />
          </Section>
        }
      />
      <Section title="Please note">
        <Bullets lines={data.cautions} />
      </Section>
    </Frame>
  );
}

function Parties({ data }: { readonly data: ClubQuoteData }) {
  return (
    <Section title="For">
      <Rows
        labelWidth={56}
        rows={[
          { label: "Club", value: data.name },
          { label: "Buyer", value: data.buyerName },
          ...data.palette,
          { label: "Reach us", value: `${data.shop.phone}, ${data.shop.email}` },
          { label: "Workshop", value: data.shop.postalAddress },
        ]}
      />
    </Section>
  );
}

function Members({ data }: { readonly data: ClubQuoteData }) {
  return (
    <Table
      columns={[
        { title: "Skier", flex: 3 },
        { title: "Ski", flex: 4 },
        { title: "Flex class", flex: 2 },
        { title: "Name on it", flex: 3 },
        { title: "Quote", flex: 2, mono: true },
        { title: "Total", flex: 2, align: "right", mono: true },
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
