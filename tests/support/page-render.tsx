/**
 * Shows our own pages below the browser: an async page is called as the framework would call it, drawn to HTML by React's
 * own server renderer, and read back as a person reads it (see page-reading.ts). Client components show their first state.
 * A test file mocks next/headers and next/cache as page-requests.ts says.
 */
import type { Metadata } from "next";
import { AppRouterContext } from "next/dist/shared/lib/app-router-context.shared-runtime";
import { PathnameContext, SearchParamsContext } from "next/dist/shared/lib/hooks-client-context.shared-runtime";
import { type ComponentType, createElement, type ReactNode } from "react";
import { prerender } from "react-dom/static";
import { stillRouter } from "./drawn";
import { parsed, type Reading } from "./page-reading";
import { called } from "./page-requests";
import { keepSound } from "./page-sound";

/** What the framework hands to a page; `path` is where the browser is. */
export interface Visit {
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string | readonly string[]>>;
  readonly path?: string;
}

// biome-ignore lint/suspicious/noExplicitAny: every page names its own params
type Page = (props: any) => ReactNode | Promise<ReactNode>;

/** The page as it is shown; a page that sends the visitor elsewhere is an error here (see `sentTo`). */
export async function shown(page: Page, visit: Visit = {}): Promise<Reading> {
  return sound(parsed(await html(page, visit)));
}

/** Where the page sends its visitor: an address, or "not-found"; null when it is shown. */
export async function sentTo(page: Page, visit: Visit = {}): Promise<string | null> {
  return (await called(() => html(page, visit))).to;
}

/** A layout around a word, as it is shown. */
export async function framed(layout: Page, path: string): Promise<Reading> {
  const around: Page = (props) => layout({ ...props, children: "what is inside" });
  return sound(parsed(await html(around, { path })));
}

function sound(page: Reading): Reading {
  keepSound(page.element);
  return page;
}

/** The page as HTML. */
export async function html(page: Page, { params = {}, query = {}, path = "/" }: Visit): Promise<string> {
  const props = { params: Promise.resolve(params), searchParams: Promise.resolve(query) };
  const content = createElement(page as ComponentType<typeof props>, props);
  const errors: unknown[] = [];
  const { prelude } = await prerender(
    <AppRouterContext value={stillRouter}>
      <PathnameContext value={path}>
        <SearchParamsContext value={new URLSearchParams()}>{content}</SearchParamsContext>
      </PathnameContext>
    </AppRouterContext>,
    { onError: (error) => void errors.push(error) },
  );
  // An error behind a boundary would otherwise be a hole in the page.
  if (errors.length > 0) throw errors[0];
  return new Response(prelude as unknown as ReadableStream<Uint8Array>).text();
}

/** The title of the browser's tab. */
export function tabTitle({ metadata }: { readonly metadata?: Metadata }): string {
  return String(metadata?.title ?? "");
}
