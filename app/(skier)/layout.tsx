import type { ReactNode } from "react";
import { SiteFrame } from "#app/_ui/site-frame.tsx";
import shop from "#content/catalog/shop.json";

export default function SkierLayout({ children }: { readonly children: ReactNode }) {
  return (
    <SiteFrame workshop={shop.name} place={shop.town}>
      {children}
    </SiteFrame>
  );
}
