/** Somebody types or clicks: it keeps them signed in, and costs a look at their session. 401 when they are not any more. */
import { handler } from "#app/_server/handler.ts";
import { noteTyping } from "#app/_server/request.ts";

export const POST = handler("note that somebody is here", async (): Promise<Response> => {
  return new Response(null, { status: (await noteTyping()) ? 204 : 401, headers: { "cache-control": "no-store" } });
});
