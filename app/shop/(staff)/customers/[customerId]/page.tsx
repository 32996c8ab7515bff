import type { Metadata } from "next";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Facts } from "#app/_ui/facts.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { More } from "#app/_ui/section.tsx";
import { fill } from "#app/_ui/words.ts";
import { CorrectContact } from "#app/shop/correct-contact.tsx";
import { History } from "#app/shop/history.tsx";
import { refusedPage } from "#app/shop/refused-page.tsx";
import { clock } from "#app/shop/say.ts";
import { permit } from "#auth";
import customers from "#content/copy/customers.json";
import words from "#content/copy/shop.json";
import { idOf } from "#schemas/ids";
import { type CustomerPageView, readCustomerPage } from "#services";
import { correct, erase, merge } from "../actions";

const w = customers.customer;
export const metadata: Metadata = { title: customers.customers.title };

export default async function CustomerPage({ params }: { readonly params: Promise<{ readonly customerId: string }> }) {
  const { customerId } = await params;
  const ctx = await staffContext(`/shop/customers/${customerId}`);
  const read = await readCustomerPage(ctx, { customerId: idOf("customer", customerId) });
  if (!read.ok) return refusedPage(read.refusal);
  const customer = read.value;
  const isHere = customer.erasedAt === null && customer.mergedInto === null;
  return (
    <Page title={customer.name} lead={<a href="/shop/customers">{customers.customers.title}</a>}>
      <Standing customer={customer} />
      <Part title={w.contact} id="contact">
        <Facts facts={contactFacts(customer)} />
        {isHere && permit(ctx.actor, "customer.correct").ok ? (
          <div className="mt-3">
            <CorrectContact
              contact={customer}
              hidden={{ customerId: customer.customerId }}
              action={correct}
              lead={customers.correct.lead}
            />
          </div>
        ) : null}
      </Part>
      {customer.sameNumber.length > 0 ? <SameNumber customer={customer} /> : null}
      <Part title={w.orders} id="orders">
        <Lines
          lines={customer.orders.map(({ orderId, number, state }) => ({
            href: `/shop/orders/${orderId}`,
            text: `${number}, ${words.orders.states[state]}`,
          }))}
        />
      </Part>
      <Part title={w.quotes} id="quotes">
        <Lines
          lines={customer.quotes.map(({ quoteId, number, state, name }) => ({
            href: `/shop/quotes/${quoteId}`,
            text: fill(w.quoteLine, { number, state: words.quotes.states[state], name }),
          }))}
        />
      </Part>
      <Part title={w.history} id="history">
        <History events={customer.history} title={w.history} />
      </Part>
      {permit(ctx.actor, "person.export").ok ? (
        <Part title={w.person} id="person">
          <p className="mb-3 max-w-measure text-pencil">{w.personLead}</p>
          <p className="mb-6">
            <a href={`/files/people/${customer.customerId}`} download>
              {w.download}
            </a>
          </p>
          {isHere ? <Erase customer={customer} /> : null}
        </Part>
      ) : null}
    </Page>
  );
}

function Standing({ customer }: { readonly customer: CustomerPageView }) {
  const { erasedAt, mergedInto, isGuestsWord } = customer;
  if (erasedAt !== null) return <Notice tone="info" title={fill(w.erased, { at: clock(erasedAt) })} />;
  if (mergedInto !== null) {
    return (
      <Notice tone="info" title={fill(w.mergedInto, { name: mergedInto.name })}>
        <p>
          <a href={`/shop/customers/${mergedInto.customerId}`}>{mergedInto.name}</a>
        </p>
      </Notice>
    );
  }
  return isGuestsWord ? <Notice tone="amber" title={w.guestsWord} /> : null;
}

function contactFacts({ phone, email, address, merged }: CustomerPageView) {
  const lines = address === null ? [] : [...address.lines, `${address.postcode} ${address.town}`, address.country];
  return [
    { name: customers.customers.heads.phone, value: phone ?? "–", measure: true },
    { name: customers.customers.heads.email, value: email ?? "–" },
    ...(address === null ? [] : [{ name: w.address, value: lines.join(", ") }]),
    ...(merged.length === 0 ? [] : [{ name: w.merged, value: merged.map(({ name }) => name).join(", ") }]),
  ];
}

function SameNumber({ customer }: { readonly customer: CustomerPageView }) {
  return (
    <Part title={w.sameNumber} id="same-number">
      <p className="mb-4 max-w-measure text-pencil">{w.sameNumberLead}</p>
      <ul className="grid max-w-measure gap-4">
        {customer.sameNumber.map((other) => (
          <li key={other.customerId}>
            <a href={`/shop/customers/${other.customerId}`}>{other.name}</a>
            {other.email === null ? null : <span className="text-pencil">, {other.email}</span>}
            <More summary={fill(w.mergeInto, { name: other.name })}>
              <ActionForm
                action={merge}
                idPrefix={`merge-${other.customerId}-`}
                tone="plain"
                fields={[
                  { kind: "hidden", name: "from", value: other.customerId },
                  { kind: "hidden", name: "into", value: customer.customerId },
                  { kind: "text", name: "reason", label: w.mergeReason, autoComplete: "off" },
                ]}
                submit={w.mergeButton}
              />
            </More>
          </li>
        ))}
      </ul>
    </Part>
  );
}

function Lines({ lines }: { readonly lines: readonly { readonly href: string; readonly text: string }[] }) {
  if (lines.length === 0) return <p className="text-pencil">{w.noOrders}</p>;
  return (
    <ul className="grid gap-1">
      {lines.map(({ href, text }) => (
        <li key={href}>
          <a href={href}>{text}</a>
        </li>
      ))}
    </ul>
  );
}

function Erase({ customer }: { readonly customer: CustomerPageView }) {
  return (
    <More summary={w.erase}>
      <p className="mb-3 max-w-measure">{w.eraseLead}</p>
      <ActionForm
        action={erase}
        idPrefix="erase-"
        tone="plain"
        fields={[
          { kind: "hidden", name: "customerId", value: customer.customerId },
          { kind: "text", name: "reason", label: w.eraseReason, autoComplete: "off" },
        ]}
        submit={w.eraseButton}
      />
    </More>
  );
}
