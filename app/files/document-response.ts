/** A document or picture as an answer: shown in place, never sniffed, never kept by a shared cache. */
import { refusalResponse } from "#app/_server/handler.ts";
import refusalWords from "#content/copy/refusals.json";
import type { Outcome } from "#engine/units";
import { wordsFor } from "#schemas";
import type { DocumentBytes } from "#services";

export function documentResponse(outcome: Outcome<DocumentBytes>, maxAgeSeconds = 0): Response {
  if (!outcome.ok) return refusalResponse(outcome.refusal, wordsFor(outcome.refusal, refusalWords));
  const { bytes, contentType, fileName } = outcome.value;
  return new Response(new Uint8Array(bytes), {
    headers: {
      "content-type": contentType,
      "content-length": String(bytes.byteLength),
      "content-disposition": `inline; filename*=UTF-8''${encodeURIComponent(fileName)}`,
      "cache-control": maxAgeSeconds > 0 ? `private, max-age=${maxAgeSeconds}, immutable` : "no-store",
      "content-security-policy":
        "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'; base-uri 'none'; sandbox",
      "x-content-type-options": "nosniff",
    },
  });
}

/** True when another site's page asked for this, by a link or as a part of itself; browsers say so, programs say nothing. */
export function isAskedByOthers(request: Request): boolean {
  return request.headers.get("sec-fetch-site") === "cross-site";
}

export type Paper = "A4" | "LETTER";

export function paperOf(request: Request): Paper {
  return new URL(request.url).searchParams.get("paper") === "letter" ? "LETTER" : "A4";
}
