/** What `npm test` looks at as a sample and `npm run proofs -- NAME` as a whole. */
import { createHash } from "node:crypto";

/** True when this proof was asked for by its name. */
export function isWhole(
  proof: "seasons" | "year" | "audit" | "fit" | "scatter" | "tiny-shops" | "hard-shops" | "first-start",
): boolean {
  return process.env.PAIRWRIGHT_PROOF === proof;
}

/** What a sample is drawn with; the same sample every day unless another is asked for. */
export const proofSeed = Number(process.env.PAIRWRIGHT_SEED ?? 1);

/**
 * Whether the n-th place of a series is in the sample of one in so many. Of so many neighbours one always is, and so many
 * seeds in a row see every place once.
 */
export function isInSample(series: string, n: number, oneIn: number): boolean {
  const begin = createHash("sha256").update(series).digest().readUInt32BE(0);
  return (begin + n) % oneIn === proofSeed % oneIn;
}
