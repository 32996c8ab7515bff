import type { Metadata } from "next";
import { notFound, redirect } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ButtonLink } from "#app/_ui/button.tsx";
import { dayText } from "#app/_ui/date-range.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Page } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { CautionReminder } from "#app/shop/caution-reminder.tsx";
import { clock } from "#app/shop/say.ts";
import { permit } from "#auth";
import customers from "#content/copy/customers.json";
import words from "#content/copy/shop.json";
import { type Context, deskOverview, listDrafts, readGuessing, unnamedProxySeen } from "#services";
import { DeskLists } from "./desk-lists";
import { Guessing } from "./people/guessing";

const w = words.desk;
export const metadata: Metadata = { title: w.title };

/** Where each figure leads. */
const places: Readonly<Record<keyof typeof w.counts, string>> = {
  drafts: "/shop/call",
  callBacksDue: "#call-backs",
  quotesOpen: "/shop/quotes?state=open",
  quotesExpiringSoon: "#expiring",
  quotesOnOldBook: "/shop/quotes?onOldBook=true",
  ordersToConfirm: "/shop/confirmations",
  depositsWaiting: "/shop/orders?waitingFor=deposit",
  proofsWaiting: "/shop/orders?waitingFor=proof",
  rightsWaiting: "/shop/orders?waitingFor=rights",
  reviewsAsked: "#reviews",
  pairsInBuild: "/shop/queue?view=promises",
  promisesAtRisk: "#at-risk",
};

export default async function DeskPage() {
  const ctx = await staffContext("/shop");
  if (!permit(ctx.actor, "call.work").ok) redirect("/shop/queue");
  const [overview, drafts, guessing] = await Promise.all([
    deskOverview(ctx),
    listDrafts(ctx, { state: "open" }),
    readGuessing(ctx),
  ]);
  if (!overview.ok || !drafts.ok) notFound();
  const { today, counts } = overview.value;
  return (
    <Page
      wide
      title={w.title}
      lead={fill(w.lead, { day: dayText(today) })}
      aside={
        <ButtonLink tone="primary" href="/shop/call">
          {w.open}
        </ButtonLink>
      }
    >
      <CautionReminder ctx={ctx} />
      {guessing.ok && guessing.value.length > 0 ? (
        <div className="mb-6 grid gap-4">
          <Guessing guessing={guessing.value} href="/shop/people" />
        </div>
      ) : null}
      <UnnamedProxy ctx={ctx} />
      <ul className="mb-8 grid grid-cols-2 border-t border-l border-rule sm:grid-cols-3 lg:grid-cols-6">
        {(Object.keys(places) as (keyof typeof places)[]).map((key) => (
          <li key={key} className="border-r border-b border-rule">
            <a href={places[key]} className="flex min-h-14 items-baseline gap-2 px-3 py-2 no-underline hover:underline">
              <span
                className={`measure text-xl ${key === "promisesAtRisk" && counts[key] > 0 ? "text-iron" : "text-ink"}`}
              >
                {counts[key]}
              </span>
              <span className="text-sm text-pencil">{w.counts[key]}</span>
            </a>
          </li>
        ))}
      </ul>
      <DeskLists overview={overview.value} drafts={drafts.value} />
    </Page>
  );
}

/** For the owner, who can name it. */
async function UnnamedProxy({ ctx }: { readonly ctx: Context }) {
  if (!permit(ctx.actor, "staff.manage").ok) return null;
  const seen = await unnamedProxySeen(ctx);
  return seen === null ? null : (
    <div className="mb-6 max-w-measure">
      <Notice tone="amber" title={customers.confirmations.proxyTitle}>
        <p className="break-words">{fill(customers.confirmations.proxy, { at: clock(seen) })}</p>
      </Notice>
    </div>
  );
}
