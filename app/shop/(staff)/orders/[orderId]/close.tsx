/** How an order ends: it is sent out and arrives, or it is cancelled by the ladder. */
import { PageCautions } from "#app/_server/page-cautions.tsx";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Notice } from "#app/_ui/notice.tsx";
import { Part } from "#app/_ui/page.tsx";
import { More } from "#app/_ui/section.tsx";
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/shop.json";
import type { OrderView } from "#services";
import { cancel, deliver, ship } from "../actions";

const w = words.order;

/** `isOwner`: may send it out although money is open. */
export function Close({ order, isOwner }: { readonly order: OrderView; readonly isOwner: boolean }) {
  const id = { kind: "hidden", name: "orderId", value: order.orderId } as const;
  const { ifCancelled } = order;
  const isUnpaid = order.money.openCents > 0;
  return (
    <>
      {order.state === "ready" ? (
        <Part title={w.ship} id="ship">
          <div className="mb-3">
            <PageCautions page="delivery" />
          </div>
          {isUnpaid ? (
            <div className="mb-3">
              <Notice tone="amber" title={fill(w.shipOpen, { amount: moneyText(order.money.openCents) })}>
                {isOwner ? null : w.shipOpenDesk}
              </Notice>
            </div>
          ) : null}
          {isUnpaid && !isOwner ? null : (
            <ActionForm
              action={ship}
              idPrefix="ship-"
              fields={[
                id,
                { kind: "text", name: "tracking", label: w.shipTracking, optional: true, autoComplete: "off" },
                ...(isUnpaid
                  ? ([{ kind: "text", name: "unpaidReason", label: w.shipUnpaid, autoComplete: "off" }] as const)
                  : []),
              ]}
              submit={w.shipButton}
            />
          )}
        </Part>
      ) : null}
      {order.state === "shipped" ? (
        <Part title={w.deliver} id="deliver">
          <ActionForm action={deliver} idPrefix="deliver-" fields={[id]} submit={w.deliverButton} />
        </Part>
      ) : null}
      {ifCancelled && order.cancelled === null ? (
        <More summary={w.cancel}>
          <p className="mb-3">
            {fill(w.cancelLead, {
              stage: w.stages[ifCancelled.stage],
              keep: moneyText(ifCancelled.keepCents),
              refund: moneyText(ifCancelled.refundCents),
            })}
          </p>
          <ActionForm
            action={cancel}
            idPrefix="cancel-"
            tone="danger"
            fields={[id, { kind: "text", name: "reason", label: w.cancelReason, autoComplete: "off" }]}
            submit={w.cancelButton}
          />
        </More>
      ) : null}
    </>
  );
}
