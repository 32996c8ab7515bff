import type { Metadata } from "next";
import { requestContext } from "#app/_server/request.ts";
import { buttonClass } from "#app/_ui/button.tsx";
import { DateRange, type DayShares } from "#app/_ui/date-range.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Part } from "#app/_ui/page.tsx";
import { Reach } from "#app/_ui/reach.tsx";
import { fill, listText, wordOf } from "#app/_ui/words.ts";
import { HouseSwatch } from "#app/_visuals/house-swatch.tsx";
import { ModelSilhouette } from "#app/_visuals/model-silhouette.tsx";
import { SkiPair, SkiSideView } from "#app/_visuals/ski-drawing.tsx";
import words from "#content/copy/site.json";
import type { BuildCatalog, Model } from "#engine/configuration";
import { measure, shapeAtLength } from "#engine/geometry";
import type { PriceBook } from "#engine/pricing";
import { modelLook } from "#engine/scene";
import { roundForPeople, textForPeople } from "#engine/units";
import { activeCatalog, leadTimeToday, settings } from "#services";

export const metadata: Metadata = {
  openGraph: {
    title: words.home.title,
    description: words.home.cardText,
    images: [{ url: "/files/card", width: 1200, height: 630, alt: words.home.cardAlt }],
  },
};

export default async function HomePage() {
  const ctx = await requestContext();
  const [catalog, lead] = await Promise.all([activeCatalog(ctx), leadTimeToday(ctx)]);
  const w = words.home;
  const engine = catalog.ok ? catalog.value.engine : null;
  const models = engine?.build.models.filter((model) => model.state === "active") ?? [];
  const hero = models.find((model) => model.use === "all-mountain wide") ?? models[0];
  const longestMm = Math.max(0, ...models.map((model) => model.shape.refLengthCm * 10));
  return (
    <div className="mx-auto max-w-page px-4 sm:px-6">
      <section className="grid items-center gap-x-16 gap-y-8 py-10 md:grid-cols-[minmax(0,1fr)_auto] md:py-14 lg:pr-16">
        <div>
          <h1 className="max-w-[18ch] text-3xl">{w.title}</h1>
          <p className="mt-5 max-w-measure text-lg text-pencil">
            {fill(w.lead, { name: settings().shop.name, town: settings().shop.town })}
          </p>
          <p className="mt-8 flex flex-wrap items-center gap-4">
            <a href="/sheet" className={buttonClass("primary")}>
              {w.start}
            </a>
            <span className="text-sm text-pencil">{w.startNote}</span>
          </p>
          <LeadTime lead={lead.ok ? lead.value : null} />
        </div>
        {hero && engine ? <Hero model={hero} build={engine.build} /> : null}
      </section>

      <Part title={w.modelsTitle} id="models">
        <p className="mb-4 max-w-measure text-pencil">{w.modelsLead}</p>
        <ul className="border-t border-rule">
          {engine
            ? models.map((model) => (
                <ModelRow
                  key={model.id}
                  model={model}
                  build={engine.build}
                  book={engine.priceBook}
                  longestMm={longestMm}
                />
              ))
            : null}
        </ul>
      </Part>

      <Part title={w.howTitle} id="how">
        <ol className="grid gap-x-10 gap-y-6 sm:grid-cols-2">
          {w.how.map((step, i) => (
            <li key={step.title} className="flex gap-4">
              <span aria-hidden="true" className="measure grid size-8 flex-none place-items-center border border-ink">
                {i + 1}
              </span>
              <div>
                <h3 className="font-semibold">{step.title}</h3>
                <p className="text-pencil">{step.text}</p>
              </div>
            </li>
          ))}
        </ol>
        {engine ? (
          <ul className="mt-8 grid gap-x-10 gap-y-3 sm:grid-cols-2" aria-label={w.graphics}>
            {engine.build.houseGraphics.map((each) => (
              <li key={each.id}>
                <HouseSwatch graphic={each} className="block h-auto w-full border border-rule" />
                <span className="text-sm text-pencil">{each.label}</span>
              </li>
            ))}
          </ul>
        ) : null}
      </Part>

      <Part title={w.shopTitle} id="workshop">
        <Workshop />
      </Part>
    </div>
  );
}

/** The pair stands beside the words, or below them on a narrow screen. */
function Hero({ model, build }: { readonly model: Model; readonly build: BuildCatalog }) {
  const look = modelLook(model, build);
  if (!look) return null;
  const graphic = look.graphic.house?.label ?? "";
  return (
    <div className="flex h-[30rem] justify-center gap-6 md:h-[40rem]">
      <SkiPair
        look={look}
        orientation="upright"
        className="h-full"
        description={fill(words.home.heroAlt, { model: model.name, lengthCm: model.shape.refLengthCm, graphic })}
      />
      <SkiSideView look={look} orientation="upright" className="h-full" />
    </div>
  );
}

function ModelRow({
  model,
  build,
  book,
  longestMm,
}: {
  readonly model: Model;
  readonly build: BuildCatalog;
  readonly book: PriceBook;
  readonly longestMm: number;
}) {
  const shape = shapeAtLength(model.shape, model.shape.refLengthCm);
  const look = modelLook(model, build);
  const fromCents = book.modelCents[model.id];
  return (
    <li className="grid items-center gap-x-8 gap-y-1 border-b border-rule py-3 md:grid-cols-[12rem_minmax(0,1fr)_18rem]">
      <div>
        <h3 className="text-lg">{model.name}</h3>
        {fromCents === undefined ? null : (
          <p className="text-sm">{fill(words.home.priceFrom, { price: moneyText(fromCents, "short") })}</p>
        )}
      </div>
      {look ? <ModelSilhouette look={look} scaleLengthMm={longestMm} /> : null}
      <p className="text-sm">
        <span className="measure">
          {roundForPeople(shape.shoulderWidthMm)}-{roundForPeople(shape.waistWidthMm)}-
          {roundForPeople(shape.heelWidthMm)} mm, R {textForPeople(measure(shape).sidecutRadiusM, 1)} m,{" "}
          {model.lengths.map((each) => each.lengthCm).join(" ")} cm
        </span>
        <span className="block text-pencil">{model.summary}</span>
      </p>
    </li>
  );
}

/** Who builds here, and how to reach them. */
function Workshop() {
  const { shop } = settings();
  const w = words.home;
  const days = listText(shop.workingDays.map((day) => wordOf(w.weekdays, day)));
  const hours = shop.shifts.map(({ start, end }) => `${start}–${end}`).join(", ");
  return (
    <div className="grid gap-x-10 gap-y-4 md:grid-cols-2">
      <p className="max-w-measure text-pencil">{fill(w.shopText, { name: shop.name, town: shop.town })}</p>
      <address className="grid gap-1 not-italic">
        <span>{shop.postalAddress}</span>
        <Reach phone={shop.phone} email={shop.email} />
        <span className="text-sm text-pencil">{fill(w.hours, { days, hours })}</span>
      </address>
    </div>
  );
}

function LeadTime({
  lead,
}: {
  readonly lead: {
    readonly p50: string;
    readonly p90: string;
    readonly shares?: DayShares;
    readonly workingDays: { readonly p50: number; readonly p90: number };
    readonly pairsAhead: number;
  } | null;
}) {
  const w = words.home;
  return (
    <div className="mt-10 max-w-measure border-l-4 border-larch bg-sheet px-4 py-3">
      <p className="text-sm text-pencil">{w.leadTime}</p>
      {lead ? (
        <>
          <p className="text-lg">
            <DateRange verb="Ready" from={lead.p50} to={lead.p90} shares={lead.shares} withYear />.
          </p>
          <p className="mt-1 text-sm text-pencil">
            {fill(w.leadTimeFrom, { pairs: lead.pairsAhead, p50: lead.workingDays.p50, p90: lead.workingDays.p90 })}
          </p>
        </>
      ) : (
        <p>{w.leadTimeUnknown}</p>
      )}
    </div>
  );
}
