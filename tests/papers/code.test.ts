/**
 * A reader of QR codes after ISO/IEC 18004, enough for a clean symbol: format bits, mask, the zigzag of data modules, block
 * interleaving, byte mode. Tables from the standard, from memory: level M, versions 1 to 6.
 */
import { describe, expect, it } from "vitest";
import { skiUrl } from "../../lib/papers/build-sheet/cover";
import { codePath } from "../../lib/papers/parts/code";
import { facts } from "./sample";

const QUIET = 4;
/** Version → data codewords of each block at level M. */
const BLOCKS_M: Readonly<Record<number, readonly number[]>> = {
  1: [16],
  2: [28],
  3: [44],
  4: [32, 32],
  5: [43, 43],
  6: [27, 27, 27, 27],
};
const MASKS: readonly ((r: number, c: number) => boolean)[] = [
  (r, c) => (r + c) % 2 === 0,
  (r) => r % 2 === 0,
  (_, c) => c % 3 === 0,
  (r, c) => (r + c) % 3 === 0,
  (r, c) => (Math.floor(r / 2) + Math.floor(c / 3)) % 2 === 0,
  (r, c) => ((r * c) % 2) + ((r * c) % 3) === 0,
  (r, c) => (((r * c) % 2) + ((r * c) % 3)) % 2 === 0,
  (r, c) => (((r + c) % 2) + ((r * c) % 3)) % 2 === 0,
];

/** The drawn path back to modules: what an eye sees. */
function modulesOf(path: string, size: number): boolean[][] {
  const modules = Array.from({ length: size }, () => Array<boolean>(size).fill(false));
  for (const m of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\3z/g)) {
    for (let i = 0; i < Number(m[3]); i++) {
      const row = modules[Number(m[2]) - QUIET];
      if (row) row[Number(m[1]) - QUIET + i] = true;
    }
  }
  return modules;
}

function isFunction(r: number, c: number, size: number): boolean {
  const nearFinder = (r < 9 && c < 9) || (r < 9 && c >= size - 8) || (r >= size - 8 && c < 9);
  const alignment = size > 21 && Math.abs(r - (size - 7)) <= 2 && Math.abs(c - (size - 7)) <= 2;
  return nearFinder || alignment || r === 6 || c === 6;
}

/** Format bits around the top-left finder, most significant first: column 8 downward belongs to the least significant. */
function maskOf(modules: boolean[][]): number {
  const at = (r: number, c: number) => (modules[r]?.[c] ? 1 : 0);
  const bits = [at(8, 0), at(8, 1), at(8, 2), at(8, 3), at(8, 4)].reduce((n, b) => n * 2 + b, 0);
  const unmasked = bits ^ 0b10101;
  // Level M is 00; the other three bits are the mask.
  expect(unmasked >> 3).toBe(0);
  return unmasked & 0b111;
}

function codewords(modules: boolean[][], size: number): number[] {
  const mask = MASKS[maskOf(modules)];
  const bits: number[] = [];
  let upward = true;
  for (let right = size - 1; right > 0; right -= 2) {
    const column = right <= 6 ? right - 1 : right;
    for (let i = 0; i < size; i++) {
      const r = upward ? size - 1 - i : i;
      for (const c of [column, column - 1]) {
        if (!isFunction(r, c, size)) bits.push(Number(modules[r]?.[c] !== mask?.(r, c)));
      }
    }
    upward = !upward;
  }
  const bytes: number[] = [];
  for (let i = 0; i + 8 <= bits.length; i += 8) bytes.push(bits.slice(i, i + 8).reduce((n, b) => n * 2 + b, 0));
  return bytes;
}

/** All blocks of the versions used here are equally long, so codeword i belongs to block i mod n. */
function readCode(text: string): string {
  const { size, path } = codePath(text);
  const blocks = BLOCKS_M[(size - 17) / 4] ?? [];
  const words = codewords(modulesOf(path, size), size);
  const data = blocks.flatMap((length, b) => Array.from({ length }, (_, i) => words[i * blocks.length + b] ?? 0));
  return segments(data.map((byte) => byte.toString(2).padStart(8, "0")).join(""));
}

/** Byte segments (mode 4, 8-bit count) and digit segments (mode 1, 10-bit count) up to the terminator. */
function segments(bits: string): string {
  let at = 0;
  const take = (length: number) => {
    at += length;
    return Number.parseInt(bits.slice(at - length, at), 2);
  };
  const bytes: number[] = [];
  for (let mode = take(4); mode !== 0 && at < bits.length; mode = take(4)) {
    if (mode === 4) for (let left = take(8); left > 0; left--) bytes.push(take(8));
    else if (mode === 1) bytes.push(...Buffer.from(digits(take(10), take)));
    else throw new RangeError(`mode ${mode} is not read here`);
  }
  return Buffer.from(bytes).toString("utf8");
}

/** Three digits in ten bits, two in seven, one in four. */
function digits(count: number, take: (length: number) => number): string {
  let text = "";
  for (let left = count; left > 0; left -= 3) {
    const group = Math.min(left, 3);
    text += String(take([0, 4, 7, 10][group] ?? 0)).padStart(group, "0");
  }
  return text;
}

describe("codePath", () => {
  it.each([
    "https://thistleyard.example/q/8f2kx0-a-link",
    facts.pair.pageUrl,
    skiUrl(facts.pair.pageUrl, "L"),
    skiUrl(facts.pair.pageUrl, "R"),
  ])("draws a code that reads back as %s", (text) => {
    expect(readCode(text)).toBe(text);
  });

  it("names the printing and the side as two parameters of one address", () => {
    const { searchParams } = new URL(skiUrl("https://thistleyard.example/shop/pair/TY-0417?print=2", "R"));
    expect(Object.fromEntries(searchParams)).toEqual({ print: "2", ski: "R" });
    expect(skiUrl("TY-0417", "L")).toBe("TY-0417?ski=L");
  });

  it("tells the left ski from the right", () => {
    expect(codePath(skiUrl(facts.pair.pageUrl, "L")).path).not.toBe(codePath(skiUrl(facts.pair.pageUrl, "R")).path);
  });
});
