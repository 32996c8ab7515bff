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
