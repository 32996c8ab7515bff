import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { notThere } from "#app/_server/not-there.ts";
import { linkContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { DateRange, dateRangeText, dayText } from "#app/_ui/date-range.tsx";
import { Drivers } from "#app/_ui/drivers.tsx";
import { Facts } from "#app/_ui/facts.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Badge, Notice, type Tone } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { plusMinus } from "#app/_ui/plus-minus.ts";
import { PriceTable } from "#app/_ui/price-table.tsx";
import { Reach } from "#app/_ui/reach.tsx";
import { More } from "#app/_ui/section.tsx";
import { specFacts } from "#app/_ui/spec-facts.ts";
import { heightText, massText } from "#app/_ui/typed-measures.ts";
import { fill } from "#app/_ui/words.ts";
import { PairFigure } from "#app/_visuals/pair-figure.tsx";
import { SkiPair } from "#app/_visuals/ski-drawing.tsx";
import { Terms } from "#app/(skier)/terms.tsx";
import sheetWords from "#content/copy/sheet.json";
import words from "#content/copy/skier.json";
import type { BuildCatalog } from "#engine/configuration";
import { newtonsPerCm } from "#engine/flex";
import { soldFor } from "#engine/floor";
import { pairLook } from "#engine/scene";
import { textForPeople } from "#engine/units";
import { idOf } from "#schemas/ids";
import { catalogOfRelease, type QuoteView, readQuote, settings } from "#services";
import { accept, askChange, toOrder } from "../actions";
import { Repriced } from "./repriced";

export const metadata: Metadata = { title: "Quote", robots: { index: false } };

const tones: Readonly<Record<QuoteView["state"], Tone>> = {
  open: "info",
  accepted: "moss",
  expired: "amber",
  withdrawn: "iron",
  replaced: "amber",
};

export default async function QuotePage({ params }: { readonly params: Promise<{ readonly token: string }> }) {
  const { token } = await params;
  const { ctx, subject } = await linkContext(token, "quote");
  const read = await readQuote(ctx, { quoteId: idOf("quote", subject.id) });
  if (!read.ok) notThere(read.refusal);
  const quote = read.value;
  const catalog = await catalogOfRelease(ctx, { hash: quote.releaseHash, priceBook: quote.price.priceBook });
  if (!catalog.ok) notFound();
  const build = catalog.value.engine.build;
  const w = words.quote;
  const state = fill(w.states[quote.state], {
    day: dayText(quote.validUntilDay),
    number: quote.replacedBy?.number ?? "",
  });
  return (
    <Page
      title={fill(w.title, { number: quote.number })}
      lead={`${quote.fit.modelName}, ${quote.spec.lengthCm} cm, ${fill(words.flexClass, { label: quote.fit.flexClassLabel.toLowerCase() })}`}
      aside={<Badge tone={tones[quote.state]}>{state}</Badge>}
    >
      <Offer quote={quote} token={token} build={build} />
      <Part title={w.ski} id="ski">
        <PairFigure spec={quote.spec} build={build} pictureBase={`/files/artwork/${token}`} />
        <div className="mt-6">
          <Facts columns={2} facts={specFacts(quote.spec, build, sheetWords)} />
        </div>
        <p className="no-print mt-4 flex flex-wrap gap-x-4">
          <a href={`/files/quotes/${token}`}>{w.pdf}</a>
          <a href={`/files/quotes/${token}?paper=letter`}>{w.pdfLetter}</a>
        </p>
      </Part>
      <div className="grid gap-x-12 lg:grid-cols-2">
        <div>
          <Part title={w.price} id="price">
            <PriceTable price={quote.price} words={words.priceWords} caption={w.price} hideCaption />
            <p className="mt-2 text-sm text-pencil">
              {fill(sheetWords.price.book, { book: quote.price.priceBook })}, {state}.
            </p>
          </Part>
          <Part title={w.date} id="date">
            {quote.state === "expired" ? (
              <p>{w.dateOver}</p>
            ) : (
              <p>
                {w.dateText}{" "}
                <DateRange
                  from={quote.dateRange.p50}
                  to={quote.dateRange.p90}
                  shares={quote.dateRange.shares}
                  withYear
                />
                .
              </p>
            )}
            <p className="mt-2 text-pencil">{w.clock}</p>
            <More summary={w.drivers}>
              <Drivers drivers={quote.dateRange.drivers} words={sheetWords.date} />
            </More>
          </Part>
        </div>
        <div>
          <Part title={w.you} id="you">
            <Facts facts={toldFacts(quote)} />
            {quote.fit.spread ? <p className="mt-2 text-sm text-pencil">{words.figures.nineOfTen}</p> : null}
          </Part>
          {quote.fit.flags.length > 0 ? (
            <Part title={w.flags} id="flags">
              <div className="grid gap-3">
                {quote.fit.flags.map((flag) => (
                  <Notice key={flag.code} tone="amber" title={flag.message} />
                ))}
              </div>
            </Part>
          ) : null}
          <Terms specified={quote.customerSpecified} soldFor={[soldFor(quote.spec, build.models, quote.answers)]} />
        </div>
      </div>
      <Change quote={quote} token={token} />
      {quote.state === "expired" ? <Repriced quote={quote} token={token} ctx={ctx} /> : null}
    </Page>
  );
}

function toldFacts(quote: QuoteView) {
  const { answers, typed } = quote;
  const { massKg, springCentreNPerMm, spread } = quote.fit;
  const y = sheetWords.you;
  const spring = newtonsPerCm(springCentreNPerMm);
  return [
    ...(typed.height ? [{ name: y.height, value: heightText(typed.height), measure: true }] : []),
    ...(typed.mass ? [{ name: y.mass, value: massText(typed.mass), measure: true }] : []),
    ...(answers.ability ? [{ name: words.figures.ability, value: y.abilities[answers.ability].label }] : []),
    ...(answers.temperament ? [{ name: y.temperament, value: y.temperaments[answers.temperament] }] : []),
    ...(answers.offPistePercent === undefined
      ? []
      : [{ name: y.offPiste, value: `${answers.offPistePercent} %`, measure: true }]),
    { name: words.figures.mass, value: `${plusMinus(massKg, spread && spread.massG / 1000, 2)} kg`, measure: true },
    { name: words.figures.radius, value: `${textForPeople(quote.fit.sidecutRadiusM, 1)} m`, measure: true },
    {
      name: words.figures.spring,
      value: `${plusMinus(spring, spread && spread.springCentre * spring, 1)} N/cm`,
      measure: true,
    },
  ];
}

/** The pair, its price, its day and the yes: all of it at once, on a phone within two screens. */
function Offer({
  quote,
  token,
  build,
}: {
  readonly quote: QuoteView;
  readonly token: string;
  readonly build: BuildCatalog;
}) {
  const w = words.quote;
  const { shop } = settings();
  const look = pairLook(quote.spec, build);
  return (
    <section
      aria-label={w.offer}
      className="no-print mb-12 grid gap-x-12 gap-y-6 border-y border-ink py-6 lg:grid-cols-[minmax(0,1fr)_24rem]"
    >
      <div className="grid content-start gap-5">
        {look ? (
          <SkiPair
            look={look}
            pictureBase={`/files/artwork/${token}`}
            orientation="lying"
            className="w-full"
            description={`${quote.fit.modelName}, ${quote.spec.lengthCm} cm`}
          />
        ) : null}
        <div className="flex flex-wrap gap-x-10 gap-y-3">
          <p>
            <span className="block text-sm text-pencil">{w.total}</span>
            <output className="text-xl font-medium">{moneyText(quote.price.totalCents)}</output>
          </p>
          {quote.state === "open" ? (
            <p>
              <span className="block text-sm text-pencil">{w.ready}</span>
              <span className="text-lg">{dateRangeText(quote.dateRange.p50, quote.dateRange.p90, true)}</span>
            </p>
          ) : null}
          <p className="grid">
            <span className="block text-sm text-pencil">{w.talk}</span>
            <Reach phone={shop.phone} email={shop.email} />
          </p>
        </div>
      </div>
      <Accept quote={quote} token={token} />
    </section>
  );
}

function Accept({ quote, token }: { readonly quote: QuoteView; readonly token: string }) {
  const w = words.quote;
  const link = { kind: "hidden", name: "token", value: token } as const;
  if (quote.state === "accepted") return <ActionForm action={toOrder} fields={[link]} submit={w.toOrder} />;
  if (quote.state !== "open") return null;
  return (
    <div>
      <h2 id="accept-title" className="text-xl">
        {w.accept}
      </h2>
      <p className="mb-4 text-sm text-pencil">{w.acceptLead}</p>
      <ActionForm
        action={accept}
        idPrefix="accept-"
        fields={[
          link,
          { kind: "text", name: "name", label: w.acceptName, value: quote.customer.name, autoComplete: "name" },
          {
            kind: "checkbox",
            name: "acceptsTerms",
            label: fill(w.acceptTerms, { total: moneyText(quote.price.totalCents) }),
          },
          { kind: "checkbox", name: "sawWithdrawalNotice", label: w.acceptNotice },
        ]}
        submit={w.acceptButton}
        busy={w.accepting}
      />
      <p className="mt-3 text-sm">
        <a href="#terms" className="inline-flex min-h-9 items-center">
          {w.readTerms}
        </a>
      </p>
    </div>
  );
}

function Change({ quote, token }: { readonly quote: QuoteView; readonly token: string }) {
  const w = words.quote;
  if (quote.state !== "open" && quote.state !== "expired") return null;
  const link = { kind: "hidden", name: "token", value: token } as const;
  return (
    <section aria-labelledby="change-title" className="no-print max-w-measure border-t border-ink pt-6">
      <h2 id="change-title" className="text-xl">
        {w.change}
      </h2>
      <p className="mb-4 text-pencil">{w.changeLead}</p>
      {quote.changeRequest ? (
        <Notice tone="info" title={fill(w.changeWaiting, { note: quote.changeRequest })} />
      ) : (
        <ActionForm
          action={askChange}
          idPrefix="change-"
          tone="plain"
          fields={[link, { kind: "textarea", name: "note", label: w.changeNote }]}
          submit={w.changeButton}
          done={w.changeDone}
        />
      )}
    </section>
  );
}
