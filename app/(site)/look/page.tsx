/** A pair that somebody passed on: how it looks, and the way to one of one's own. Nothing about a person is in its address. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { requestContext } from "#app/_server/request.ts";
import { buttonClass } from "#app/_ui/button.tsx";
import { Page } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { PairFigure } from "#app/_visuals/pair-figure.tsx";
import words from "#content/copy/site.json";
import { coreLabel, readSharedLook } from "#engine/configuration";
import { activeCatalog, settings } from "#services";

type Search = Promise<Readonly<Record<string, string | string[] | undefined>>>;

/** Of a name given twice the first counts. */
function queryOf(search: Awaited<Search>): URLSearchParams {
  return new URLSearchParams(
    Object.entries(search).flatMap(([name, value]): [string, string][] => {
      const first = Array.isArray(value) ? value[0] : value;
      return first === undefined ? [] : [[name, first]];
    }),
  );
}

export async function generateMetadata({ searchParams }: { readonly searchParams: Search }): Promise<Metadata> {
  const query = queryOf(await searchParams);
  return {
    title: words.look.title,
    robots: { index: false },
    openGraph: {
      title: words.look.title,
      description: words.home.cardText,
      images: [{ url: `/files/card?${query}`, width: 1200, height: 630, alt: words.look.alt }],
    },
  };
}

export default async function LookPage({ searchParams }: { readonly searchParams: Search }) {
  const catalog = await activeCatalog(await requestContext());
  if (!catalog.ok) notFound();
  const { build } = catalog.value.engine;
  const spec = readSharedLook(queryOf(await searchParams), build);
  if (!spec.ok) notFound();
  const w = words.look;
  const model = build.models.find(({ id }) => id === spec.value.model);
  return (
    <Page
      title={`${model?.name ?? ""}, ${spec.value.lengthCm} cm`}
      lead={fill(w.lead, { name: settings().shop.name, core: coreLabel(spec.value.core, build).toLowerCase() })}
    >
      <PairFigure spec={spec.value} build={build} />
      <p className="mt-8 flex flex-wrap items-center gap-4">
        <a href="/sheet" className={buttonClass("primary")}>
          {words.home.start}
        </a>
        <span className="text-sm text-pencil">{words.home.startNote}</span>
      </p>
    </Page>
  );
}
