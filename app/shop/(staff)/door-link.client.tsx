"use client";
import Link from "next/link";
import { usePathname } from "next/navigation";
import type { ReactNode } from "react";

type Door =
  | "/shop"
  | "/shop/call"
  | "/shop/quotes"
  | "/shop/clubs"
  | "/shop/orders"
  | "/shop/customers"
  | "/shop/queue"
  | "/shop/strips"
  | "/shop/notices"
  | "/shop/promises"
  | "/shop/prices"
  | "/shop/floor-times"
  | "/shop/measured"
  | "/shop/cautions"
  | "/shop/people";

/** A link of the shop's frame that says when one stands behind it. */
export function DoorLink({ href, children }: { readonly href: Door; readonly children: ReactNode }) {
  const path = usePathname();
  const isHere = href === "/shop" ? path === href : path.startsWith(href);
  return (
    <Link
      href={href}
      aria-current={isHere ? "page" : undefined}
      className="inline-flex min-h-11 items-center aria-[current=page]:font-semibold aria-[current=page]:text-ink aria-[current=page]:no-underline"
    >
      {children}
    </Link>
  );
}
