import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { dayText } from "#app/_ui/date-range.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { More } from "#app/_ui/section.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import copy from "#content/copy/rework.json";
import { readStripStock, type StripStockView } from "#services";

const w = copy.strips;
export const metadata: Metadata = { title: w.title };

/** The strip rack: who lacks strips first, then what there is and what to buy. */
export default async function StripsPage() {
  const read = await readStripStock(await staffContext("/shop/strips"));
  if (!read.ok) notFound();
  const stock = read.value;
  return (
    <Page title={w.title} lead={w.lead}>
      <Part title={w.short} id="short">
        <Short stock={stock} />
      </Part>
      <Part title={w.stock} id="stock">
        <Species stock={stock} />
        <p className="mt-2 text-sm text-pencil">{fill(w.buyHint, { level: stock.reorderLevel })}</p>
      </Part>
      <Part title={w.bins} id="bins">
        <Bins stock={stock} />
      </Part>
    </Page>
  );
}

function Short({ stock }: { readonly stock: StripStockView }) {
  return (
    <Table
      caption={w.short}
      hideCaption
      columns={[
        { key: "pair", head: w.pair, cell: (row) => <Link href={`/shop/strips/${row.serial}`}>{row.serial}</Link> },
        { key: "held", head: w.held, numeric: true, cell: (row) => `${row.held}/${row.needed}` },
        { key: "promised", head: w.promised, cell: (row) => (row.promisedOn ? dayText(row.promisedOn) : "–") },
        { key: "waits", head: w.waits, cell: (row) => (row.waitsUntil ? dayText(row.waitsUntil) : "–") },
      ]}
      rows={stock.short}
      rowKey={(row) => row.pairId}
      empty={<p className="text-pencil">{w.noneShort}</p>}
    />
  );
}

function Species({ stock }: { readonly stock: StripStockView }) {
  return (
    <Table
      caption={w.stock}
      hideCaption
      columns={[
        { key: "species", head: w.species, cell: (row) => row.species },
        { key: "free", head: w.free, numeric: true, cell: (row) => row.free },
        { key: "reserved", head: w.reserved, numeric: true, cell: (row) => row.reserved },
        { key: "used", head: w.used, numeric: true, cell: (row) => row.used },
        { key: "buy", head: w.buy, numeric: true, cell: (row) => row.toBuy },
      ]}
      rows={stock.species}
      rowKey={(row) => row.species}
      empty={<p className="text-pencil">{w.empty}</p>}
      csv={{
        fileName: "strips.csv",
        head: ["species", "free", "reserved", "used", "to buy"],
        rows: stock.species.map((row) => [row.species, row.free, row.reserved, row.used, row.toBuy]),
      }}
    />
  );
}

/** One species at a time: a rack has more bins than anybody reads through. */
function Bins({ stock }: { readonly stock: StripStockView }) {
  if (stock.species.length === 0) return <p className="text-pencil">{w.empty}</p>;
  return stock.species.map(({ species, bins }) => (
    <More key={species} summary={fill(w.binsOf, { species, bins: bins.length })}>
      <Table
        caption={fill(w.binsOf, { species, bins: bins.length })}
        hideCaption
        dense
        columns={[
          { key: "bin", head: w.bin, cell: (row) => row.bin },
          { key: "free", head: w.free, numeric: true, cell: (row) => row.free },
          { key: "reserved", head: w.reserved, numeric: true, cell: (row) => row.reserved },
        ]}
        rows={bins}
        rowKey={(row) => row.bin}
        empty={<p className="text-pencil">{w.noBins}</p>}
      />
    </More>
  ));
}
