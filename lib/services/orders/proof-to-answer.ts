/** A proof that is sent and waited for: what is seen of the pair, until when, and what becomes of the order meanwhile. */
import type { PairRecord } from "#data/pairs";
import type { BuildCatalog } from "#engine/configuration";
import { pairLook } from "#engine/scene";
import type { IsoDate } from "#engine/units";
import { lastDayToWait } from "#services/promises/slots";
import type { ProofToAnswer } from "#shop/order/views";

type Meanwhile = ProofToAnswer["meanwhile"];

/** What the order does while its proof is not answered, and the last day of it where a place in the queue depends on the answer. */
export function proofWaits(
  { order }: Pick<PairRecord, "order">,
  issuedAt: Date,
): { readonly answerBy: IsoDate | null; readonly meanwhile: Meanwhile } {
  const meanwhile = meanwhileOf(order);
  return { meanwhile, answerBy: meanwhile === "waiting" ? lastDayToWait(issuedAt) : null };
}

function meanwhileOf({ state, slotLostAt, confirmedAt }: PairRecord["order"]): Meanwhile {
  if (state !== "waiting") return "building";
  if (confirmedAt === null) return "unconfirmed";
  return slotLostAt === null ? "waiting" : "slot-lost";
}

/** Null where nobody is asked. @param build of the pair's own release */
export function proofToAnswer(pair: PairRecord, build: BuildCatalog): ProofToAnswer | null {
  const proof = pair.proofs.at(-1);
  if (proof?.state !== "issued") return null;
  const look = pairLook(pair.spec, build);
  if (look === null) return null;
  return { ...proofWaits(pair, proof.issuedAt), look, safeMm: build.rules.print.safeMm };
}
