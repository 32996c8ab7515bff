import { requestContext } from "#app/_server/request.ts";
import { buttonClass } from "#app/_ui/button.tsx";
import { DateRange, type DayShares } from "#app/_ui/date-range.tsx";
import { Part } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { HousePattern } from "#app/_visuals/house-pattern.tsx";
import { KeptPair, SkiPair } from "#app/_visuals/ski-drawing.tsx";
import { SkiOutline } from "#app/_visuals/ski-outline.tsx";
import words from "#content/copy/site.json";
import type { HouseGraphic, Model } from "#engine/configuration";
import { measure, shapeAtLength } from "#engine/geometry";
import { roundForPeople, textForPeople } from "#engine/units";
import { activeCatalog, leadTimeToday, settings } from "#services";

export default async function HomePage() {
  const ctx = await requestContext();
  const [catalog, lead] = await Promise.all([activeCatalog(ctx), leadTimeToday(ctx)]);
  const w = words.home;
  const build = catalog.ok ? catalog.value.engine.build : null;
  const models = build?.models.filter((model) => model.state === "active") ?? [];
  const hero = models.find((model) => model.use === "all-mountain wide") ?? models[0];
  const graphic = build?.houseGraphics.find((each) => each.pattern === "larch") ?? build?.houseGraphics[0];
  const longestMm = Math.max(0, ...models.map((model) => model.shape.refLengthCm * 10));
  return (
    <div className="mx-auto max-w-page px-4 sm:px-6">
      <section className="grid items-center gap-x-16 gap-y-8 py-10 md:grid-cols-[minmax(0,1fr)_auto] md:py-14 lg:pr-24">
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
        {hero && graphic ? <Hero model={hero} graphic={graphic} /> : null}
      </section>

      <Part title={w.modelsTitle} id="models">
        <p className="mb-4 max-w-measure text-pencil">{w.modelsLead}</p>
        <ul className="border-t border-rule">
          {models.map((model) => {
            const shape = shapeAtLength(model.shape, model.shape.refLengthCm);
            return (
              <li
                key={model.id}
                className="grid items-center gap-x-8 gap-y-1 border-b border-rule py-3 md:grid-cols-[12rem_minmax(0,1fr)_18rem]"
              >
                <h3 className="text-lg">{model.name}</h3>
                <SkiOutline shape={shape} scaleLengthMm={longestMm} className="block h-auto w-full" />
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
          })}
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
        {build ? (
          <ul className="mt-8 grid grid-cols-2 gap-3 sm:grid-cols-5" aria-label="House graphics">
            {build.houseGraphics.map((each) => (
              <li key={each.id}>
                <svg viewBox="0 0 220 110" className="block w-full border border-rule" aria-hidden="true">
                  <g transform="translate(0 55) rotate(-90)">
                    <HousePattern graphic={each} area={{ lengthMm: 220, reachMm: 55 }} />
                  </g>
                </svg>
                <span className="text-sm text-pencil">{each.label}</span>
              </li>
            ))}
          </ul>
        ) : null}
      </Part>
    </div>
  );
}

/** The pair stands beside the words, or lies below them on a narrow screen: one drawing, shown in two places. */
function Hero({ model, graphic }: { readonly model: Model; readonly graphic: HouseGraphic }) {
  const pair = {
    shape: shapeAtLength(model.shape, model.shape.refLengthCm),
    graphic: { layout: "continuing", house: graphic },
  } as const;
  return (
    <>
      <KeptPair {...pair} id="hero" />
      <SkiPair
        shape={pair.shape}
        drawnAs="hero"
        orientation="upright"
        className="mx-auto h-[38rem] max-md:hidden"
        description={`${model.name}, ${model.shape.refLengthCm} cm, with the house graphic ${graphic.label}, drawn to scale`}
      />
      <SkiPair shape={pair.shape} drawnAs="hero" orientation="lying" className="w-full md:hidden" />
    </>
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
