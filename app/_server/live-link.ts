/** A live page behind a private link of one kind: followed as long as the link works, not found otherwise. */
import "server-only";
import type { Subject } from "#auth";
import { findLink, stillLinked } from "./request";

/** @param stream answers with what is followed; `isValid` asks again whether the link works */
export function liveLink(
  kind: Subject["kind"],
  stream: (request: Request, id: string, isValid: () => Promise<boolean>) => Response,
) {
  return async (
    request: Request,
    { params }: { readonly params: Promise<{ readonly token: string }> },
  ): Promise<Response> => {
    const { token } = await params;
    const found = await findLink(token);
    if (found?.subject.kind !== kind) return new Response(null, { status: 404 });
    return stream(request, found.subject.id, stillLinked(token));
  };
}
