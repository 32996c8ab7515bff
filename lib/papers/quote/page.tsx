/** The quote: what, for whom, why, how much, when, under which terms. Valid until its day, exactly as frozen. */
import { Text } from "@react-pdf/renderer";
import type { Paper } from "#papers/parts/facts";
import { clockText, dayText, money } from "#papers/parts/format";
import { PENCIL } from "#papers/parts/theme";
import { Frame } from "../parts/frame";
import { Bullets, KeyFacts, rangeText, TwoColumns, When } from "../parts/letter";
import { PriceTable } from "../parts/price";
import { Rows, Section } from "../parts/table";
import type { QuoteData } from "./facts";

export function QuotePages({ data, paper }: { readonly data: QuoteData; readonly paper: Paper }) {
  return (
    <Frame
      paper={paper}
      kind="Quote"
      part={`revision ${data.stamp.revision}, made ${clockText(data.madeAt)}`}
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
          [`Ready, ${data.dates.confidence}`, rangeText(data.dates)],
        ]}
      />
      <TwoColumns left={<Parties data={data} />} right={<When dates={data.dates} />} />
      <Section title="The pair">
        <Rows rows={data.specification} labelWidth={92} />
      </Section>
      <Section title="Price" keep={false}>
        <PriceTable price={data.price} taxNote={data.taxNote} />
      </Section>
      <Why data={data} />
      <Terms data={data} />
    </Frame>
  );
}

function Parties({ data }: { readonly data: QuoteData }) {
  return (
    <Section title="For">
      <Rows
        labelWidth={56}
        rows={[
          { label: "Skier", value: data.skierName },
          { label: "Buyer", value: data.buyerName ?? "the skier" },
          {
            label: "Sold by",
            value: data.seller === data.shop.name ? data.seller : `${data.seller}, ${data.shop.name}`,
          },
          { label: "Reach us", value: `${data.shop.phone}, ${data.shop.email}` },
          { label: "Workshop", value: data.shop.postalAddress },
        ]}
      />
    </Section>
  );
}

function Why({ data }: { readonly data: QuoteData }) {
  const { recommendation, flags } = data;
  return (
    <>
      <TwoColumns
        left={
          <Section title="What you told us" note="in the units you used">
            <Rows rows={data.answers} labelWidth={84} size={8} />
          </Section>
        }
        right={
          <Section title="Why this pair">
            <Text style={{ marginBottom: 2 }}>{recommendation.summary}</Text>
            <Rows
              labelWidth={150}
              rows={recommendation.reasons.map((r) => ({ label: r.label, value: r.amount }))}
              size={8}
            />
            {recommendation.alternatives.length > 0 ? (
              <Text style={{ marginTop: 3, color: PENCIL }}>
                Also considered: {recommendation.alternatives.join("; ")}.
              </Text>
            ) : null}
          </Section>
        }
      />
      {flags.length > 0 ? (
        <Section title="Talked over before this quote">
          <Bullets
            lines={flags.map(
              (f) =>
                `${f.message} ${f.acknowledgedBy ? `Acknowledged by ${f.acknowledgedBy}.` : "Not yet acknowledged."}`,
            )}
          />
        </Section>
      ) : null}
    </>
  );
}

function Terms({ data }: { readonly data: QuoteData }) {
  return (
    <>
      <TwoColumns
        left={
          <Section title="How to accept">
            <Bullets lines={data.howToAccept} />
          </Section>
        }
        right={
          <Section title="Made to your specification">
            {data.customerSpecified.length > 0 ? (
              <Bullets lines={data.customerSpecified} />
            ) : (
              <Text>Nothing: chosen from the shop's own options.</Text>
            )}
          </Section>
        }
      />
      <Section title="If you cancel" note="what the workshop keeps">
        <Rows rows={data.cancellation} labelWidth={200} size={8} />
      </Section>
      <Section title="Please note">
        <Bullets lines={data.cautions} />
      </Section>
    </>
  );
}
