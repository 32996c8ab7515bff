import type { Metadata } from "next";
import { staffContext } from "#app/_server/request.ts";
import { DateRange, dayText } from "#app/_ui/date-range.tsx";
import { Facts } from "#app/_ui/facts.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Badge, Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { PriceTable } from "#app/_ui/price-table.tsx";
import { fill } from "#app/_ui/words.ts";
import { orderTones } from "#app/shop/(staff)/order-tones.ts";
import { History } from "#app/shop/history.tsx";
import { PrivateLink } from "#app/shop/private-link.tsx";
import { refusedPage } from "#app/shop/refused-page.tsx";
import { clock } from "#app/shop/say.ts";
import { permit } from "#auth";
import clubWords from "#content/copy/clubs.json";
import paperWords from "#content/copy/papers.json";
import words from "#content/copy/shop.json";
import skierWords from "#content/copy/skier.json";
import { closedStates, isOneOf } from "#engine/floor";
import { idOf } from "#schemas/ids";
import { type OrderView, offeredMethods, readCustomerPage, readOrder } from "#services";
import { Close } from "./close";
import { Contact, ToConfirm } from "./contact";
import { Gates } from "./gates";
import { Payments } from "./payments";
import { PromiseTools } from "./promise-tools";

const w = words.order;
export const metadata: Metadata = { title: "Order" };

export default async function OrderPage({ params }: { readonly params: Promise<{ readonly orderId: string }> }) {
  const { orderId } = await params;
  const ctx = await staffContext(`/shop/orders/${orderId}`);
  const read = await readOrder(ctx, { orderId: idOf("order", orderId) });
  if (!read.ok) return refusedPage(read.refusal);
  const order = read.value;
  const [methods, customer] = await Promise.all([
    offeredMethods(ctx),
    readCustomerPage(ctx, { customerId: order.customer.customerId }),
  ]);
  return (
    <Page
      wide
      title={fill(w.title, { number: order.number })}
      lead={
        <>
          {fill(w.lead, { name: order.customer.name })}{" "}
          <a href={`/shop/quotes/${order.quote.quoteId}`}>{order.quote.number}</a>
          {order.club === null ? null : (
            <>
              , {clubWords.joined}{" "}
              <a href={`/shop/clubs/${order.club.clubId}`}>
                {order.club.number}, {order.club.name}
              </a>
            </>
          )}
        </>
      }
      aside={<Badge tone={orderTones[order.state]}>{words.orders.states[order.state]}</Badge>}
    >
      {order.cancelled ? (
        <div className="mb-6">
          <Notice
            tone="iron"
            title={fill(w.cancelled, {
              at: clock(order.cancelled.at),
              reason: order.cancelled.reason,
              fee: moneyText(order.cancelled.feeCents),
              refund: moneyText(order.cancelled.refundCents),
            })}
          />
        </div>
      ) : null}
      <ToConfirm order={order} />
      <Allowed order={order} />
      <div className="grid gap-x-12 *:min-w-0 lg:grid-cols-[minmax(0,3fr)_minmax(0,2fr)]">
        <div>
          <Part title={w.promise} id="promise">
            <Promised order={order} />
            <PromiseTools order={order} isOwner={permit(ctx.actor, "press-slot.release").ok} />
          </Part>
          <Part title={w.gates} id="gates">
            <Gates order={order} methods={methods} />
          </Part>
          <Part title={w.pairs} id="pairs">
            <Pairs order={order} />
          </Part>
          <Part title={w.history} id="history">
            <History events={order.history} title={w.history} />
          </Part>
        </div>
        <div>
          <Part title={w.customer} id="customer">
            <Facts facts={customerFacts(order)} />
            <Contact order={order} sameNumber={customer.ok ? customer.value.sameNumber : []} />
            {order.cancelled ? null : (
              <p className="mt-3 flex flex-wrap gap-x-4">
                <a href={`/files/orders/${order.orderId}`}>{paperWords.links.a4}</a>
                <a href={`/files/orders/${order.orderId}?paper=letter`}>{paperWords.links.letter}</a>
                <a href={`/files/orders/${order.orderId}?prices=no`}>{paperWords.links.withoutPrices}</a>
              </p>
            )}
            <div className="mt-3">
              <PrivateLink ctx={ctx} kind="order" id={order.orderId} />
            </div>
          </Part>
          <Part title={w.price} id="price">
            <PriceTable price={order.price} words={skierWords.priceWords} caption={w.price} hideCaption />
          </Part>
          <Part title={w.payments} id="payments">
            <Payments order={order} methods={methods} isOwner={permit(ctx.actor, "payment.waive").ok} />
          </Part>
          <Close order={order} isOwner={permit(ctx.actor, "order.ship-unpaid").ok} />
        </div>
      </div>
    </Page>
  );
}

/** What had stopped the sale, and the owner's word. */
function Allowed({ order }: { readonly order: OrderView }) {
  if (order.allowed.length === 0) return null;
  return (
    <div className="mb-6 grid gap-3">
      {order.allowed.map(({ code, message, by, reason }) => (
        <Notice key={`${code} ${by} ${reason}`} tone="amber" title={message ?? w.allowedByHand}>
          <p>{fill(w.allowed, { by, reason })}</p>
        </Notice>
      ))}
    </div>
  );
}

function Promised({ order }: { readonly order: OrderView }) {
  return (
    <div className="grid gap-1">
      <p className="flex flex-wrap items-baseline gap-3 text-lg">
        {order.promisedOn ? (
          <strong>{fill(w.promised, { day: dayText(order.promisedOn) })}</strong>
        ) : (
          <span>
            {w.estimateNow}{" "}
            <DateRange
              verb=""
              from={order.estimate.p50}
              to={order.estimate.p90}
              shares={order.estimate.shares}
              withYear
            />
            .
          </span>
        )}
        <Badge tone={order.promisedOn ? "moss" : "info"}>{w.classes[order.promiseClass]}</Badge>
      </p>
      <p className="text-pencil">
        {order.clockStartedAt ? fill(w.clock, { at: clock(order.clockStartedAt) }) : w.estimateNote}
      </p>
    </div>
  );
}

function Pairs({ order }: { readonly order: OrderView }) {
  const isOpen = !isOneOf(closedStates, order.state);
  return (
    <ul className="grid gap-3">
      {order.pairs.map((pair) => (
        <li key={pair.pairId} className="flex flex-wrap items-baseline gap-x-4 gap-y-1 border-b border-rule pb-3">
          <a href={`/shop/pair/${pair.serial}`} className="font-semibold">
            {pair.serial}
          </a>
          <span>
            {pair.modelName}, {pair.spec.lengthCm} cm
            {order.club === null ? null : `, ${fill(clubWords.rides, { name: pair.skierName })}`}
          </span>
          <span className="text-pencil">
            {fill(w.pairProgress, { done: pair.doneOperations, all: pair.allOperations })}
          </span>
          {isOpen ? <a href={`/shop/orders/${order.orderId}/edit?pair=${pair.pairId}`}>{w.edit}</a> : null}
        </li>
      ))}
    </ul>
  );
}

function customerFacts({ customer, customerSpecified }: OrderView) {
  const { address } = customer;
  return [
    { name: words.call.name, value: customer.name },
    ...(customer.phone ? [{ name: words.desk.heads.phone, value: customer.phone, measure: true }] : []),
    ...(customer.email ? [{ name: words.signIn.email, value: customer.email }] : []),
    ...(address
      ? [
          {
            name: "Address",
            value: [...address.lines, address.town, address.region, address.postcode, address.country]
              .filter(Boolean)
              .join(", "),
          },
        ]
      : []),
    ...(customerSpecified.length > 0 ? [{ name: w.specified, value: customerSpecified.join(", ") }] : []),
  ];
}
