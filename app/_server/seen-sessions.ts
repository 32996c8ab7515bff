/**
 * Whose sign-in this process has looked up and found to hold, lately: it lets nobody in, it only says who is served first when
 * the shop is full. Kept on globalThis, as our own server (.ci/serve.mjs) is not part of the pages' bundle.
 */
import { createHash } from "node:crypto";

export const sessionCookie = "pairwright-session";
const cookieNames: ReadonlySet<string> = new Set([sessionCookie, `__Host-${sessionCookie}`]);

/** As long as the shortest sign-in lasts without anything being done. */
const keptMs = 30 * 60_000;
const most = 500;

const shelf = globalThis as typeof globalThis & { pairwrightSeenSessions?: Map<string, number> };

/** Digests, each with the instant until which it counts; the longest unseen first. */
function seen(): Map<string, number> {
  shelf.pairwrightSeenSessions ??= new Map();
  return shelf.pairwrightSeenSessions;
}

const digestOf = (token: string) => createHash("sha256").update(token).digest("base64url");

/** @param holds what has just been found of the session; one that does not hold any more counts no more */
export function noteSession(token: string | undefined, holds: boolean, now = Date.now()): void {
  if (token === undefined) return;
  const digest = digestOf(token);
  const all = seen();
  all.delete(digest);
  if (!holds) return;
  all.set(digest, now + keptMs);
  const [longest] = all.keys();
  if (all.size > most && longest !== undefined) all.delete(longest);
}

/** Whether a request carries a session that has been verified lately. @param cookies the header as it was sent */
export function isSeenSession(cookies: string | undefined, now = Date.now()): boolean {
  for (const cookie of (cookies ?? "").split(";")) {
    const cut = cookie.indexOf("=");
    if (cut < 0 || !cookieNames.has(cookie.slice(0, cut).trim())) continue;
    if ((seen().get(digestOf(cookie.slice(cut + 1).trim())) ?? 0) > now) return true;
  }
  return false;
}
