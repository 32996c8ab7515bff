/** What `npm test` looks at as a sample and `npm run proofs -- NAME` as a whole. */
import { createHash } from "node:crypto";

/** True when this proof was asked for by its name. */
export function isWhole(proof: "seasons" | "year" | "audit"): boolean {
  return process.env.PAIRWRIGHT_PROOF === proof;
}

/** What a sample is drawn with; the same sample every day unless another is asked for. */
export const proofSeed = Number(process.env.PAIRWRIGHT_SEED ?? 1);

/** Whether a place is in the sample of one in so many; that many seeds in a row see every place once. */
export function isInSample(place: string, oneIn: number): boolean {
  const drawn = createHash("sha256").update(place).digest().readUInt32BE(0);
  return drawn % oneIn === proofSeed % oneIn;
}
