/**
 * One watch over the queue's revision for all pages that follow it: it asks the database once a second while somebody
 * follows, and tells them when the number has changed.
 */
import "server-only";
import { systemActor } from "#auth";
import { queueRevision } from "#services";
import { openContext } from "#services/context";
import { reportFault } from "./faults";

type Follower = (revision: number) => void;

const everyMs = 1000;
const followers = new Set<Follower>();
let timer: NodeJS.Timeout | null = null;
let isAsking = false;
let last: number | null = null;

/** Calls `follower` now and at every change, until the returned function is called. */
export function followQueue(follower: Follower): () => void {
  followers.add(follower);
  if (last !== null) follower(last);
  timer ??= setInterval(ask, everyMs);
  void ask();
  return () => {
    followers.delete(follower);
    if (followers.size > 0 || timer === null) return;
    clearInterval(timer);
    timer = null;
    last = null;
  };
}

async function ask(): Promise<void> {
  if (isAsking) return;
  isAsking = true;
  try {
    const read = await queueRevision(await openContext(systemActor("following the queue"), new Date()));
    if (!read.ok || read.value === last) return;
    last = read.value;
    for (const follower of followers) follower(read.value);
  } catch (error) {
    reportFault(error, "follow the queue");
  } finally {
    isAsking = false;
  }
}
