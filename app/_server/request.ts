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
  looksLikeToken,
  newToken,
  type Session,
  type StaffActor,
  type Subject,
  signOut,
  staffBySession,
  visitor,
} from "#auth";
import { config, houseDigest } from "#config";
import { noteUnnamedProxy } from "#services";
import { type Context, openContext, type Visitor } from "#services/context";
import { isShared, visitorAddress, visitorIdentity } from "./address";
import { browserName } from "./browser-name";
import { dropCookie, keepCookie, readCookie } from "./cookies";
import { isTheirDoing } from "./doing";
import { noteSession, sessionCookie } from "./seen-sessions";
import { thisRequest } from "./this-request";

export const signInPath = "/shop/sign-in";
/** Which browser this is; outlives every sign-in. Browsers keep no cookie longer than 400 days. */
const deviceCookie = "pairwright-device";
const deviceSeconds = 400 * 86_400;

const isFile = /\/csv(\?|$)/;

/** The instant of this request: every part of a page sees the same one. */
export const requestTime = cache((): Date => new Date());

/** The signed-in person, or null. */
export const signedIn = cache(async (): Promise<StaffActor | null> => {
  const token = await readCookie(sessionCookie);
  return verified(token, requestTime(), isTheirDoing(await headers()));
});

/** What is found of a session also says who is served first when the shop is full. */
async function verified(token: string | undefined, now: Date, isTheirs: boolean): Promise<StaffActor | null> {
  const staff = await staffBySession(token, now, isTheirs);
  noteSession(token, staff !== null);
  return staff;
}

/** Somebody types or clicks on a page of the shop: as good as a page gone to. @returns whether they are still signed in */
export async function noteTyping(): Promise<boolean> {
  return (await verified(await readCookie(sessionCookie), requestTime(), true)) !== null;
}

/** A question for later, outside the request: does this request's session still hold? */
export async function stillSignedIn(): Promise<() => Promise<boolean>> {
  const token = await readCookie(sessionCookie);
  return async () => (await verified(token, new Date(), false)) !== null;
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

async function contextFor(actor: Actor): Promise<Context> {
  const request = thisRequest();
  if (request !== undefined) request.role = actor.kind === "staff" ? actor.role : actor.kind;
  const beside = request === undefined ? {} : { signal: request.signal };
  if (actor.kind !== "guest") return openContext(actor, requestTime(), beside);
  const { isProxied, visitor: who } = await guestOf();
  const ctx = await openContext(actor, requestTime(), { ...beside, visitor: who });
  if (isProxied) await noteUnnamedProxy(ctx);
  return ctx;
}

const visitorCookie = "pairwright-visitor";
const visitorDays = 30;

/** Who a guest is among guests, as digests: neither address nor browser can be found from them. */
async function guestOf(): Promise<{ readonly isProxied: boolean; readonly visitor: Visitor }> {
  const sent = await headers();
  const { trustedProxies } = config();
  const isProxied = trustedProxies === 0 && sent.get("x-pairwright-forwarded") !== null;
  const origin = { forwardedFor: sent.get("x-forwarded-for"), trustedProxies, isProxied };
  // Browsers get a mark only where they cannot be told apart without one.
  const identity = visitorIdentity({ ...origin, device: isShared(origin) ? await deviceMark() : null });
  const share = identity === null ? null : houseDigest("visitors", identity).slice(0, 32);
  return { isProxied, visitor: { share, mark: share?.slice(0, 8) ?? null } };
}

/** A mark of this browser, of no meaning by itself; null while a page is drawn that could not give one. */
async function deviceMark(): Promise<string | null> {
  const known = await readCookie(visitorCookie);
  if (known !== undefined && looksLikeToken(known)) return known;
  const mark = newToken();
  try {
    await keepCookie(visitorCookie, mark, { maxAge: visitorDays * 86_400 });
  } catch {
    return null;
  }
  return mark;
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
  noteSession(session.token, true);
  if (session.deviceToken !== null) await keepCookie(deviceCookie, session.deviceToken, { maxAge: deviceSeconds });
}

/** Ends the session of this browser. Only in an action or a handler. */
export async function endSession(): Promise<void> {
  const token = await readCookie(sessionCookie);
  if (token) await signOut(token, requestTime());
  noteSession(token, false);
  await dropCookie(sessionCookie);
}
