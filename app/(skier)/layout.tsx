import type { Metadata } from "next";
import type { ReactNode } from "react";
import { SiteFrame } from "#app/_ui/site-frame.tsx";
import { settings } from "#services";

/** Whoever holds a link reads it; no index does. */
export const metadata: Metadata = { robots: { index: false, follow: false } };

export default function SkierLayout({ children }: { readonly children: ReactNode }) {
  return (
    <SiteFrame workshop={settings().shop.name} place={settings().shop.town}>
      {children}
    </SiteFrame>
  );
}
