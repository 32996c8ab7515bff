/** The order confirmation: what was accepted, by whom, when and how; frozen specification and price; what may still change. */
import { Text } from "@react-pdf/renderer";
import type { Paper, Row } from "#papers/parts/facts";
import { clockText, dayText, money, shortHash } from "#papers/parts/format";
import { PENCIL } from "#papers/parts/theme";
import { Frame } from "../parts/frame";
import { Bullets, KeyFacts, TwoColumns } from "../parts/letter";
import { PriceTable } from "../parts/price";
import { Rows, Section } from "../parts/table";
import type { ConfirmedMoney, OrderConfirmationData, PromiseFact } from "./facts";

const PROMISE: Readonly<Record<PromiseFact["class"], string>> = {
  estimate: "Estimate: a range that moves until the clock starts",
  promise: "Promise: fixed when the clock started",
  "hard-date": "Hard date: approved by the owner, with a reserved place",
};

export function OrderConfirmationPages({
  data,
  paper,
}: {
  readonly data: OrderConfirmationData;
  readonly paper: Paper;
}) {
  const { promise } = data;
  const [quote, ...others] = data.quotes;
  return (
    <Frame
      paper={paper}
      kind="Order confirmation"
      part={others.length === 0 ? `of quote ${quote}` : `of ${data.quotes.length} quotes`}
      subject={data.orderNumber}
      subjectNote={data.urlNote}
      codeText={data.url}
      shop={data.shop}
      stamp={data.stamp}
    >
      <KeyFacts
        facts={[
          [promise.class === "estimate" ? "Ready, nine of ten by the later date" : "Ready by", promisedText(promise)],
          ...(data.money ? [["Deposit", depositText(data.money)] as const] : []),
          data.pairs.length === 1 ? ["Pair", data.pairs[0]?.serial ?? ""] : ["Pairs", String(data.pairs.length)],
        ]}
      />
      <TwoColumns
        left={
          <Section title="Order">
            <Rows labelWidth={72} rows={orderRows(data)} />
          </Section>
        }
        right={<Promised promise={promise} />}
      />
      {data.pairs.map((pair) => (
        <Section
          key={pair.serial}
          title={`Pair ${pair.serial} for ${pair.skierName}, as frozen`}
          note={`specification ${shortHash(pair.specHash)}${pair.revision > 1 ? `, revision ${pair.revision}` : ""}`}
        >
          <Rows rows={pair.specification} labelWidth={92} />
        </Section>
      ))}
      {data.money ? (
        <Money money={data.money} />
      ) : (
        <Section title="Price">
          <Text style={{ color: PENCIL }}>This copy carries no prices.</Text>
        </Section>
      )}
      <Section title="What can still be changed, and until when" note="a change may move price and date">
        <Rows rows={data.changeCutOffs} labelWidth={220} size={8} />
      </Section>
      <Section title="Your rights">
        <Bullets lines={data.notices} />
      </Section>
      {data.money ? (
        <Section title="If you cancel" note="what the workshop keeps">
          <Rows rows={data.money.cancellation} labelWidth={200} size={8} />
        </Section>
      ) : null}
      <Section title="Please note">
        <Bullets lines={data.cautions} />
      </Section>
    </Frame>
  );
}

function promisedText(promise: PromiseFact): string {
  return promise.class === "estimate" ? `${dayText(promise.from)} to ${dayText(promise.to)}` : dayText(promise.on);
}

function depositText({ deposit }: ConfirmedMoney): string {
  return deposit ? `received ${dayText(deposit.on)}` : "not received yet";
}

function orderRows(data: OrderConfirmationData): readonly Row[] {
  const { money: paid, shop } = data;
  const deposit = paid?.deposit;
  return [
    { label: "Customer", value: data.customerName },
    { label: "Accepted by", value: data.acceptedBy },
    { label: "Accepted", value: `${clockText(data.acceptedAt)}, ${data.acceptedHow}` },
    { label: data.quotes.length === 1 ? "From quote" : "From quotes", value: data.quotes.join(", ") },
    ...(data.club === null ? [] : [{ label: "Club", value: data.club }]),
    ...(paid
      ? [
          {
            label: "Deposit",
            value: deposit
              ? `${money(deposit.cents)} received ${dayText(deposit.on)}, ${deposit.how}`
              : `${money(paid.price.depositCents)}, not received yet: the clock waits for it`,
          },
        ]
      : []),
    { label: "Contact", value: `${shop.name}, ${shop.phone}, ${shop.email}` },
  ];
}

function Promised({ promise }: { readonly promise: PromiseFact }) {
  const { waitingFor } = promise;
  return (
    <Section title="Date">
      <Text style={{ fontWeight: 600 }}>{PROMISE[promise.class]}.</Text>
      <Text>
        {promise.class === "estimate"
          ? `${promisedText(promise)}: nine of ten orders like this one are ready by the later date.`
          : `Ready by ${promisedText(promise)}.`}
      </Text>
      {promise.class === "hard-date" ? <Text>If it cannot be kept: {promise.planB}</Text> : null}
      {promise.note === null ? null : <Text>{promise.note}</Text>}
      {waitingFor.length === 0 ? null : (
        <>
          <Text>Still missing before the clock starts:</Text>
          <Bullets lines={waitingFor} />
        </>
      )}
    </Section>
  );
}

function Money({ money: paid }: { readonly money: ConfirmedMoney }) {
  const { rush } = paid;
  return (
    <>
      <Section title="Price, as frozen" keep={false}>
        <PriceTable price={paid.price} taxNote={paid.taxNote} />
      </Section>
      <Section title="Paid so far">
        <Rows
          labelWidth={220}
          size={8}
          rows={[
            ...(rush
              ? [
                  { label: "Rush fee of the hard date, tax in", value: `${money(rush.cents)}, ${rushText(rush)}` },
                  { label: "Total with the rush fee", value: money(paid.totalCents) },
                ]
              : []),
            { label: "Received", value: money(paid.paidCents) },
            { label: "Still to pay before shipping", value: money(paid.openCents) },
          ]}
        />
      </Section>
    </>
  );
}

function rushText({ isPaid }: NonNullable<ConfirmedMoney["rush"]>): string {
  return isPaid ? "received" : "not received yet";
}
