/**
 * Seeded 32-bit generators and stateless draws. Only integer arithmetic that every ECMAScript engine does alike, so a seed
 * gives the same numbers everywhere for ever. Never for secrets.
 */

const GOLDEN = 0x9e3779b9;

/** A stream of unsigned 32-bit integers. */
export type Random32 = () => number;

/** Bijective 32-bit mixer (low-bias constants of the public hash-prospector search). */
export function mix32(word: number): number {
  let z = word;
  z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
  z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
  return (z ^ (z >>> 15)) >>> 0;
}

/** splitmix32: state += 9e3779b9, then mix. Its first output for seed 0 is 1684164658. */
export function splitmix32(seed: number): Random32 {
  let state = seed | 0;
  return () => {
    state = (state + GOLDEN) | 0;
    return mix32(state);
  };
}

/**
 * xoshiro128** of Blackman & Vigna (2018, reference C version 1.1).
 *
 * @param state four 32-bit words, not all zero
 * @throws RangeError when all four are zero
 */
export function xoshiro128(state: readonly [number, number, number, number]): Random32 {
  let [a, b, c, d] = state;
  if ((a | b | c | d) >>> 0 === 0) throw new RangeError("xoshiro128: state 0,0,0,0 never leaves zero");
  return () => {
    const scaled = Math.imul(b, 5);
    const result = Math.imul((scaled << 7) | (scaled >>> 25), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = (d << 11) | (d >>> 21);
    return result;
  };
}

/** xoshiro128** seeded by four outputs of splitmix32(seed): the generator to use for searches. */
export function seededRandom(seed: number): Random32 {
  const next = splitmix32(seed);
  return xoshiro128([next(), next(), next(), next()]);
}

/** Maps an unsigned 32-bit integer to the open interval (0, 1): (u + ½)/2³², never 0 or 1. */
export function unitFromU32(u32: number): number {
  return (u32 + 0.5) / 4294967296;
}

/** Whole number from 0 to `below` − 1, free of bias to 2⁻³² (multiply and shift). */
export function intBelow(random: Random32, below: number): number {
  if (!Number.isInteger(below) || below < 1)
    throw new RangeError(`intBelow: ${below} is not a whole number of at least 1`);
  return Math.floor((random() / 4294967296) * below);
}

/**
 * Stateless draw keyed by what it is for: the same key always gives the same unsigned 32-bit integer, and adding an order
 * shifts no other draw (common random numbers).
 *
 * @param order number of the order; for textual ids use {@link hashText}
 * @param visit 0 for the first pass of an operation, 1 for its first rework and so on
 */
export function keyedDraw(seed: number, replication: number, order: number, operation: number, visit: number): number {
  let hash = mix32(seed + GOLDEN);
  hash = mix32((hash ^ replication) + GOLDEN);
  hash = mix32((hash ^ order) + GOLDEN);
  hash = mix32((hash ^ operation) + GOLDEN);
  return mix32((hash ^ visit) + GOLDEN);
}

/** 32-bit FNV-1a over the UTF-16 code units of a text, then mixed: a stable key for textual ids. */
export function hashText(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    hash = Math.imul(hash ^ (unit & 0xff), 0x01000193);
    hash = Math.imul(hash ^ (unit >>> 8), 0x01000193);
  }
  return mix32(hash);
}
