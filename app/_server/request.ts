/**
 * Who asks and when, once per request. Pages and handlers get their context here and nowhere else:
 *
 *   const ctx = await staffContext();                      a page of the shop; sends visitors to the sign-in
 *   const { ctx, subject } = await linkContext(token);     a page behind a private link; not found when it is closed
 *   const ctx = await requestContext();                    whoever it is: staff by session, else a visitor
 *
 * The root layout awaits connection(), so nothing is made ahead of time and no page opens the database while being built.
 */
import { headers } from "next/headers";
import { notFound, redirect } from "next/navigation";
import { cache } from "react";
import "server-only";
import {
  type Actor,
  type DeviceClaim,
  guestByToken,
  type Session,
  type StaffActor,
  type Subject,
  signOut,
  staffBySession,
  visitor,
} from "#auth";
import { config } from "#config";
import { type Context, openContext } from "#services/context";
import { visitorAddress } from "./address";
import { browserName } from "./browser-name";
import { dropCookie, keepCookie, readCookie } from "./cookies";
import { isTheirDoing } from "./doing";

export const signInPath = "/shop/sign-in";
const sessionCookie = "pairwright-session";
/** Which browser this is; outlives every sign-in. Browsers keep no cookie longer than 400 days. */
const deviceCookie = "pairwright-device";
const deviceSeconds = 400 * 86_400;

const isFile = /\/csv(\?|$)/;

/** The instant of this request: every part of a page sees the same one. */
export const requestTime = cache((): Date => new Date());

/** The signed-in person, or null. */
export const signedIn = cache(async (): Promise<StaffActor | null> => {
  const token = await readCookie(sessionCookie);
  return staffBySession(token, requestTime(), isTheirDoing(await headers()));
});

/** Somebody types or clicks on a page of the shop: as good as a page gone to. @returns whether they are still signed in */
export async function noteTyping(): Promise<boolean> {
  return (await staffBySession(await readCookie(sessionCookie), requestTime())) !== null;
}

/** A question for later, outside the request: does this request's session still hold? */
export async function stillSignedIn(): Promise<() => Promise<boolean>> {
  const token = await readCookie(sessionCookie);
  return async () => (await staffBySession(token, new Date(), false)) !== null;
}

/** Staff by session, else a visitor. */
export async function requestContext(): Promise<Context> {
  return contextFor((await signedIn()) ?? visitor());
}

/**
 * For pages and actions of the shop. Anyone else is sent to the sign-in, and back after it to the page that was asked for or
 * that the form stands on; to where is said when that was a file to take away.
 */
export async function staffContext(backTo?: string): Promise<Context> {
  const staff = await signedIn();
  if (staff) return contextFor(staff);
  const asked = (await headers()).get("x-path");
  const back = asked === null || isFile.test(asked) ? backTo : asked;
  redirect(back ? `${signInPath}?back=${encodeURIComponent(back)}` : signInPath);
}

/** For pages and actions behind a private link. Unknown, expired and revoked links look the same: not found. */
export async function linkContext(token: string, kind?: Subject["kind"]): Promise<LinkContext> {
  const found = await findLink(token);
  if (!found || (kind !== undefined && found.subject.kind !== kind)) notFound();
  return found;
}

interface LinkContext {
  readonly ctx: Context;
  readonly subject: Subject;
}

/** The same for a link that somebody typed into a page, which must answer in words; null when it is closed. */
export async function findLink(token: string): Promise<LinkContext | null> {
  const guest = await guestByToken(token, requestTime());
  return guest && { ctx: await contextFor(guest.actor), subject: guest.subject };
}

/** A question for later, outside the request: does this link still work? */
export function stillLinked(token: string): () => Promise<boolean> {
  return async () => (await guestByToken(token, new Date())) !== null;
}

function contextFor(actor: Actor): Promise<Context> {
  return openContext(actor, requestTime());
}

/** The visitor's address for counting attempts. */
export async function requestAddress(): Promise<string> {
  return visitorAddress((await headers()).get("x-forwarded-for"), config().trustedProxies);
}

/** The name the browser asked for, without its port; undefined where it says none. */
export async function requestHost(): Promise<string | undefined> {
  const host = (await headers()).get("host");
  return host === null || !URL.canParse(`http://${host}`) ? undefined : new URL(`http://${host}`).hostname;
}

/** The browser that asks, by its own cookie. */
export async function requestDevice(): Promise<DeviceClaim> {
  return { token: await readCookie(deviceCookie), name: browserName((await headers()).get("user-agent")) };
}

/** Puts a new session into the browser, and its device's name where it has none. Only in an action or a handler. */
export async function keepSession(session: Session): Promise<void> {
  await keepCookie(sessionCookie, session.token, { expires: session.expiresAt });
  if (session.deviceToken !== null) await keepCookie(deviceCookie, session.deviceToken, { maxAge: deviceSeconds });
}

/** Ends the session of this browser. Only in an action or a handler. */
export async function endSession(): Promise<void> {
  const token = await readCookie(sessionCookie);
  if (token) await signOut(token, requestTime());
  await dropCookie(sessionCookie);
}
