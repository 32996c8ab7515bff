/** The four conditions of a clock start as they stand, for one pair and for its order. */
import { type ClockStart, type ClockStartCondition, type ClockStartFacts, clockStart } from "#engine/floor";
import type { GatesView } from "./views";

export interface PairGates {
  readonly specLockedAt: Date | null;
  readonly proofNeeded: boolean;
  readonly proofAt: Date | null;
  readonly rightsNeeded: boolean;
  readonly rightsAt: Date | null;
}

export function gateFacts(depositPaidAt: Date | null, pair: PairGates): ClockStartFacts {
  return {
    depositAtMs: depositPaidAt?.getTime() ?? null,
    specificationLockedAtMs: pair.specLockedAt?.getTime() ?? null,
    proofApprovedAtMs: pair.proofNeeded ? (pair.proofAt?.getTime() ?? null) : "not-needed",
    rightsConfirmedAtMs: pair.rightsNeeded ? (pair.rightsAt?.getTime() ?? null) : "not-needed",
  };
}

export function gatesView(depositPaidAt: Date | null, pair: PairGates): GatesView {
  const start = clockStart(gateFacts(depositPaidAt, pair));
  return {
    deposit: depositPaidAt?.toISOString() ?? null,
    specificationLock: pair.specLockedAt?.toISOString() ?? null,
    proof: pair.proofNeeded ? (pair.proofAt?.toISOString() ?? null) : "not-needed",
    rights: pair.rightsNeeded ? (pair.rightsAt?.toISOString() ?? null) : "not-needed",
    waitingFor: start.started ? [] : start.waitingFor,
  };
}

/** The whole order's clock: it starts when the last pair's last condition is met. */
export function orderClock(depositPaidAt: Date | null, pairs: readonly PairGates[]): ClockStart {
  const starts = pairs.map((pair) => clockStart(gateFacts(depositPaidAt, pair)));
  const waitingFor = new Set<ClockStartCondition>(starts.flatMap((start) => (start.started ? [] : start.waitingFor)));
  if (waitingFor.size > 0) return { started: false, waitingFor: [...waitingFor] };
  const last = starts
    .filter((start) => start.started)
    .reduce((latest, start) => (start.startedAtMs > latest.startedAtMs ? start : latest));
  return last;
}
