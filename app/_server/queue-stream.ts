/** The queue's revision for pages that follow it. */
import "server-only";
import { liveStream } from "./live-stream";
import { followQueue } from "./queue-followers";

/** @param isValid whether the reader may still read */
export function queueStream(request: Request, isValid: () => Promise<boolean>): Response {
  return liveStream(request, { event: "revision", follow: followQueue, isValid });
}
