import type { Page } from "./views";

export const pageSize = 25;

/** Pages count from 1; anything else is the first. */
function pageNumber(page: number | undefined): number {
  return page !== undefined && Number.isSafeInteger(page) && page >= 1 && page <= 100_000 ? page : 1;
}

export function sliceOf(page: number | undefined): { readonly skip: number; readonly take: number } {
  return { skip: (pageNumber(page) - 1) * pageSize, take: pageSize };
}

export function pageOf<T>(rows: readonly T[], total: number, page: number | undefined): Page<T> {
  return { rows, total, page: pageNumber(page), pageSize };
}
