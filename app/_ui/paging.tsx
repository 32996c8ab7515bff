/** Paging by links, so that a page of a list has an address. */
import { buttonClass } from "./button";

export function Paging({
  page,
  pageCount,
  href,
  label = "Pages",
}: {
  /** From 1. */
  readonly page: number;
  readonly pageCount: number;
  readonly href: (page: number) => string;
  readonly label?: string;
}) {
  if (pageCount <= 1) return null;
  return (
    <nav aria-label={label} className="no-print mt-4 flex flex-wrap items-center gap-3">
      {page > 1 ? (
        <a className={buttonClass("plain", "small")} href={href(page - 1)} rel="prev">
          Newer
        </a>
      ) : null}
      <span className="measure text-pencil">
        page {page} of {pageCount}
      </span>
      {page < pageCount ? (
        <a className={buttonClass("plain", "small")} href={href(page + 1)} rel="next">
          Older
        </a>
      ) : null}
    </nav>
  );
}
