import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { moneyText } from "#app/_ui/money.ts";
import { Page, Part } from "#app/_ui/page.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { permit } from "#auth";
import words from "#content/copy/shop.json";
import { activeCatalog } from "#services";

const w = words.prices;
export const metadata: Metadata = { title: w.title };

interface Row {
  readonly label: string;
  readonly cents: number;
}

export default async function PricesPage() {
  const ctx = await staffContext("/shop/prices");
  const catalog = await activeCatalog(ctx);
  if (!permit(ctx.actor, "price.read").ok || !catalog.ok) notFound();
  const { priceBook, build } = catalog.value.engine;
  const models = build.models
    .filter((model) => priceBook.modelCents[model.id] !== undefined)
    .map((model) => ({ label: model.name, cents: priceBook.modelCents[model.id] ?? 0 }));
  return (
    <Page title={w.title} lead={w.lead}>
      <p className="mb-6 text-lg">{fill(w.book, { book: priceBook.id })}</p>
      <div className="grid gap-x-12 *:min-w-0 lg:grid-cols-2">
        <Part title={w.models} id="models">
          <PriceRows caption={w.models} rows={models} />
        </Part>
        <Part title={w.groups} id="options">
          <PriceRows caption={w.groups} rows={Object.values(priceBook.optionCents)} />
        </Part>
      </div>
    </Page>
  );
}

function PriceRows({ caption, rows }: { readonly caption: string; readonly rows: readonly Row[] }) {
  return (
    <Table
      caption={caption}
      hideCaption
      columns={[
        { key: "label", head: w.item, cell: (row) => row.label },
        { key: "cents", head: w.price, numeric: true, cell: (row) => moneyText(row.cents, "short") },
      ]}
      rows={rows}
      rowKey={(row) => row.label}
    />
  );
}
