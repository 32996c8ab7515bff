/** What every route handler does around its own work: refusals and faults become answers in words. */
import { unstable_rethrow } from "next/navigation";
import "server-only";
import words from "#content/copy/start.json";
import { fill, type Refusal } from "#engine/units";
import { busyFor } from "#services";
import { faultWords, noteRefusal, reportFault } from "./faults";

const statusOf: Readonly<Record<string, number>> = {
  "not-allowed": 403,
  "not-found": 404,
  "too-many-attempts": 429,
  "budget-used": 429,
  "budget-all-used": 429,
  "payment-not-signed": 401,
  "payment-replayed": 409,
  "too-large": 413,
};

/** A refusal as JSON: its code and parameters, and words for people. 422 unless its code has a status of its own. */
export function refusalResponse(refusal: Refusal, words: string): Response {
  noteRefusal(refusal, "answer a request");
  return Response.json(
    { refusal, message: words },
    {
      status: statusOf[refusal.code] ?? 422,
      headers: { ...noStore, ...waitOf(refusal) },
    },
  );
}

/** How long to wait, for programs too. */
function waitOf({ retryAfterSeconds }: Refusal): Readonly<Record<string, string>> {
  return typeof retryAfterSeconds === "number" ? { "retry-after": String(retryAfterSeconds) } : {};
}

const noStore = { "cache-control": "no-store" };

/** Wraps a handler. @param name for the log */
export function handler<Args extends readonly unknown[]>(name: string, work: (...args: Args) => Promise<Response>) {
  return async (...args: Args): Promise<Response> => {
    try {
      return await work(...args);
    } catch (error) {
      unstable_rethrow(error);
      const seconds = busyFor(error);
      if (seconds !== null) {
        const message = fill(words.gate.busy, { seconds });
        return Response.json({ message }, { status: 503, headers: { ...noStore, "retry-after": String(seconds) } });
      }
      if (error instanceof Error && error.name === "Unkeepable") {
        return Response.json({ message: words.gate.unkeepable }, { status: 400, headers: noStore });
      }
      const reference = reportFault(error, name);
      return Response.json({ message: faultWords(reference), reference }, { status: 500, headers: noStore });
    }
  };
}
