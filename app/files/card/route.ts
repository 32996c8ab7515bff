/** The picture that stands for the shop, or for a look that is passed on: never anybody's own picture. */
import { handler } from "#app/_server/handler.ts";
import { requestContext } from "#app/_server/request.ts";
import { documentResponse } from "#app/files/document-response.ts";
import { shareCard } from "#services";

const dayOfSeconds = 86_400;

export const GET = handler("show a card", async (request: Request): Promise<Response> => {
  const look = new URL(request.url).searchParams;
  return documentResponse(await shareCard(await requestContext(), { look }), dayOfSeconds);
});
