/**
 * Cookies that scripts cannot read. Where the shop is reached by https they are sent by it alone, and their names say so to
 * the browser: "__Host-" binds a cookie to this very host and the whole of it, "__Secure-" one of a narrower path
 * (RFC 6265bis, section 4.1.3).
 */
import { cookies } from "next/headers";
import "server-only";
import { config } from "#config";

export interface CookieLife {
  readonly maxAge?: number;
  readonly expires?: Date;
  /** The part of the site it is sent to; all of it where nothing is said. */
  readonly path?: string;
}

/** The name as it goes to the browser. */
export function cookieName(name: string, path = "/", isHttps = config().secureCookies): string {
  if (!isHttps) return name;
  return `${path === "/" ? "__Host-" : "__Secure-"}${name}`;
}

export async function readCookie(name: string, path = "/"): Promise<string | undefined> {
  return (await cookies()).get(cookieName(name, path))?.value;
}

/** Only in an action or a handler. */
export async function keepCookie(name: string, value: string, { path = "/", ...life }: CookieLife): Promise<void> {
  const { secureCookies: secure } = config();
  (await cookies()).set(cookieName(name, path), value, { httpOnly: true, sameSite: "lax", secure, path, ...life });
}

/** Only in an action or a handler. */
export async function dropCookie(name: string, path = "/"): Promise<void> {
  const secure = config().secureCookies;
  const jar = await cookies();
  if (!secure) {
    jar.delete({ name, path });
    return;
  }
  // A browser takes the removal of such a name only with what the name promises.
  jar.set(cookieName(name, path), "", { httpOnly: true, sameSite: "lax", secure, path, maxAge: 0 });
}
