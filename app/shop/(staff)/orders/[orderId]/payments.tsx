/** What was asked for, what came in, what is still open, and recording what came. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Facts } from "#app/_ui/facts.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { More } from "#app/_ui/section.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { clock } from "#app/shop/say.ts";
import peopleWords from "#content/copy/customers.json";
import words from "#content/copy/shop.json";
import type { DepositMethod, OrderView } from "#services";
import { receipt, refund, waive } from "../actions";

const w = words.order;
const people = peopleWords.order;

interface Props {
  readonly order: OrderView;
  readonly isOwner: boolean;
  /** How money may come here. */
  readonly methods: readonly DepositMethod[];
}

export function Payments({ order, isOwner, methods }: Props) {
  return (
    <div className="grid gap-4">
      <Table
        caption={w.payments}
        hideCaption
        dense
        columns={[
          {
            key: "kind",
            head: w.payments,
            cell: (row) => `${w.paymentKinds[row.kind]}, ${w.paymentStates[row.state]}`,
          },
          {
            key: "method",
            head: w.depositMethod,
            cell: (row) =>
              [row.method ? w.depositMethods[row.method] : "", row.reference ?? ""].filter(Boolean).join(", "),
          },
          { key: "at", head: words.history.at, cell: (row) => <span className="measure">{clock(row.at)}</span> },
          { key: "cents", head: order.price.currency, numeric: true, cell: (row) => moneyText(row.cents) },
        ]}
        rows={order.payments}
        rowKey={(row) => `${row.kind}${row.at}${row.cents}`}
      />
      <Facts facts={sums(order)} />
      <Receipt order={order} offered={methods} />
      <Refund order={order} />
      {isOwner ? <WaiveRush order={order} /> : null}
    </div>
  );
}

function sums({ money, price }: OrderView) {
  const { rush, totalCents, paidCents, openCents } = money;
  const amount = (name: string, cents: number) => ({ name, value: moneyText(cents), measure: true });
  return [
    ...(rush === null
      ? []
      : [
          amount(w.priceTotal, price.totalCents),
          amount(
            fill(rush.paidAt === null ? w.rushOpen : w.rushPaid, { tax: moneyText(rush.taxCents) }),
            rush.totalCents,
          ),
        ]),
    amount(w.allTotal, totalCents),
    amount(w.paid, paidCents),
    amount(w.open, openCents),
  ];
}

/** After the deposit: the fee alone, or everything that is open. */
function Receipt({ order, offered }: { readonly order: OrderView; readonly offered: readonly DepositMethod[] }) {
  const { rush, openCents } = order.money;
  const isRushOpen = rush !== null && rush.paidAt === null;
  const isDepositPaid = order.payments.some(({ kind, state }) => kind === "deposit" && state === "received");
  const what = [
    ...(isRushOpen ? [{ value: "rush", label: `${w.paymentKinds.rush}, ${moneyText(rush.totalCents)}` }] : []),
    ...(isDepositPaid && openCents > 0
      ? [{ value: "balance", label: fill(w.allOpen, { amount: moneyText(openCents) }) }]
      : []),
  ];
  const [first] = what;
  if (order.state === "cancelled" || first === undefined) return null;
  const methods = (["bank-transfer", "counter", "demo-card"] as const)
    .filter((value) => offered.includes(value))
    .map((value) => ({ value, label: w.depositMethods[value] }));
  return (
    <More summary={w.receipt}>
      <ActionForm
        action={receipt}
        idPrefix="receipt-"
        tone="plain"
        fields={[
          { kind: "hidden", name: "orderId", value: order.orderId },
          { kind: "radio", name: "what", label: w.receiptWhat, value: first.value, choices: what },
          { kind: "radio", name: "method", label: w.depositMethod, value: "bank-transfer", choices: methods },
          { kind: "text", name: "reference", label: w.depositReference, optional: true, autoComplete: "off" },
        ]}
        submit={w.receiptButton}
      />
    </More>
  );
}

/** The fee of a hard date is the owner's to give up, as long as it is not paid. */
function WaiveRush({ order }: { readonly order: OrderView }) {
  const { rush } = order.money;
  if (rush === null || rush.paidAt !== null || order.state === "cancelled") return null;
  return (
    <More summary={w.waive}>
      <p className="mb-3">{w.waiveLead}</p>
      <ActionForm
        action={waive}
        idPrefix="waive-"
        tone="plain"
        fields={[
          { kind: "hidden", name: "orderId", value: order.orderId },
          { kind: "text", name: "reason", label: w.waiveReason, autoComplete: "off" },
        ]}
        submit={w.waiveButton}
      />
    </More>
  );
}

/** What is owed since the order was cancelled, until it has gone back. */
function Refund({ order }: { readonly order: OrderView }) {
  const owed = order.payments.find(({ kind, state }) => kind === "refund" && state === "requested");
  if (owed === undefined) return null;
  const methods = (["bank-transfer", "counter"] as const).map((value) => ({ value, label: w.depositMethods[value] }));
  return (
    <More summary={people.refund}>
      <p className="mb-3">{fill(people.refundLead, { amount: moneyText(owed.cents) })}</p>
      <ActionForm
        action={refund}
        idPrefix="refund-"
        tone="plain"
        fields={[
          { kind: "hidden", name: "orderId", value: order.orderId },
          { kind: "radio", name: "method", label: w.depositMethod, value: "bank-transfer", choices: methods },
          { kind: "text", name: "reference", label: w.depositReference, autoComplete: "off" },
        ]}
        submit={people.refundButton}
      />
    </More>
  );
}
