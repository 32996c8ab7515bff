/**
 * A pair's proof as PDF: ?paper=a4 or letter. The key is a private link to its order or to the pair; anything else asks the
 * staff session.
 */
import { handler } from "#app/_server/handler.ts";
import { linkContext, requestContext } from "#app/_server/request.ts";
import { documentResponse, paperOf } from "#app/files/document-response.ts";
import { looksLikeToken } from "#auth";
import { idOf } from "#schemas/ids";
import { proofDocument } from "#services";

export const GET = handler(
  "print a proof",
  async (request: Request, { params }: { params: Promise<{ key: string; pairId: string }> }): Promise<Response> => {
    const { key, pairId } = await params;
    const wanted = { pairId: idOf("pair", pairId), paper: paperOf(request) };
    if (!looksLikeToken(key)) return documentResponse(await proofDocument(await requestContext(), wanted));
    const { ctx } = await linkContext(key);
    return documentResponse(await proofDocument(ctx, { ...wanted, token: key }));
  },
);
