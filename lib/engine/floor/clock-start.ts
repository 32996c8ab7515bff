/**
 * When an order's clock starts: at the last of deposit received, specification locked, proof approved and rights
 * confirmed (common practice, no source). Instants are epoch milliseconds.
 */
export const clockStartConditions = ["deposit", "specification-lock", "proof", "rights"] as const;
export type ClockStartCondition = (typeof clockStartConditions)[number];

/** When each condition was met: an instant, null while it is open, "not-needed" when the order has no such step. */
export interface ClockStartFacts {
  readonly depositAtMs: number | null;
  readonly specificationLockedAtMs: number | null;
  /** A house graphic needs no proof. */
  readonly proofApprovedAtMs: number | null | "not-needed";
  /** Rights are asked only for the skier's own graphic. */
  readonly rightsConfirmedAtMs: number | null | "not-needed";
}

export type ClockStart =
  | { readonly started: true; readonly startedAtMs: number; readonly last: ClockStartCondition }
  | { readonly started: false; readonly waitingFor: readonly ClockStartCondition[] };

/** The instant the clock started and the condition that came last, or what it still waits for. */
export function clockStart(facts: ClockStartFacts): ClockStart {
  const instants: readonly (readonly [ClockStartCondition, number | null | "not-needed"])[] = [
    ["deposit", facts.depositAtMs],
    ["specification-lock", facts.specificationLockedAtMs],
    ["proof", facts.proofApprovedAtMs],
    ["rights", facts.rightsConfirmedAtMs],
  ];
  const waitingFor = instants.filter(([, at]) => at === null).map(([condition]) => condition);
  if (waitingFor.length > 0) return { started: false, waitingFor };
  let last: ClockStartCondition = "deposit";
  let startedAtMs = Number.NEGATIVE_INFINITY;
  for (const [condition, at] of instants) {
    if (typeof at === "number" && at > startedAtMs) {
      last = condition;
      startedAtMs = at;
    }
  }
  return { started: true, startedAtMs, last };
}
