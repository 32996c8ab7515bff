/** The queue's revision for a screen on the wall, as long as its link works. */
import { liveLink } from "#app/_server/live-link.ts";
import { queueStream } from "#app/_server/queue-stream.ts";

export const GET = liveLink("wall", (request, _id, isValid) => queueStream(request, isValid));
