/** The order confirmation: what was accepted, by whom, when and how; frozen specification and price; what may still change. */
import { Text } from "@react-pdf/renderer";
import { clockText, dayText, money, shortHash } from "./format";
import { Frame } from "./parts/frame";
import { Bullets, KeyFacts, rangeText, TwoColumns } from "./parts/letter";
import { PriceTable } from "./parts/price";
import { Rows, Section } from "./parts/table";
import { PENCIL } from "./parts/theme";
import type { OrderConfirmationData, Paper } from "./types";

const PROMISE: Readonly<Record<OrderConfirmationData["promiseClass"], string>> = {
  estimate: "Estimate: a range that moves until the clock starts",
  promise: "Promise: the later date is kept",
  "hard-date": "Hard date: approved by the owner, with a reserved slot",
};

export function OrderConfirmationPages({
  data,
  paper,
}: {
  readonly data: OrderConfirmationData;
  readonly paper: Paper;
}) {
  const deposit = data.depositReceived;
  return (
    <Frame
      paper={paper}
      kind="Order confirmation"
      part={`of quote ${data.quoteNumber}, revision ${data.quoteRevision}`}
      subject={data.orderNumber}
      subjectNote="scan to follow the pair"
      codeText={data.url}
      shop={data.shop}
      stamp={data.stamp}
    >
      <KeyFacts
        facts={[
          [`Ready, ${data.dates.confidence}`, rangeText(data.dates)],
          ["Deposit", deposit ? `received ${dayText(deposit.on)}` : "not received yet"],
          ["Pairs", String(data.pairs.length)],
        ]}
      />
      <TwoColumns
        left={
          <Section title="Order">
            <Rows
              labelWidth={72}
              rows={[
                { label: "Skier", value: data.skierName },
                { label: "Accepted by", value: data.acceptedBy },
                { label: "Accepted", value: `${clockText(data.acceptedAt)}, ${data.acceptedHow}` },
                { label: "From quote", value: `${data.quoteNumber}, revision ${data.quoteRevision}` },
                {
                  label: "Deposit",
                  value: deposit
                    ? `${money(deposit.cents)} received ${dayText(deposit.on)}, ${deposit.how}`
                    : "not received yet: the clock waits for it",
                },
                { label: "Contact", value: `${data.shop.name}, ${data.shop.phone}, ${data.shop.email}` },
              ]}
            />
          </Section>
        }
        right={
          <Section title="Date">
            <Text style={{ fontWeight: 600 }}>{PROMISE[data.promiseClass]}.</Text>
            <Text>
              {rangeText(data.dates)}, {data.dates.confidence}. The clock starts with the last of:
            </Text>
            <Bullets lines={data.dates.startsWhen} />
          </Section>
        }
      />
      {data.pairs.map((pair) => (
        <Section
          key={pair.number}
          title={`Pair ${pair.number}, as frozen`}
          note={`specification ${shortHash(pair.specHash)}`}
        >
          <Rows rows={pair.specification} labelWidth={92} />
        </Section>
      ))}
      <Section title="Price, as frozen" keep={false}>
        {data.price ? (
          <PriceTable price={data.price} taxNote={data.taxNote} />
        ) : (
          <Text style={{ color: PENCIL }}>This copy carries no prices.</Text>
        )}
      </Section>
      <Section title="What can still be changed, and until when">
        <Rows rows={data.changeCutOffs} labelWidth={150} size={8} />
      </Section>
      <Section title="Your rights">
        <Bullets lines={data.notices} />
      </Section>
      <Section title="Please note">
        <Bullets lines={data.cautions} />
      </Section>
    </Frame>
  );
}
