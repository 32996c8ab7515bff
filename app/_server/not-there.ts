import { notFound } from "next/navigation";
import type { Refusal } from "#engine/units";

/**
 * What is refused to the holder of a link is not there for them; a row of theirs that cannot be read is a fault of the shop's,
 * and the page of faults says so. @throws always
 */
export function notThere(refusal: Refusal): never {
  if (refusal.code !== "unreadable-row") notFound();
  const { table, row, column, why } = refusal;
  throw new Error(`${table} ${row}, column ${column}: ${why}`);
}
