/** A quote as PDF, exactly as frozen: ?paper=a4 or letter. The key is its private link, or its id for staff. */
import { handler } from "#app/_server/handler.ts";
import { linkContext, requestContext } from "#app/_server/request.ts";
import { documentResponse, paperOf } from "#app/files/document-response.ts";
import { looksLikeToken } from "#auth";
import { idOf } from "#schemas/ids";
import { quoteDocument } from "#services";

export const GET = handler(
  "print a quote",
  async (request: Request, { params }: { params: Promise<{ key: string }> }): Promise<Response> => {
    const { key } = await params;
    const paper = paperOf(request);
    if (!looksLikeToken(key)) {
      return documentResponse(await quoteDocument(await requestContext(), { quoteId: idOf("quote", key), paper }));
    }
    const { ctx, subject } = await linkContext(key, "quote");
    return documentResponse(await quoteDocument(ctx, { quoteId: idOf("quote", subject.id), paper, token: key }));
  },
);
