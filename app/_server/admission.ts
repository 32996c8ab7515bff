/** Lets a request in to the pages when there is a place for it, and says so at once when there is none. */
import words from "#content/copy/start.json";
import { fill } from "#engine/units";
import { log } from "#lib/log";
import { Crowd, type Leave } from "./crowd";
import type { Asked, Refused } from "./gate";
import { isSeenSession } from "./seen-sessions";

/**
 * One thread draws all pages, so more at once make none of them quicker, and every look into the database waits for a slice of
 * each of the others: two keep the thread busy. While staff wait for a page, four a second of anybody else's are begun.
 * Shop practice, no source.
 */
const crowd = new Crowd({ anybody: 2, reserved: 4, waiting: 48, besideStaffMs: 250 });
const retryAfterSeconds = 5;
/** Whoever takes or sends slowly holds a place no longer than this. */
const longestMs = 1000;
const tellEveryMs = 60_000;

/** Files, drawings (they have a line of their own), the look at our health and live pages, which only listen, are no pages in work. */
const noPage = /^\/(_next\/static\/|files\/|(health|robots\.txt|icon\.svg)$|(shop\/queue|wall\/[^/]+)\/live$)/;

export interface Answer {
  once(event: "close", heard: () => void): unknown;
  // biome-ignore lint/suspicious/noExplicitAny: Node's own signature has several forms
  write(...all: any[]): boolean;
}

/**
 * @param begin answers the request; called at once, or when its turn comes, and not at all when its visitor has gone
 * @returns why it is not let in, or null
 */
export function admit(request: Asked, answer: Answer, begin: () => void, into = crowd): Refused | null {
  if (noPage.test((request.url ?? "/").split("?")[0] ?? "")) {
    begin();
    return null;
  }
  const { cookie } = request.headers;
  const leave: Leave | null = into.enter(isSeenSession(typeof cookie === "string" ? cookie : undefined), () => {
    setTimeout(() => leave?.(), longestMs).unref();
    begin();
  });
  if (leave === null) {
    tellOfCrowd();
    const said = fill(words.gate.full, { seconds: retryAfterSeconds });
    return { status: 503, words: said, headers: { "retry-after": String(retryAfterSeconds) } };
  }
  answer.once("close", leave);
  leaveWhenWaitedFor(answer, leave);
  return null;
}

/** What is drawn and waits for a slow line is no work any more. */
function leaveWhenWaitedFor(answer: Answer, leave: () => void): void {
  const write = answer.write.bind(answer);
  answer.write = (...all) => {
    const hasRoom = write(...all);
    if (!hasRoom) leave();
    return hasRoom;
  };
}

let toldAt = Number.NEGATIVE_INFINITY;

/** One line a minute, however many are turned away. */
function tellOfCrowd(): void {
  const now = performance.now();
  if (now - toldAt < tellEveryMs) return;
  toldAt = now;
  log("warn", "more visitors than can be served: some are turned away", { where: "let a request in", status: 503 });
}
