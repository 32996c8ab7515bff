import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { Empty } from "#app/_ui/empty.tsx";
import { Page } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/shop.json";
import { type SearchHit, search } from "#services";

const w = words.search;
export const metadata: Metadata = { title: w.title };

const hrefs: Readonly<Record<SearchHit["kind"], (hit: SearchHit) => string>> = {
  sheet: ({ id }) => `/shop/call/${id}`,
  customer: ({ id }) => `/shop/customers/${id}`,
  quote: ({ id }) => `/shop/quotes/${id}`,
  order: ({ id }) => `/shop/orders/${id}`,
  pair: ({ title }) => `/shop/pair/${title}`,
};

export default async function SearchPage({
  searchParams,
}: {
  readonly searchParams: Promise<{ readonly text?: string }>;
}) {
  const text = ((await searchParams).text ?? "").trim();
  const ctx = await staffContext(`/shop/search?text=${encodeURIComponent(text)}`);
  const found = await search(ctx, { text });
  const hits = found.ok ? found.value : [];
  const [only] = hits;
  if (only?.kind === "pair" && hits.length === 1) redirect(`/shop/pair/${only.title}`);
  return (
    <Page title={w.title} lead={text.length < 2 ? w.short : fill(w.lead, { text })}>
      {hits.length === 0 ? (
        <Empty title={w.none}>{w.noneHint}</Empty>
      ) : (
        <ul className="border-t border-rule">
          {hits.map((hit) => (
            <li key={`${hit.kind}${hit.id}`} className="border-b border-rule">
              <a href={hrefs[hit.kind](hit)} className="flex min-h-11 flex-wrap items-baseline gap-x-4 py-2">
                <span className="w-20 flex-none text-sm text-pencil">{w.kinds[hit.kind]}</span>
                <span className="font-medium">{hit.title}</span>
                <span className="text-sm text-pencil">{hit.detail}</span>
              </a>
            </li>
          ))}
        </ul>
      )}
    </Page>
  );
}
