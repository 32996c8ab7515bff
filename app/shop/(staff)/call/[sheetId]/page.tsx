import type { Metadata } from "next";
import { cookies } from "next/headers";
import { notFound } from "next/navigation";
import { sheetCautions } from "#app/_server/page-cautions.tsx";
import { staffContext } from "#app/_server/request.ts";
import { fill } from "#app/_ui/words.ts";
import { PrivateLink } from "#app/shop/private-link.tsx";
import { refusedPage } from "#app/shop/refused-page.tsx";
import { permit } from "#auth";
import clubWords from "#content/copy/clubs.json";
import customers from "#content/copy/customers.json";
import refusalWords from "#content/copy/refusals.json";
import sheetWords from "#content/copy/sheet.json";
import words from "#content/copy/shop.json";
import { idOf } from "#schemas/ids";
import { activeCatalog, type Context, findByPhone, readSheet, type SheetView, skierBand } from "#services";
import {
  askOwner,
  assessCall,
  postCallQuote,
  postCallSection,
  quoteCall,
  reloadCall,
  saveCall,
  stateCallRights,
} from "../actions";
import { CallSheet } from "./call-sheet.client";
import { CallOutcomes } from "./outcomes";

const w = words.call;
export const metadata: Metadata = { title: "Call" };

export default async function CallPage({ params }: { readonly params: Promise<{ readonly sheetId: string }> }) {
  const sheetId = idOf("sheet", (await params).sheetId);
  const ctx = await staffContext(`/shop/call/${sheetId}`);
  const [read, catalog, jar, band] = await Promise.all([
    readSheet(ctx, { sheetId }),
    activeCatalog(ctx),
    cookies(),
    skierBand(ctx),
  ]);
  if (!read.ok) return refusedPage(read.refusal);
  if (!catalog.ok) notFound();
  const sheet = read.value;
  return (
    <>
      <div className="mx-auto grid w-full max-w-page gap-3 px-4 pt-4 sm:px-6">
        <h1 className="text-xl">
          {fill(w.sheetTitle, { name: sheet.club?.skierName ?? sheet.contact.name ?? w.noName })}
        </h1>
        {sheet.club === null ? (
          <KnownAs ctx={ctx} sheet={sheet} />
        ) : (
          <p className="text-sm">
            <a href={`/shop/clubs/${sheet.club.clubId}`}>{clubWords.partOf}</a>
          </p>
        )}
      </div>
      <CallSheet
        key={sheetId}
        callWords={w}
        isOwner={permit(ctx.actor, "quote.override").ok}
        sheet={{
          catalog: catalog.value.engine,
          initial: sheet,
          words: sheetWords,
          refusalWords,
          cautions: sheetCautions(),
          band: band.ok ? band.value : null,
          preferImperial: jar.get("units")?.value === "imperial",
          compareHref: `/shop/call/${sheetId}/compare`,
          pictures: {
            uploadUrl: `/files/artwork/${sheetId}`,
            pictureBase: "/files/artwork/staff",
            stateRights: stateCallRights,
          },
        }}
        actions={{
          save: saveCall.bind(null, sheetId),
          assess: assessCall.bind(null, sheetId),
          reload: reloadCall.bind(null, sheetId),
          quote: quoteCall.bind(null, sheetId),
          post: postCallSection.bind(null, sheetId),
          postQuote: postCallQuote.bind(null, sheetId),
          liveUrl: `/shop/call/${sheetId}/live`,
          ask: askOwner.bind(null, sheetId),
        }}
      >
        <CallOutcomes
          sheet={sheet}
          link={<PrivateLink ctx={ctx} kind="sheet" id={sheetId} />}
          answersLink={<PrivateLink ctx={ctx} kind="answers" id={sheetId} />}
        />
      </CallSheet>
    </>
  );
}

/** Who this number is: what they asked for and ordered before. */
async function KnownAs({ ctx, sheet }: { readonly ctx: Context; readonly sheet: SheetView }) {
  const { phone } = sheet.contact;
  const found = phone === undefined ? null : await findByPhone(ctx, { phone });
  if (!found?.ok) return null;
  const { customer, sameNumber, quotes, orders } = found.value;
  if (customer === null) return <p className="text-sm text-pencil">{`${phone}. ${w.knownNew}`}</p>;
  return (
    <p className="flex flex-wrap gap-x-4 text-sm">
      <span>
        {w.known}: <a href={`/shop/customers/${customer.customerId}`}>{customer.name}</a>, {phone}
      </span>
      {sameNumber.map((other) => (
        <a key={other.customerId} href={`/shop/customers/${other.customerId}`}>
          {customers.customer.sameNumber}: {other.name}
        </a>
      ))}
      {orders.map((order) => (
        <a key={order.orderId} href={`/shop/orders/${order.orderId}`}>
          {order.number}, {words.orders.states[order.state as keyof typeof words.orders.states] ?? order.state}
        </a>
      ))}
      {quotes.map((quote) => (
        <a key={quote.quoteId} href={`/shop/quotes/${quote.quoteId}`}>
          {quote.number}, {words.quotes.states[quote.state as keyof typeof words.quotes.states] ?? quote.state}
        </a>
      ))}
    </p>
  );
}
