import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { Empty } from "#app/_ui/empty.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Badge } from "#app/_ui/notice.tsx";
import { Page } from "#app/_ui/page.tsx";
import { Paging } from "#app/_ui/paging.tsx";
import { Table } from "#app/_ui/table.tsx";
import { Clock, Day, NumberLink } from "#app/shop/cells.tsx";
import { UnreadableLine } from "#app/shop/unreadable-line.tsx";
import customers from "#content/copy/customers.json";
import words from "#content/copy/shop.json";
import { listOrdersQuery } from "#schemas";
import { listOrders } from "#services";
import { FilterForm } from "../filter-form";
import { listHref, type Query } from "../list-href";
import { orderTones } from "../order-tones";
import { WaitingBadges } from "../waiting-badges";

const w = words.orders;
export const metadata: Metadata = { title: w.title };

export default async function OrdersPage({ searchParams }: { readonly searchParams: Promise<Query> }) {
  const query = await searchParams;
  const ctx = await staffContext(listHref("/shop/orders", query, {}));
  const parsed = listOrdersQuery.safeParse(query);
  const found = await listOrders(ctx, parsed.success ? parsed.data : {});
  if (!found.ok) notFound();
  const { rows, total, page, pageSize, unreadable } = found.value;
  const any = words.quotes.anyState;
  return (
    <Page
      wide
      title={w.title}
      lead={w.lead}
      aside={<a href="/shop/confirmations">{customers.customers.confirmations}</a>}
    >
      <FilterForm
        submit={words.quotes.filter}
        problem={parsed.success ? undefined : parsed.error.issues[0]?.message}
        fields={[
          { kind: "select", name: "state", label: w.state, empty: any, options: w.states, value: query.state },
          {
            kind: "select",
            name: "waitingFor",
            label: w.waitingFor,
            empty: any,
            options: words.waitingFor,
            value: query.waitingFor,
          },
          { kind: "text", name: "text", label: w.text, value: query.text },
        ]}
      />
      <Table
        caption={w.title}
        hideCaption
        columns={[
          {
            key: "number",
            head: w.heads.number,
            cell: (row) => <NumberLink href={`/shop/orders/${row.orderId}`} number={row.number} />,
          },
          { key: "customer", head: w.heads.customer, cell: (row) => row.customerName },
          {
            key: "pairs",
            head: w.heads.pairs,
            cell: (row) => (
              <>
                {row.serials.map((serial) => (
                  <a key={serial} href={`/shop/pair/${serial}`} className="mr-2 whitespace-nowrap">
                    {serial}
                  </a>
                ))}
                <span className="text-sm text-pencil">{row.summary}</span>
              </>
            ),
          },
          {
            key: "state",
            head: w.heads.state,
            cell: (row) => <Badge tone={orderTones[row.state]}>{w.states[row.state]}</Badge>,
          },
          {
            key: "waitingFor",
            head: w.heads.waitingFor,
            cell: (row) =>
              row.isConfirmed || row.state !== "waiting" ? (
                <WaitingBadges waitingFor={row.waitingFor} />
              ) : (
                <Badge tone="amber">{customers.order.toConfirm}</Badge>
              ),
          },
          {
            key: "promised",
            head: w.heads.promised,
            cell: (row) => <Day on={row.promisedOn} />,
          },
          { key: "total", head: w.heads.total, numeric: true, cell: (row) => moneyText(row.totalCents) },
          {
            key: "accepted",
            head: w.heads.accepted,
            cell: (row) => <Clock at={row.acceptedAt} />,
          },
        ]}
        rows={rows}
        rowKey={(row) => row.orderId}
        csvUrl={listHref("/shop/orders/csv", query, { page: undefined })}
        empty={<Empty title={w.none}>{w.noneHint}</Empty>}
      />
      <UnreadableLine rows={unreadable} />
      <Paging
        page={page}
        pageCount={Math.ceil(total / pageSize)}
        href={(to) => listHref("/shop/orders", query, { page: String(to) })}
      />
    </Page>
  );
}
