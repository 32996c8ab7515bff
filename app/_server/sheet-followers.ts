/**
 * One watch over the versions of all sheets that somebody has open: it asks the database for them together, once a second while
 * anybody follows, and tells each page when its own sheet has changed.
 */
import "server-only";
import { systemActor } from "#auth";
import { type SheetId, sheetVersions } from "#services";
import { openContext } from "#services/context";
import { reportFault } from "./faults";
import { liveStream } from "./live-stream";

type Follower = (version: number) => void;

const everyMs = 1000;
const followers = new Map<SheetId, Set<Follower>>();
const last = new Map<SheetId, number>();
let timer: NodeJS.Timeout | null = null;
let isAsking = false;

/** The sheet's version for one page. @param isValid whether the reader may still read */
export function sheetStream(request: Request, sheetId: SheetId, isValid: () => Promise<boolean>): Response {
  return liveStream(request, { event: "version", follow: (tell) => followSheet(sheetId, tell), isValid });
}

function followSheet(sheetId: SheetId, follower: Follower): () => void {
  const mine = followers.get(sheetId) ?? new Set();
  followers.set(sheetId, mine.add(follower));
  const known = last.get(sheetId);
  if (known !== undefined) follower(known);
  timer ??= setInterval(ask, everyMs);
  void ask();
  return () => {
    mine.delete(follower);
    if (mine.size > 0) return;
    followers.delete(sheetId);
    last.delete(sheetId);
    if (followers.size > 0 || timer === null) return;
    clearInterval(timer);
    timer = null;
  };
}

async function ask(): Promise<void> {
  if (isAsking) return;
  isAsking = true;
  try {
    const ctx = await openContext(systemActor("following sheets"), new Date());
    const read = await sheetVersions(ctx, { sheetIds: [...followers.keys()] });
    if (!read.ok) return;
    for (const [sheetId, version] of read.value) {
      if (last.get(sheetId) === version || !followers.has(sheetId)) continue;
      last.set(sheetId, version);
      for (const follower of followers.get(sheetId) ?? []) follower(version);
    }
  } catch (error) {
    reportFault(error, "follow sheets");
  } finally {
    isAsking = false;
  }
}
