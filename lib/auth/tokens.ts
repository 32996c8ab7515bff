/** Secrets that travel: long, random, and stored only as a hash. */
import { createHash, randomBytes } from "node:crypto";

const tokenPattern = /^[A-Za-z0-9_-]{43}$/;

/** 256 random bits as 43 characters that are safe in an address. */
export function newToken(): string {
  return randomBytes(32).toString("base64url");
}

/** True for text that could be one of our tokens; anything else need not reach the database. */
export function looksLikeToken(text: string): boolean {
  return tokenPattern.test(text);
}

/** SHA-256 in hexadecimal. The token has full entropy, so no slow hash is needed. */
export function hashToken(token: string): string {
  return createHash("sha256").update(token).digest("hex");
}

/** Letters and figures that nobody takes for one another when reading aloud; 32 of them, so that a random byte falls evenly. */
const readable = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
const readableGroups = 4;
const readableGroup = 4;

/** 80 random bits for a person to type, in groups: "K7QF-9XWM-2HTB-PA4E". */
export function newReadableCode(): string {
  const signs = [...randomBytes(readableGroups * readableGroup)].map((byte) => readable[byte % readable.length] ?? "");
  return Array.from({ length: readableGroups }, (_, group) =>
    signs.slice(group * readableGroup, (group + 1) * readableGroup).join(""),
  ).join("-");
}

/** A code as it was typed, in the one way it is compared in. */
export function readableCode(typed: string): string {
  return typed.toUpperCase().replace(/[^A-Z0-9]/g, "");
}
