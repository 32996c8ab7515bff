/** What can be done with an order's date: moved with consent, or made a hard one. */

import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Notice } from "#app/_ui/notice.tsx";
import { More } from "#app/_ui/section.tsx";
import { fill } from "#app/_ui/words.ts";
import { clock } from "#app/shop/say.ts";
import words from "#content/copy/promises.json";
import { isOneOf, openPairStates } from "#engine/floor";
import type { OrderView } from "#services";
import { settings } from "#services";
import { movePromise, takePressSlot } from "./promise-actions";

const w = words.order;

export function PromiseTools({ order, isOwner }: { readonly order: OrderView; readonly isOwner: boolean }) {
  const isOpen = isOneOf(openPairStates, order.state);
  const { slotLost, hardDate } = order;
  return (
    <div className="mt-3 grid gap-3">
      {slotLost ? (
        <Notice tone="amber" title={fill(w.slotLost, { at: clock(slotLost.at), reason: w.reasons[slotLost.reason] })} />
      ) : null}
      {hardDate ? (
        <p>
          {fill(w.planB, { planB: hardDate.planB })}
          {order.money.rush ? `, ${fill(rushWords(order), { fee: moneyText(order.money.rush.totalCents) })}` : ""}
        </p>
      ) : null}
      {isOpen && order.promisedOn ? (
        <More summary={w.change}>
          <p className="mb-3">{w.changeLead}</p>
          <ActionForm
            action={movePromise}
            idPrefix="promise-"
            tone="plain"
            submit={w.submit}
            fields={[
              { kind: "hidden", name: "orderId", value: order.orderId },
              { kind: "hidden", name: "version", value: String(order.version) },
              { kind: "date", name: "on", label: w.on, value: order.promisedOn },
              { kind: "text", name: "reason", label: w.reason, autoComplete: "off" },
            ]}
          />
        </More>
      ) : null}
      {order.pairs.map((pair) => (
        <PressSlot key={pair.pairId} orderId={order.orderId} pair={pair} isOwner={isOwner} />
      ))}
      {isOpen && slotLost === null ? (
        <p>
          <a href={`/shop/orders/${order.orderId}/hard-date`} className="inline-flex min-h-9 items-center">
            {w.hard}
          </a>
        </p>
      ) : null}
    </div>
  );
}

function rushWords({ money, promiseClass }: OrderView): string {
  if (money.rush?.paidAt) return w.rushPaid;
  return promiseClass === "hard-date" ? w.rush : w.rushLost;
}

/** A press start that stands fast; an owner may take it away. */
function PressSlot({
  orderId,
  pair,
  isOwner,
}: {
  readonly orderId: string;
  readonly pair: OrderView["pairs"][number];
  readonly isOwner: boolean;
}) {
  const { pressSlot, serial } = pair;
  if (pressSlot === null) return null;
  const press = settings().floor.presses.find(({ id }) => id === pressSlot.press)?.label ?? pressSlot.press;
  const told = fill(w.pressSlot, { serial, press, at: clock(pressSlot.at) });
  if (!isOwner) return <p>{told}</p>;
  return (
    <More summary={told}>
      <ActionForm
        action={takePressSlot}
        idPrefix={`slot-${serial}-`}
        tone="plain"
        submit={w.releaseSlot}
        fields={[
          { kind: "hidden", name: "orderId", value: orderId },
          { kind: "hidden", name: "pairId", value: pair.pairId },
          { kind: "hidden", name: "version", value: String(pair.version) },
          { kind: "text", name: "reason", label: w.releaseReason, autoComplete: "off" },
        ]}
      />
    </More>
  );
}
