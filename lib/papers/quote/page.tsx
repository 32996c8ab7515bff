/** The quote: what, for whom, why, how much, when, under which terms. Valid until its day, exactly as frozen. */
import { Text } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import type { Paper } from "#papers/parts/facts";
import { clockText, dayText, money } from "#papers/parts/format";
import { PENCIL, pageBox } from "#papers/parts/theme";
import { Cautions } from "../parts/cautions";
import { Frame } from "../parts/frame";
import { Bullets, KeyFacts, rangeText, TwoColumns, When } from "../parts/letter";
import { PairDrawing } from "../parts/pair-drawing";
import { PriceTable } from "../parts/price";
import { Rows, Section } from "../parts/table";
import type { QuoteData } from "./compose";

const w = words.quote;

export function QuotePages({ data, paper }: { readonly data: QuoteData; readonly paper: Paper }) {
  return (
    <Frame
      paper={paper}
      kind={w.kind}
      part={fill(w.part, { revision: data.stamp.revision, madeAt: clockText(data.madeAt) })}
      subject={data.number}
      subjectNote={data.urlNote}
      codeText={data.url}
      shop={data.shop}
      stamp={data.stamp}
    >
      <KeyFacts
        facts={[
          [w.total, money(data.price.totalCents, data.price.currency)],
          [w.validUntil, dayText(data.validUntil)],
          [fill(w.ready, { confidence: data.dates.confidence }), rangeText(data.dates)],
        ]}
      />
      <TwoColumns left={<Parties data={data} />} right={<When dates={data.dates} />} />
      <Section title={w.thePair}>
        <PairDrawing id="pair" look={data.look} pictures={data.pictures} widthPt={pageBox(paper, "portrait").innerPt} />
        <Rows rows={data.specification} labelWidth={92} />
      </Section>
      <Section title={w.price} keep={false}>
        <PriceTable price={data.price} taxNote={data.taxNote} />
      </Section>
      <Why data={data} />
      <Terms data={data} />
    </Frame>
  );
}

function Parties({ data }: { readonly data: QuoteData }) {
  return (
    <Section title={w.for}>
      <Rows
        labelWidth={56}
        rows={[
          { label: w.skier, value: data.skierName },
          { label: w.buyer, value: data.buyerName ?? w.theSkier },
          {
            label: w.soldBy,
            value: data.seller === data.shop.name ? data.seller : `${data.seller}, ${data.shop.name}`,
          },
          { label: w.reachUs, value: `${data.shop.phone}, ${data.shop.email}` },
          { label: w.workshop, value: data.shop.postalAddress },
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
          <Section title={w.answers} note={w.answersNote}>
            <Rows rows={data.answers} labelWidth={84} size={8} />
          </Section>
        }
        right={
          <Section title={w.why}>
            <Text style={{ marginBottom: 2 }}>{recommendation.summary}</Text>
            <Rows
              labelWidth={150}
              rows={recommendation.reasons.map((r) => ({ label: r.label, value: r.amount }))}
              size={8}
            />
            {recommendation.alternatives.length > 0 ? (
              <Text style={{ marginTop: 3, color: PENCIL }}>
                {fill(w.alternatives, { models: recommendation.alternatives.join("; ") })}
              </Text>
            ) : null}
          </Section>
        }
      />
      {flags.length > 0 ? (
        <Section title={w.flags}>
          <Bullets
            lines={flags.map(
              (f) =>
                `${f.message} ${f.acknowledgedBy ? fill(w.acknowledged, { by: f.acknowledgedBy }) : w.notAcknowledged}`,
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
          <Section title={w.howToAccept}>
            <Bullets lines={data.howToAccept} />
          </Section>
        }
        right={
          <Section title={w.madeToMeasure}>
            {data.customerSpecified.length > 0 ? (
              <Bullets lines={data.customerSpecified} />
            ) : (
              <Text>{w.nothingMadeToMeasure}</Text>
            )}
          </Section>
        }
      />
      <Section title={w.cancel} note={w.cancelNote}>
        <Rows rows={data.cancellation} labelWidth={200} size={8} />
      </Section>
      <Section title={w.pleaseNote}>
        <Cautions cautions={data.cautions} isWhole />
      </Section>
    </>
  );
}
