/** Header and footer of the public pages. The main landmark lives here, once. */
import { cookies } from "next/headers";
import Link from "next/link";
import type { ReactNode } from "react";
import type { Theme } from "./theme";
import { ThemeSwitch } from "./theme-switch.client";

export async function rememberedTheme(): Promise<Theme> {
  const value = (await cookies()).get("theme")?.value;
  return value === "light" || value === "dark" ? value : "system";
}

/** The workshop's mark: the plan outline of a pair, tips up. */
export function Mark() {
  return (
    <svg viewBox="0 0 22 44" className="h-9 w-[18px] flex-none" aria-hidden="true">
      <path
        d="M5 1C8 2 9.5 5 9.2 9 8.9 14 8 18 8 23s.8 9 1 14c.1 3-.6 5-1.2 6H2.2C1.6 42 .9 40 1 37c.2-5 1-9 1-14s-.9-9-1.2-14C.5 5 2 2 5 1Z"
        className="fill-none stroke-ink"
        strokeWidth="1.4"
      />
      <path
        d="M17 1C20 2 21.5 5 21.2 9 20.9 14 20 18 20 23s.8 9 1 14c.1 3-.6 5-1.2 6h-5.6c-.6-1-1.3-3-1.2-6 .2-5 1-9 1-14s-.9-9-1.2-14C12.500 5 14 2 17 1Z"
        className="fill-none stroke-larch"
        strokeWidth="1.4"
      />
    </svg>
  );
}

export async function SiteFrame({
  workshop,
  place,
  children,
}: {
  readonly workshop: string;
  readonly place: string;
  readonly children: ReactNode;
}) {
  return (
    <>
      <header className="border-b border-rule">
        <div className="mx-auto flex max-w-page flex-wrap items-center justify-between gap-x-6 gap-y-1 px-4 py-2 sm:px-6">
          <Link href="/" className="flex items-center gap-3 text-ink no-underline">
            <Mark />
            <span className="leading-tight">
              <span className="block font-semibold">{workshop}</span>
              <span className="block text-xs text-pencil">{place}</span>
            </span>
          </Link>
          <nav aria-label="Main" className="no-print flex flex-wrap items-center gap-x-5">
            <Link className="inline-flex min-h-11 items-center" href="/sheet">
              Start a sheet
            </Link>
            <Link className="inline-flex min-h-11 items-center" href="/method">
              How we compute
            </Link>
          </nav>
        </div>
      </header>
      <main id="main" tabIndex={-1} className="flex-1 outline-none">
        {children}
      </main>
      <footer className="mt-12 border-t border-rule">
        <div className="mx-auto flex max-w-page flex-wrap items-baseline justify-between gap-x-8 gap-y-2 px-4 py-6 text-sm text-pencil sm:px-6">
          <p className="max-w-measure">
            Bindings are mounted, adjusted and inspected by a certified technician following ISO 11088. We never ask
            for, compute or keep release values.
          </p>
          <p className="no-print flex flex-wrap items-center gap-x-6">
            <ThemeSwitch initial={await rememberedTheme()} />
            <a className="inline-flex min-h-11 items-center" href="/shop">
              Staff sign-in
            </a>
          </p>
        </div>
      </footer>
    </>
  );
}
