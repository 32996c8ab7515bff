/**
 * Who asks and when, once per request. Pages and handlers get their context here and nowhere else:
 *
 *   const ctx = await staffContext();                      a page of the shop; sends visitors to the sign-in
 *   const { ctx, subject } = await linkContext(token);     a page behind a private link; not found when it is closed
 *   const ctx = await requestContext();                    whoever it is: staff by session, else a visitor
 *
 * The root layout awaits connection(), so nothing is made ahead of time and no page opens the database while being built.
 */
import { cookies, headers } from "next/headers";
import { notFound, redirect } from "next/navigation";
import { cache } from "react";
import "server-only";
import {
  type Actor,
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
import { thisRequest } from "./this-request";

export const signInPath = "/shop/sign-in";
const sessionCookie = "pairwright-session";

/** The instant of this request: every part of a page sees the same one. */
export const requestTime = cache((): Date => new Date());

/** The signed-in person, or null. */
export const signedIn = cache(async (): Promise<StaffActor | null> => {
  const token = (await cookies()).get(sessionCookie)?.value;
  return staffBySession(token, requestTime());
});

/** A question for later, outside the request: does this request's session still hold? */
export async function stillSignedIn(): Promise<() => Promise<boolean>> {
  const token = (await cookies()).get(sessionCookie)?.value;
  return async () => (await staffBySession(token, new Date())) !== null;
}

/** Staff by session, else a visitor. */
export async function requestContext(): Promise<Context> {
  return contextFor((await signedIn()) ?? visitor());
}

/** For pages and actions of the shop. Anyone else is sent to the sign-in, and back here after it. */
export async function staffContext(backTo?: string): Promise<Context> {
  const staff = await signedIn();
  if (staff) return contextFor(staff);
  redirect(backTo ? `${signInPath}?back=${encodeURIComponent(backTo)}` : signInPath);
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

function contextFor(actor: Actor): Promise<Context> {
  const request = thisRequest();
  if (request !== undefined) request.role = actor.kind === "staff" ? actor.role : actor.kind;
  return openContext(actor, requestTime());
}

/** The visitor's address for counting attempts. */
export async function requestAddress(): Promise<string> {
  return visitorAddress((await headers()).get("x-forwarded-for"), config().trustedProxies);
}

/** Puts a new session into the browser. Only in an action or a handler. */
export async function keepSession(session: Session): Promise<void> {
  (await cookies()).set(sessionCookie, session.token, {
    httpOnly: true,
    sameSite: "lax",
    secure: config().secureCookies,
    path: "/",
    expires: session.expiresAt,
  });
}

/** Ends the session of this browser. Only in an action or a handler. */
export async function endSession(): Promise<void> {
  const jar = await cookies();
  const token = jar.get(sessionCookie)?.value;
  if (token) await signOut(token, requestTime());
  jar.delete(sessionCookie);
}
