/**
 * What is known of the request being answered, for the log: every fault's line says which route and whose. Kept beside the
 * request by our own server (.ci/serve.mjs), which is not part of the pages' bundle; hence on globalThis.
 */
import { AsyncLocalStorage } from "node:async_hooks";
import { withoutPersonalData } from "#lib/log";

export interface ThisRequest {
  /** Method and path, without what may be about a person. */
  readonly route: string;
  /** Who asks: a staff role, "guest", or null while nobody has looked. */
  role: string | null;
  /** Of the fault that was logged; null when none was. */
  reference: string | null;
  /** What was sent cannot be read: the answer blames the request and not us. */
  isMalformed: boolean;
  /** Aborted when the connection closes before it is answered: what still waits for its turn need not be done. */
  readonly signal: AbortSignal;
}

/** What is known of the answer on its way. */
export interface OnItsWay {
  readonly writableFinished: boolean;
  once(event: "close", heard: () => void): unknown;
}

const shelf = globalThis as typeof globalThis & { pairwrightRequests?: AsyncLocalStorage<ThisRequest> };

function requests(): AsyncLocalStorage<ThisRequest> {
  shelf.pairwrightRequests ??= new AsyncLocalStorage();
  return shelf.pairwrightRequests;
}

/** Answers one request with its record beside it. */
export function answering<T>(
  request: { readonly method?: string | undefined; readonly url?: string | undefined },
  answer: OnItsWay,
  work: (record: ThisRequest) => T,
): T {
  const gone = new AbortController();
  answer.once("close", () => {
    if (!answer.writableFinished) gone.abort();
  });
  const path = (request.url ?? "").split("?")[0] ?? "";
  const route = withoutPersonalData(`${request.method} ${path}`);
  const record: ThisRequest = { route, role: null, reference: null, isMalformed: false, signal: gone.signal };
  return requests().run(record, () => work(record));
}

/** The request being answered here, or undefined outside of any. */
export function thisRequest(): ThisRequest | undefined {
  return requests().getStore();
}
