/** Paging by links, so that a page of a list has an address. */
import { buttonClass } from "./button";

/** More lines than a screen, fewer than a phone has to wait for. */
const linesOfAPage = 50;

/** One page of a list that is whole in memory; `asked` as the address says it, from 1. */
export function pageOf<Row>(rows: readonly Row[], asked: string | undefined) {
  const pageCount = Math.max(1, Math.ceil(rows.length / linesOfAPage));
  const page = Math.min(pageCount, Math.max(1, Math.floor(Number(asked)) || 1));
  const from = (page - 1) * linesOfAPage;
  return { shown: rows.slice(from, from + linesOfAPage), from, page, pageCount };
}

export function Paging({
  page,
  pageCount,
  href,
  label = "Pages",
  words = { previous: "Newer", next: "Older" },
}: {
  /** From 1. */
  readonly page: number;
  readonly pageCount: number;
  readonly href: (page: number) => string;
  readonly label?: string;
  readonly words?: { readonly previous: string; readonly next: string };
}) {
  if (pageCount <= 1) return null;
  return (
    <nav aria-label={label} className="no-print mt-4 flex flex-wrap items-center gap-3">
      {page > 1 ? (
        <a className={buttonClass("plain", "small")} href={href(page - 1)} rel="prev">
          {words.previous}
        </a>
      ) : null}
      <span className="measure text-pencil">
        page {page} of {pageCount}
      </span>
      {page < pageCount ? (
        <a className={buttonClass("plain", "small")} href={href(page + 1)} rel="next">
          {words.next}
        </a>
      ) : null}
    </nav>
  );
}
