import type { ReadRows } from "#data/columns";
import { unreadableView } from "#shop/names/common-view";
import type { Page } from "./views";

export const pageSize = 25;

/** Pages count from 1; anything else is the first. */
function pageNumber(page: number | undefined): number {
  return page !== undefined && Number.isSafeInteger(page) && page >= 1 && page <= 100_000 ? page : 1;
}

export function sliceOf(page: number | undefined): { readonly skip: number; readonly take: number } {
  return { skip: (pageNumber(page) - 1) * pageSize, take: pageSize };
}

/** A page of a list: rows in words, and what is left out because it cannot be read. */
export function pageOf<Row, T>(
  found: ReadRows<Row> & { readonly total: number },
  inWords: (row: Row) => T,
  page: number | undefined,
): Page<T> {
  const { rows, total, unreadable } = found;
  return {
    rows: rows.map(inWords),
    total,
    page: pageNumber(page),
    pageSize,
    unreadable: unreadable.map(unreadableView),
  };
}
