import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { Clock } from "#app/shop/cells.tsx";
import { clock } from "#app/shop/say.ts";
import words from "#content/copy/customers.json";
import { type BudgetRow, listBudgets, listUnconfirmed, type UnconfirmedOrders, unnamedProxySeen } from "#services";
import { beginAnew, release } from "./actions";

const w = words.confirmations;
export const metadata: Metadata = { title: w.title };

export default async function ConfirmationsPage() {
  const ctx = await staffContext("/shop/confirmations");
  const [found, budgets, proxySeen] = await Promise.all([
    listUnconfirmed(ctx),
    listBudgets(ctx),
    unnamedProxySeen(ctx),
  ]);
  if (!found.ok || !budgets.ok) notFound();
  return (
    <Page wide title={w.title} lead={w.lead}>
      <Orders found={found.value} />
      <Part title={w.budgets} id="budgets">
        <p className="mb-4 max-w-measure text-pencil">{w.budgetsLead}</p>
        {proxySeen === null ? null : (
          <div className="mb-4 max-w-measure">
            <Notice tone="amber" title={w.proxyTitle}>
              <p className="break-words">{fill(w.proxy, { at: clock(proxySeen) })}</p>
            </Notice>
          </div>
        )}
        <Budgets rows={budgets.value} />
      </Part>
    </Page>
  );
}

function Orders({ found: { orders, more } }: { readonly found: UnconfirmedOrders }) {
  if (orders.length === 0) {
    return (
      <div className="mb-8 max-w-measure">
        <Notice tone="moss" title={w.none} />
      </div>
    );
  }
  return (
    <div className="mb-8 grid gap-6">
      <ActionForm
        action={release}
        idPrefix="release-"
        fields={[
          {
            kind: "checks",
            name: "orderIds",
            label: w.choose,
            choices: orders.map((order) => ({
              value: order.orderId,
              label: (
                <a href={`/shop/orders/${order.orderId}`}>
                  {fill(w.choice, { order: order.number, name: order.customerName, ski: order.summary })}
                </a>
              ),
              detail: `${fill(w.detail, { total: moneyText(order.totalCents), at: clock(order.acceptedAt) })}${
                order.mark === null || order.ofMark < 2 ? "" : fill(w.mark, { mark: order.mark, count: order.ofMark })
              }`,
            })),
          },
          { kind: "text", name: "reason", label: w.reason, autoComplete: "off" },
        ]}
        submit={w.release}
        done={w.released}
      />
      {more > 0 ? <p className="text-pencil">{fill(w.more, { count: more })}</p> : null}
    </div>
  );
}

function Budgets({ rows }: { readonly rows: readonly BudgetRow[] }) {
  return (
    <div className="grid gap-6">
      <Table
        caption={w.budgets}
        hideCaption
        dense
        stacks
        columns={[
          { key: "door", head: w.door, cell: (row) => w.doors[row.door] },
          { key: "used", head: w.heads.used, numeric: true, cell: (row) => row.allUsed },
          { key: "most", head: w.heads.most, numeric: true, cell: (row) => row.allMost },
          { key: "guests", head: w.heads.guests, numeric: true, cell: (row) => row.guestsAtEnd },
          { key: "until", head: w.heads.until, cell: (row) => (row.until === null ? "–" : <Clock at={row.until} />) },
        ]}
        rows={rows}
        rowKey={(row) => row.door}
      />
      <ActionForm
        action={beginAnew}
        idPrefix="budgets-"
        tone="plain"
        fields={[
          {
            kind: "checks",
            name: "doors",
            label: w.budgetChoice,
            choices: rows.map(({ door }) => ({ value: door, label: w.doors[door] })),
          },
          { kind: "text", name: "reason", label: w.budgetReason, autoComplete: "off" },
        ]}
        submit={w.budgetButton}
        done={w.budgetDone}
      />
    </div>
  );
}
