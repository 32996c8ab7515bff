/** The shop's frame: where one is, where one can go, one search, and who one is. Makers see their own doors only. */

import type { Metadata } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import { signedIn } from "#app/_server/request.ts";
import { Button } from "#app/_ui/button.tsx";
import { controlClass } from "#app/_ui/field.tsx";
import { Mark, rememberedTheme } from "#app/_ui/site-frame.tsx";
import { ThemeSwitch } from "#app/_ui/theme-switch.client.tsx";
import { type Action, permit } from "#auth";
import breakdowns from "#content/copy/breakdowns.json";
import cautions from "#content/copy/cautions.json";
import clubs from "#content/copy/clubs.json";
import customers from "#content/copy/customers.json";
import learning from "#content/copy/learning.json";
import people from "#content/copy/people.json";
import promises from "#content/copy/promises.json";
import rework from "#content/copy/rework.json";
import words from "#content/copy/shop.json";
import { settings } from "#services";
import { leave } from "../actions";
import { DoorLink } from "./door-link.client";
import { Presence } from "./presence.client";

const w = words.frame;

const doors = [
  { href: "/shop", label: w.desk, action: "call.work" },
  { href: "/shop/call", label: w.call, action: "call.work" },
  { href: "/shop/quotes", label: w.quotes, action: "quote.list" },
  { href: "/shop/clubs", label: clubs.door, action: "club.work" },
  { href: "/shop/orders", label: w.orders, action: "order.list" },
  { href: "/shop/customers", label: customers.customers.title, action: "customer.read" },
  { href: "/shop/queue", label: w.queue, action: "queue.read" },
  { href: "/shop/strips", label: rework.strips.title, action: "pair.read" },
  { href: "/shop/notices", label: breakdowns.notices.title, action: "notice.send" },
  { href: "/shop/promises", label: promises.kept.title, action: "promise.read" },
  { href: "/shop/prices", label: w.prices, action: "price.read" },
  { href: "/shop/floor-times", label: learning.floor.title, action: "learning.read" },
  { href: "/shop/measured", label: learning.measured.title, action: "learning.read" },
  { href: "/shop/cautions", label: cautions.page.title, action: "cautions.read" },
  { href: "/shop/people", label: people.door, action: "staff.manage" },
] as const satisfies readonly { readonly href: string; readonly label: string; readonly action: Action }[];

export const metadata: Metadata = { robots: { index: false, follow: false } };

export default async function ShopLayout({ children }: { readonly children: ReactNode }) {
  const staff = await signedIn();
  // The page itself sends a stranger to the sign-in, with the way back.
  if (!staff) return children;
  return (
    <>
      <header className="no-print border-b border-ink">
        <div className="mx-auto flex max-w-none flex-wrap items-center gap-x-4 gap-y-1 px-4 py-1 sm:px-6">
          <Link href="/shop" className="flex items-center gap-3 text-ink no-underline max-sm:hidden">
            <Mark />
            <span className="font-semibold">{settings().shop.name}</span>
          </Link>
          <nav
            aria-label={w.nav}
            className="flex flex-wrap items-center gap-x-3 max-sm:w-full max-sm:flex-nowrap max-sm:overflow-x-auto max-sm:whitespace-nowrap"
          >
            {doors
              .filter((door) => permit(staff, door.action).ok)
              .map((door) => (
                <DoorLink key={door.href} href={door.href}>
                  {door.label}
                </DoorLink>
              ))}
          </nav>
          <search className="min-w-0 flex-1 basis-40">
            <form action="/shop/search" className="flex gap-2">
              <label className="sr-only" htmlFor="shop-search">
                {w.search}
              </label>
              <input
                id="shop-search"
                name="text"
                type="search"
                placeholder={w.searchShort}
                title={w.search}
                className={`${controlClass} w-full max-w-48 min-w-0`}
              />
              <Button type="submit">{w.find}</Button>
            </form>
          </search>
          <form action={leave} className="flex items-center gap-3 text-sm">
            <span>
              {permit(staff, "account.own").ok ? <Link href="/shop/account">{staff.name}</Link> : staff.name},{" "}
              <span className="text-pencil">{w.roles[staff.role]}</span>
            </span>
            <Button type="submit" tone="quiet" className="px-0">
              {w.signOut}
            </Button>
          </form>
        </div>
      </header>
      <main id="main" tabIndex={-1} className="flex-1 outline-none">
        <Presence who={staff.staffId} />
        {children}
      </main>
      <footer className="no-print mt-8 border-t border-rule">
        <div className="flex flex-wrap items-baseline justify-between gap-x-8 gap-y-1 px-4 py-4 text-sm text-pencil sm:px-6">
          <p className="max-w-measure">{w.safety}</p>
          <ThemeSwitch initial={await rememberedTheme()} />
        </div>
      </footer>
    </>
  );
}
