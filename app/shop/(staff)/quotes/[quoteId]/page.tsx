import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { DateRange, dayText } from "#app/_ui/date-range.tsx";
import { Drivers } from "#app/_ui/drivers.tsx";
import { Facts } from "#app/_ui/facts.tsx";
import { Badge, Notice, type Tone } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { PriceTable } from "#app/_ui/price-table.tsx";
import { More } from "#app/_ui/section.tsx";
import { specFacts } from "#app/_ui/spec-facts.ts";
import { heightText, massText } from "#app/_ui/typed-measures.ts";
import { fill } from "#app/_ui/words.ts";
import { PairFigure } from "#app/_visuals/pair-figure.tsx";
import { History } from "#app/shop/history.tsx";
import { PrivateLink } from "#app/shop/private-link.tsx";
import { refusedPage } from "#app/shop/refused-page.tsx";
import { clock } from "#app/shop/say.ts";
import clubWords from "#content/copy/clubs.json";
import sheetWords from "#content/copy/sheet.json";
import words from "#content/copy/shop.json";
import skierWords from "#content/copy/skier.json";
import { idOf } from "#schemas/ids";
import { catalogOfRelease, type QuoteView, readQuote } from "#services";
import { QuoteAnswers } from "./answers";

const w = words.quote;
export const metadata: Metadata = { title: "Quote" };

const tones: Readonly<Record<QuoteView["state"], Tone>> = {
  open: "info",
  accepted: "moss",
  expired: "amber",
  withdrawn: "iron",
  replaced: "amber",
};

interface Props {
  readonly params: Promise<{ readonly quoteId: string }>;
  readonly searchParams: Promise<{ readonly late?: string }>;
}

export default async function QuotePage({ params, searchParams }: Props) {
  const [{ quoteId }, { late }] = await Promise.all([params, searchParams]);
  const ctx = await staffContext(`/shop/quotes/${quoteId}`);
  const read = await readQuote(ctx, { quoteId: idOf("quote", quoteId) });
  if (!read.ok) return refusedPage(read.refusal);
  const quote = read.value;
  const catalog = await catalogOfRelease(ctx, { hash: quote.releaseHash, priceBook: quote.price.priceBook });
  if (!catalog.ok) notFound();
  const build = catalog.value.engine.build;
  return (
    <Page
      wide
      title={fill(w.title, { number: quote.number })}
      lead={
        <>
          {fill(w.lead, {
            model: quote.fit.modelName,
            length: quote.spec.lengthCm,
            flex: quote.fit.flexClassLabel.toLowerCase(),
            name: quote.club?.skierName ?? quote.customer.name,
          })}
          {quote.club === null ? null : (
            <>
              {" "}
              <a href={`/shop/clubs/${quote.club.clubId}`}>{clubWords.partOf}</a>
            </>
          )}
        </>
      }
      aside={
        <span className="flex flex-wrap gap-2">
          <Badge tone={tones[quote.state]}>
            {fill(skierWords.quote.states[quote.state], {
              day: dayText(quote.validUntilDay),
              number: quote.replacedBy?.number ?? "",
            })}
          </Badge>
          {quote.onOldBook ? <Badge tone="amber">{words.quotes.oldBookMark}</Badge> : null}
        </span>
      }
    >
      <div className="mb-6 grid gap-3">
        <Notices quote={quote} isLate={late === "yes"} />
      </div>
      <div className="grid gap-x-12 *:min-w-0 lg:grid-cols-[minmax(0,3fr)_minmax(0,2fr)]">
        <div>
          <QuoteAnswers quote={quote} ctx={ctx} />
          <Part title={skierWords.quote.ski} id="ski">
            <PairFigure spec={quote.spec} build={build} pictureBase="/files/artwork/staff" />
            <div className="mt-4">
              <Facts columns={2} facts={specFacts(quote.spec, build, sheetWords)} />
            </div>
          </Part>
          <Part title={w.history} id="history">
            <History events={quote.history} title={w.history} />
          </Part>
        </div>
        <div>
          <Part title={w.customer} id="customer">
            <Facts facts={customerFacts(quote)} />
            <p className="my-3 flex flex-wrap gap-x-4">
              <a href={`/files/quotes/${quote.quoteId}`}>{words.call.pdf}</a>
              <a href={`/files/quotes/${quote.quoteId}?paper=letter`}>{words.call.pdfLetter}</a>
              <a href={`/shop/call/${quote.sheetId}`}>{w.sheet}</a>
            </p>
            <PrivateLink ctx={ctx} kind="quote" id={quote.quoteId} />
          </Part>
          <Part title={w.price} id="price">
            <PriceTable price={quote.price} words={skierWords.priceWords} caption={w.price} hideCaption />
            <p className="mt-2 text-sm text-pencil">
              {fill(w.basis, {
                book: quote.price.priceBook,
                release: quote.releaseHash.slice(0, 10),
                engine: quote.engineVersion,
              })}
            </p>
          </Part>
          <Part title={w.date} id="date">
            <p>
              <DateRange
                verb="Ready"
                from={quote.dateRange.p50}
                to={quote.dateRange.p90}
                shares={quote.dateRange.shares}
                withYear
              />
              .
            </p>
            <More summary={sheetWords.date.drivers}>
              <Drivers drivers={quote.dateRange.drivers} words={sheetWords.date} />
            </More>
          </Part>
          <Part title={w.flags} id="flags">
            <QuoteFlags quote={quote} />
          </Part>
        </div>
      </div>
    </Page>
  );
}

function Notices({ quote, isLate }: { readonly quote: QuoteView; readonly isLate: boolean }) {
  const order = quote.order ? <a href={`/shop/orders/${quote.order.orderId}`}>{quote.order.number}</a> : null;
  return (
    <>
      {isLate && order ? (
        <Notice tone="amber" title={w.late} live="assertive">
          <p>
            {w.lateText} {order}
          </p>
        </Notice>
      ) : order ? (
        <Notice tone="moss" title={w.became}>
          <p>{order}</p>
        </Notice>
      ) : null}
      {quote.changeRequest ? <Notice tone="amber" title={fill(w.changeAsked, { note: quote.changeRequest })} /> : null}
      {quote.withdrawn ? <Notice tone="iron" title={fill(w.withdrawn, { reason: quote.withdrawn })} /> : null}
      {quote.honoured ? (
        <Notice
          tone="info"
          title={fill(w.honoured, {
            by: quote.honoured.by,
            until: clock(quote.honoured.until),
            reason: quote.honoured.reason,
          })}
        />
      ) : null}
      {quote.replaces ? (
        <p>
          {w.replaces} <a href={`/shop/quotes/${quote.replaces.quoteId}`}>{quote.replaces.number}</a>
        </p>
      ) : null}
      {quote.replacedBy ? (
        <p>
          {w.replacedBy} <a href={`/shop/quotes/${quote.replacedBy.quoteId}`}>{quote.replacedBy.number}</a>
        </p>
      ) : null}
    </>
  );
}

function customerFacts({ customer, typed, answers }: QuoteView) {
  const y = sheetWords.you;
  return [
    { name: words.call.name, value: customer.name },
    ...(customer.phone ? [{ name: words.desk.heads.phone, value: customer.phone, measure: true }] : []),
    ...(customer.email ? [{ name: sheetWords.price.email, value: customer.email }] : []),
    ...(typed.height ? [{ name: y.height, value: heightText(typed.height), measure: true }] : []),
    ...(typed.mass ? [{ name: y.mass, value: massText(typed.mass), measure: true }] : []),
    ...(answers.ability ? [{ name: skierWords.figures.ability, value: y.abilities[answers.ability].label }] : []),
  ];
}

function QuoteFlags({ quote }: { readonly quote: QuoteView }) {
  if (quote.fit.flags.length === 0) return <p className="text-pencil">{w.noFlags}</p>;
  return (
    <div className="grid gap-3">
      {quote.fit.flags.map((flag) => {
        const ack = quote.flagAcks.find((each) => each.code === flag.code);
        return (
          <Notice key={`${flag.code}${flag.model ?? ""}`} tone="amber" title={flag.message}>
            {ack ? <p>{fill(words.call.acked, { by: ack.by, reason: ack.reason })}</p> : null}
          </Notice>
        );
      })}
    </div>
  );
}
