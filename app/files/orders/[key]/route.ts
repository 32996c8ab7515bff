/**
 * An order's confirmation as PDF: ?paper=a4 or letter, ?prices=no for a copy without prices. The key is the order's private
 * link, or its id for staff.
 */
import { handler } from "#app/_server/handler.ts";
import { linkContext, requestContext } from "#app/_server/request.ts";
import { documentResponse, paperOf } from "#app/files/document-response.ts";
import { looksLikeToken } from "#auth";
import { idOf } from "#schemas/ids";
import { orderDocument } from "#services";

export const GET = handler(
  "print an order confirmation",
  async (request: Request, { params }: { params: Promise<{ key: string }> }): Promise<Response> => {
    const { key } = await params;
    const isWithoutPrices = new URL(request.url).searchParams.get("prices") === "no";
    const wanted = { paper: paperOf(request), isWithoutPrices };
    if (!looksLikeToken(key)) {
      return documentResponse(await orderDocument(await requestContext(), { orderId: idOf("order", key), ...wanted }));
    }
    const { ctx, subject } = await linkContext(key, "order");
    return documentResponse(await orderDocument(ctx, { orderId: idOf("order", subject.id), ...wanted, token: key }));
  },
);
