/** Whether somebody is known to stand behind the order, and who else has their number. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { fill } from "#app/_ui/words.ts";
import { CorrectContact } from "#app/shop/correct-contact.tsx";
import { clock } from "#app/shop/say.ts";
import words from "#content/copy/customers.json";
import { isOneOf } from "#engine/floor";
import type { Namesake, OrderView } from "#services";
import { confirm, correct } from "../actions";

const w = words.order;

/** Above everything else of the page, as nothing goes on before it. */
export function ToConfirm({ order }: { readonly order: OrderView }) {
  if (order.confirmed !== null || order.state !== "waiting") return null;
  return (
    <div className="mb-6">
      <Notice tone="amber" title={w.title}>
        <p>{w.lead}</p>
        <ActionForm
          action={confirm}
          idPrefix="confirm-"
          fields={[
            { kind: "hidden", name: "orderId", value: order.orderId },
            { kind: "text", name: "reason", label: w.reason, autoComplete: "off" },
          ]}
          submit={w.button}
        />
      </Notice>
    </div>
  );
}

export function Contact({
  order,
  sameNumber,
}: {
  readonly order: OrderView;
  readonly sameNumber: readonly Namesake[];
}) {
  const { confirmed, customer } = order;
  return (
    <div className="mt-3 grid gap-3">
      {sameNumber.length === 0 ? null : (
        <Notice tone="amber" title={words.customer.sameNumber}>
          <p>{sameNumber.map(({ name }) => name).join(", ")}</p>
        </Notice>
      )}
      <p className="flex flex-wrap gap-x-4">
        <a href={`/shop/customers/${customer.customerId}`}>{w.customerPage}</a>
      </p>
      {isOneOf(["shipped", "delivered", "cancelled"], order.state) ? null : (
        <CorrectContact
          contact={customer}
          hidden={{ orderId: order.orderId, version: String(order.version) }}
          action={correct}
          lead={words.correct.buyerLead}
        />
      )}
      {confirmed === null ? null : (
        <p className="text-sm text-pencil">
          {fill(w.confirmed, { at: clock(confirmed.at), how: fill(w.how[confirmed.how], { by: confirmed.by }) })}
        </p>
      )}
    </div>
  );
}
