/** The re-encoded picture. The key is a private link to its sheet, quote or order; anything else asks the staff session. */
import { handler } from "#app/_server/handler.ts";
import { linkContext, requestContext } from "#app/_server/request.ts";
import { documentResponse } from "#app/files/document-response.ts";
import { looksLikeToken } from "#auth";
import { idOf } from "#schemas/ids";
import { artworkBytes } from "#services";

const dayOfSeconds = 86_400;

export const GET = handler(
  "show a picture",
  async (request: Request, { params }: { params: Promise<{ key: string; id: string }> }): Promise<Response> => {
    const { key, id } = await params;
    const ctx = looksLikeToken(key) ? (await linkContext(key)).ctx : await requestContext();
    const size = new URL(request.url).searchParams.get("size") === "full" ? "full" : "preview";
    return documentResponse(await artworkBytes(ctx, { artworkId: idOf("artwork", id), size }), dayOfSeconds);
  },
);
