/** Components drawn from props made by hand, without a request around them. */
import { AppRouterContext } from "next/dist/shared/lib/app-router-context.shared-runtime";
import type { ReactNode } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { parsed, type Reading } from "./page-reading";
import { keepSound } from "./page-sound";

/** A router that goes nowhere. */
export const stillRouter = {
  bfcacheId: "0",
  back: () => {},
  forward: () => {},
  refresh: () => {},
  push: () => {},
  replace: () => {},
  prefetch: () => {},
};

/** A component drawn from props made by hand. */
export function drawn(element: ReactNode): Reading {
  const seen = parsed(renderToStaticMarkup(element));
  keepSound(seen.element);
  return seen;
}

/** The same where it asks for the router. */
export function drawnRouted(element: ReactNode): Reading {
  return drawn(<AppRouterContext value={stillRouter}>{element}</AppRouterContext>);
}
