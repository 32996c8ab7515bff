/** Since when a pair waits for one of the conditions of its clock: not always since it was ordered. */
import type { PairSpec } from "#engine/configuration";
import type { ClockStartCondition } from "#engine/floor";
import { needsProof, needsRights } from "#shop/floor/facts";
import type { PairInQueue } from "#shop/queue/queued-pairs";

type Waiting = Pick<PairInQueue, "createdAt" | "revisions" | "proofs">;

/** The deposit and the final check are open from the order on; proof and rights from what last asked for them. */
export function waitingSince(pair: Waiting, condition: ClockStartCondition): Date {
  switch (condition) {
    case "deposit":
    case "specification-lock":
      return pair.createdAt;
    case "rights":
      return neededSince(pair, needsRights);
    case "proof":
      return proofSince(pair);
  }
}

/** Issued: since then the skier's. Changes asked: since then the shop's. Void: since the change that voided it. */
function proofSince(pair: Waiting): Date {
  const last = pair.proofs.at(-1);
  if (last === undefined) return neededSince(pair, needsProof);
  if (last.state === "issued") return last.issuedAt;
  if (last.state === "changes-asked") return last.answeredAt ?? last.issuedAt;
  return pair.revisions.findLast(({ createdAt }) => createdAt > last.issuedAt)?.createdAt ?? last.issuedAt;
}

/** When the revision came that first needed it, of those that needed it without a break until now. */
function neededSince(pair: Waiting, isNeeded: (spec: PairSpec) => boolean): Date {
  const lastWithout = pair.revisions.findLastIndex(({ spec }) => !isNeeded(spec));
  return pair.revisions[lastWithout + 1]?.createdAt ?? pair.createdAt;
}
