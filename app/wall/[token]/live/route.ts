/** The queue's revision for a screen on the wall, as long as its link works. */
import { queueStream } from "#app/_server/queue-stream.ts";
import { findLink, stillLinked } from "#app/_server/request.ts";

export async function GET(
  request: Request,
  { params }: { readonly params: Promise<{ readonly token: string }> },
): Promise<Response> {
  const { token } = await params;
  const found = await findLink(token);
  if (found?.subject.kind !== "wall") return new Response(null, { status: 404 });
  return queueStream(request, stillLinked(token));
}
