/** The queue's revision for whoever is signed in. Following it keeps nobody signed in. */
import { queueStream } from "#app/_server/queue-stream.ts";
import { signedIn, stillSignedIn } from "#app/_server/request.ts";

export async function GET(request: Request): Promise<Response> {
  if ((await signedIn()) === null) return new Response(null, { status: 401 });
  return queueStream(request, await stillSignedIn());
}
