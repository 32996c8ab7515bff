import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { Empty } from "#app/_ui/empty.tsx";
import { Badge } from "#app/_ui/notice.tsx";
import { Page } from "#app/_ui/page.tsx";
import { Paging } from "#app/_ui/paging.tsx";
import { Table } from "#app/_ui/table.tsx";
import { permit } from "#auth";
import words from "#content/copy/customers.json";
import queueWords from "#content/copy/queue.json";
import { listCustomersQuery } from "#schemas";
import { listCustomers } from "#services";
import { FilterForm } from "../filter-form";
import { listHref, type Query } from "../list-href";

const w = words.customers;
export const metadata: Metadata = { title: w.title };

export default async function CustomersPage({ searchParams }: { readonly searchParams: Promise<Query> }) {
  const query = await searchParams;
  const ctx = await staffContext(listHref("/shop/customers", query, {}));
  const parsed = listCustomersQuery.safeParse(query);
  const found = await listCustomers(ctx, parsed.success ? parsed.data : {});
  if (!found.ok) notFound();
  const { rows, total, page, pageSize } = found.value;
  return (
    <Page
      wide
      title={w.title}
      lead={w.lead}
      aside={permit(ctx.actor, "retention.set").ok ? <a href="/shop/retention">{w.retention}</a> : null}
    >
      <FilterForm
        submit={w.filter}
        problem={parsed.success ? undefined : parsed.error.issues[0]?.message}
        fields={[
          { kind: "text", name: "text", label: w.text, value: query.text },
          {
            kind: "select",
            name: "sharesNumber",
            label: w.shares,
            empty: w.any,
            options: w.sharesOptions,
            value: query.sharesNumber,
          },
        ]}
      />
      <Table
        caption={w.title}
        hideCaption
        stacks
        columns={[
          {
            key: "name",
            head: w.heads.name,
            cell: (row) => (
              <>
                <a href={`/shop/customers/${row.customerId}`}>{row.name}</a>{" "}
                {row.isGuestsWord ? <span className="text-sm text-pencil">{w.guestsWord}</span> : null}
              </>
            ),
          },
          { key: "phone", head: w.heads.phone, cell: (row) => row.phone ?? "–" },
          { key: "email", head: w.heads.email, cell: (row) => row.email ?? "–" },
          {
            key: "same",
            head: w.heads.sameNumber,
            cell: (row) =>
              row.sameNumber.map(({ customerId, name }) => (
                <Badge key={customerId} tone="amber">
                  {name}
                </Badge>
              )),
          },
          { key: "quotes", head: w.heads.quotes, numeric: true, cell: (row) => row.quotes },
          { key: "orders", head: w.heads.orders, numeric: true, cell: (row) => row.orders },
        ]}
        rows={rows}
        rowKey={(row) => row.customerId}
        empty={<Empty title={w.none}>{w.noneHint}</Empty>}
      />
      <Paging
        page={page}
        pageCount={Math.ceil(total / pageSize)}
        words={queueWords.paging}
        href={(to) => listHref("/shop/customers", query, { page: String(to) })}
      />
    </Page>
  );
}
