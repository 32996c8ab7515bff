/** The order confirmation: what was accepted, by whom, when and how; frozen specification and price; what may still change. */
import { Text } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import type { Paper, Row } from "#papers/parts/facts";
import { clockText, dayText, money, shortHash } from "#papers/parts/format";
import { PENCIL, pageBox } from "#papers/parts/theme";
import { type RangeFacts, sharesText } from "#papers/parts/told-shares";
import { Cautions } from "../parts/cautions";
import { Frame } from "../parts/frame";
import { Bullets, KeyFacts, TwoColumns } from "../parts/letter";
import { PairDrawing } from "../parts/pair-drawing";
import { PriceTable } from "../parts/price";
import { Rows, Section } from "../parts/table";
import type { ConfirmedMoney, OrderConfirmationData, PromiseFact } from "./compose";

const w = words.confirmation;

const PROMISE: Readonly<Record<PromiseFact["class"], string>> = {
  estimate: w.estimate,
  promise: w.promise,
  "hard-date": w.hardDate,
};

export function OrderConfirmationPages({
  data,
  paper,
}: {
  readonly data: OrderConfirmationData;
  readonly paper: Paper;
}) {
  const { promise } = data;
  const [quote = "", ...others] = data.quotes;
  return (
    <Frame
      paper={paper}
      kind={w.kind}
      part={others.length === 0 ? fill(w.ofQuote, { quote }) : fill(w.ofQuotes, { count: data.quotes.length })}
      subject={data.orderNumber}
      subjectNote={data.urlNote}
      codeText={data.url}
      shop={data.shop}
      stamp={data.stamp}
    >
      <KeyFacts
        facts={[
          [promise.class === "estimate" ? estimateKey(promise) : w.readyBy, promisedText(promise)],
          ...(data.money ? [[w.deposit, depositText(data.money)] as const] : []),
          data.pairs.length === 1 ? [w.pair, data.pairs[0]?.serial ?? ""] : [w.pairs, String(data.pairs.length)],
        ]}
      />
      <TwoColumns
        left={
          <Section title={w.order}>
            <Rows labelWidth={72} rows={orderRows(data)} />
          </Section>
        }
        right={<Promised promise={promise} />}
      />
      {data.pairs.map((pair) => (
        <Section
          key={pair.serial}
          title={fill(w.pairTitle, { serial: pair.serial, skierName: pair.skierName })}
          note={fill(w.pairNote, {
            specHash: shortHash(pair.specHash),
            revisionNote: pair.revision > 1 ? fill(w.revisionNote, { revision: pair.revision }) : "",
          })}
        >
          <PairDrawing
            id={pair.serial}
            look={pair.look}
            pictures={pair.pictures}
            widthPt={pageBox(paper, "portrait").innerPt}
          />
          <Rows rows={pair.specification} labelWidth={92} />
        </Section>
      ))}
      {data.money ? (
        <Money money={data.money} />
      ) : (
        <Section title={w.price}>
          <Text style={{ color: PENCIL }}>{w.noPrices}</Text>
        </Section>
      )}
      <Section title={w.changes} note={w.changesNote}>
        <Rows rows={data.changeCutOffs} labelWidth={220} size={8} />
      </Section>
      <Section title={w.yourRights}>
        <Bullets lines={data.notices} />
      </Section>
      {data.money ? (
        <Section title={w.cancel} note={w.cancelNote}>
          <Rows rows={data.money.cancellation} labelWidth={200} size={8} />
        </Section>
      ) : null}
      <Section title={w.pleaseNote}>
        <Cautions cautions={data.cautions} isWhole />
      </Section>
    </Frame>
  );
}

function promisedText(promise: PromiseFact): string {
  return promise.class === "estimate"
    ? fill(w.range, { from: dayText(promise.from), to: dayText(promise.to) })
    : dayText(promise.on);
}

/** What the range's days mean: with their shares, or as it was said before these were told. */
function estimateKey(dates: RangeFacts): string {
  const shares = sharesText(dates);
  return shares === null ? w.readyRange : fill(w.readyRangeShares, { shares });
}

function estimateText(promise: PromiseFact & RangeFacts): string {
  const shares = sharesText(promise);
  const promised = promisedText(promise);
  return shares === null ? fill(w.estimateText, { promised }) : fill(w.estimateShares, { promised, shares });
}

function depositText({ deposit }: ConfirmedMoney): string {
  return deposit ? fill(w.depositReceived, { on: dayText(deposit.on) }) : w.notReceived;
}

function orderRows(data: OrderConfirmationData): readonly Row[] {
  const { money: paid, shop } = data;
  const deposit = paid?.deposit;
  return [
    { label: w.customer, value: data.customerName },
    { label: w.acceptedBy, value: data.acceptedBy },
    { label: w.accepted, value: fill(w.acceptedValue, { at: clockText(data.acceptedAt), how: data.acceptedHow }) },
    { label: data.quotes.length === 1 ? w.fromQuote : w.fromQuotes, value: data.quotes.join(", ") },
    ...(data.club === null ? [] : [{ label: w.clubLabel, value: data.club }]),
    ...(paid
      ? [
          {
            label: w.deposit,
            value: deposit
              ? fill(w.depositValue, { cents: money(deposit.cents), on: dayText(deposit.on), how: deposit.how })
              : fill(w.depositOpen, { cents: money(paid.price.depositCents) }),
          },
        ]
      : []),
    { label: w.contact, value: `${shop.name}, ${shop.phone}, ${shop.email}` },
  ];
}

function Promised({ promise }: { readonly promise: PromiseFact }) {
  const { waitingFor } = promise;
  return (
    <Section title={w.date}>
      <Text style={{ fontWeight: 600 }}>{PROMISE[promise.class]}.</Text>
      <Text>
        {promise.class === "estimate" ? estimateText(promise) : fill(w.readyText, { promised: promisedText(promise) })}
      </Text>
      {promise.class === "hard-date" ? <Text>{fill(w.planB, { planB: promise.planB })}</Text> : null}
      {promise.note === null ? null : <Text>{promise.note}</Text>}
      {waitingFor.length === 0 ? null : (
        <>
          <Text>{w.stillMissing}</Text>
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
      <Section title={w.priceFrozen} keep={false}>
        <PriceTable price={paid.price} taxNote={paid.taxNote} />
      </Section>
      <Section title={w.paid}>
        <Rows
          labelWidth={220}
          size={8}
          rows={[
            ...(rush
              ? [
                  { label: w.rush, value: fill(w.rushValue, { fee: money(rush.cents), state: rushText(rush) }) },
                  { label: w.rushTotal, value: money(paid.totalCents) },
                ]
              : []),
            { label: w.receivedSum, value: money(paid.paidCents) },
            { label: w.open, value: money(paid.openCents) },
          ]}
        />
      </Section>
    </>
  );
}

function rushText({ isPaid }: NonNullable<ConfirmedMoney["rush"]>): string {
  return isPaid ? w.rushReceived : w.notReceived;
}
