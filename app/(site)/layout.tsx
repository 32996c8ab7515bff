import type { ReactNode } from "react";
import { SiteFrame } from "#app/_ui/site-frame.tsx";
import { settings } from "#services";

export default function SiteLayout({ children }: { readonly children: ReactNode }) {
  return (
    <SiteFrame workshop={settings().shop.name} place={settings().shop.town}>
      {children}
    </SiteFrame>
  );
}
