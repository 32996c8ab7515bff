import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { Empty } from "#app/_ui/empty.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Badge, type Tone } from "#app/_ui/notice.tsx";
import { Page } from "#app/_ui/page.tsx";
import { Paging } from "#app/_ui/paging.tsx";
import { Table } from "#app/_ui/table.tsx";
import { Clock, Day, NumberLink } from "#app/shop/cells.tsx";
import { UnreadableLine } from "#app/shop/unreadable-line.tsx";
import words from "#content/copy/shop.json";
import { listQuotesQuery } from "#schemas";
import { listQuotes, type QuoteRow } from "#services";
import { FilterForm } from "../filter-form";
import { listHref, type Query } from "../list-href";

const w = words.quotes;
export const metadata: Metadata = { title: w.title };

const quoteTones: Readonly<Record<QuoteRow["state"], Tone>> = {
  open: "info",
  accepted: "moss",
  expired: "amber",
  withdrawn: "iron",
  replaced: "amber",
};

export default async function QuotesPage({ searchParams }: { readonly searchParams: Promise<Query> }) {
  const query = await searchParams;
  const ctx = await staffContext(listHref("/shop/quotes", query, {}));
  const parsed = listQuotesQuery.safeParse(query);
  const found = await listQuotes(ctx, parsed.success ? parsed.data : {});
  if (!found.ok) notFound();
  const { rows, total, page, pageSize, unreadable } = found.value;
  return (
    <Page wide title={w.title} lead={w.lead}>
      <FilterForm
        submit={w.filter}
        problem={parsed.success ? undefined : parsed.error.issues[0]?.message}
        fields={[
          { kind: "select", name: "state", label: w.state, empty: w.anyState, options: w.states, value: query.state },
          { kind: "text", name: "text", label: w.text, value: query.text },
          { kind: "tick", name: "onOldBook", label: w.oldBook, value: query.onOldBook },
        ]}
      />
      <Table
        caption={w.title}
        hideCaption
        columns={[
          {
            key: "number",
            head: w.heads.number,
            cell: (row) => <NumberLink href={`/shop/quotes/${row.quoteId}`} number={row.number} />,
          },
          { key: "customer", head: w.heads.customer, cell: (row) => row.customerName },
          { key: "summary", head: w.heads.summary, cell: (row) => row.summary },
          { key: "total", head: w.heads.total, numeric: true, cell: (row) => moneyText(row.totalCents) },
          {
            key: "state",
            head: w.heads.state,
            cell: (row) => (
              <span className="flex flex-wrap gap-1">
                <Badge tone={quoteTones[row.state]}>{w.states[row.state]}</Badge>
                {row.changeRequested ? <Badge tone="amber">{w.changeMark}</Badge> : null}
              </span>
            ),
          },
          { key: "until", head: w.heads.until, cell: (row) => <Day on={row.validUntilDay} /> },
          {
            key: "book",
            head: w.heads.book,
            cell: (row) => (
              <>
                {row.priceBook} {row.onOldBook ? <Badge tone="amber">{w.oldBookMark}</Badge> : null}
              </>
            ),
          },
          {
            key: "created",
            head: w.heads.created,
            cell: (row) => <Clock at={row.createdAt} />,
          },
        ]}
        rows={rows}
        rowKey={(row) => row.quoteId}
        csvUrl={listHref("/shop/quotes/csv", query, { page: undefined })}
        empty={<Empty title={w.none}>{w.noneHint}</Empty>}
      />
      <UnreadableLine rows={unreadable} />
      <Paging
        page={page}
        pageCount={Math.ceil(total / pageSize)}
        href={(to) => listHref("/shop/quotes", query, { page: String(to) })}
      />
    </Page>
  );
}
