/** The sheet's version for whoever holds its link, as long as the link works. */
import { findLink, stillLinked } from "#app/_server/request.ts";
import { sheetStream } from "#app/_server/sheet-followers.ts";
import { idOf } from "#schemas/ids";

export async function GET(
  request: Request,
  { params }: { readonly params: Promise<{ readonly token: string }> },
): Promise<Response> {
  const { token } = await params;
  const found = await findLink(token);
  if (found?.subject.kind !== "sheet") return new Response(null, { status: 404 });
  return sheetStream(request, idOf("sheet", found.subject.id), stillLinked(token));
}
