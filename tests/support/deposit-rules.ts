/**
 * What counts as money received and what only as announced, by method and by who says so. Common practice, no source: a
 * skier's word that money is on its way is not money; what staff read off a statement or a receipt is.
 */
import type { DepositMethod } from "#services";

export type DepositResult = "received" | "announced" | "reference-missing" | "not-allowed";
export interface DepositRow {
  readonly method: DepositMethod;
  readonly reference: string | null;
  readonly skier: DepositResult;
  readonly desk: DepositResult;
}

export const depositRows: readonly DepositRow[] = [
  // The demo's stand-in for a card service, which says yes at once and signs it. There is none outside of the demo.
  { method: "demo-card", reference: null, skier: "received", desk: "received" },
  { method: "bank-transfer", reference: null, skier: "announced", desk: "reference-missing" },
  { method: "bank-transfer", reference: "statement 7", skier: "announced", desk: "received" },
  { method: "counter", reference: null, skier: "announced", desk: "reference-missing" },
  { method: "counter", reference: "receipt 7", skier: "announced", desk: "received" },
  { method: "pay-later", reference: null, skier: "announced", desk: "announced" },
  { method: "pay-later", reference: "soon", skier: "announced", desk: "announced" },
];
