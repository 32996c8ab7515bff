/**
 * One purpose: a content security policy with a fresh nonce on every page. Who may see what is decided beside the data,
 * never here. Next puts the nonce on its own scripts; a page that needs it reads `(await headers()).get("x-nonce")`. Beside it
 * stands the path that was asked for, to come back to after a sign-in.
 * Finished pages (app/_server/finished) put hashes in the nonce's place.
 * Pages must be made per request (`await connection()` in the root layout): a page built ahead has no nonce, and all its
 * scripts would be refused.
 */
import { type NextRequest, NextResponse } from "next/server";
import { isDevelopment, config as settings } from "#config";

export default function proxy(request: NextRequest): NextResponse {
  const nonce = Buffer.from(crypto.getRandomValues(new Uint8Array(18))).toString("base64");
  const policy = contentSecurityPolicy(nonce);
  const headers = new Headers(request.headers);
  headers.set("x-nonce", nonce);
  headers.set("content-security-policy", policy);
  headers.set("x-path", `${request.nextUrl.pathname}${request.nextUrl.search}`);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set("content-security-policy", policy);
  return response;
}

function contentSecurityPolicy(nonce: string): string {
  const development = isDevelopment();
  const rules: Readonly<Record<string, string>> = {
    "default-src": "'self'",
    "script-src": `'self' 'nonce-${nonce}' 'strict-dynamic'${development ? " 'unsafe-eval'" : ""}`,
    "style-src": development ? "'self' 'unsafe-inline'" : `'self' 'nonce-${nonce}'`,
    // Drawings and bars set their place by a style attribute in the HTML.
    "style-src-attr": "'unsafe-inline'",
    "img-src": "'self' blob: data:",
    "font-src": "'self'",
    "connect-src": development ? "'self' ws:" : "'self'",
    "worker-src": "'self' blob:",
    "object-src": "'none'",
    "base-uri": "'none'",
    "form-action": "'self'",
    "frame-ancestors": "'none'",
  };
  const lines = Object.entries(rules).map(([name, value]) => `${name} ${value}`);
  if (settings().secureCookies) lines.push("upgrade-insecure-requests");
  return lines.join("; ");
}

/** Not on uploads (a proxy cuts bodies at 10 MB), files, the health check, static files and prefetches. */
export const config = {
  matcher: [
    {
      source: "/((?!files/|uploads/|health$|_next/static/|_next/image|favicon.ico|icon|robots.txt).*)",
      missing: [
        { type: "header", key: "next-router-prefetch" },
        { type: "header", key: "purpose", value: "prefetch" },
      ],
    },
  ],
};
