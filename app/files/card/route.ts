/** The picture that stands for the shop where its address is passed on: never anybody's own pair. */
import { handler } from "#app/_server/handler.ts";
import { requestContext } from "#app/_server/request.ts";
import { documentResponse } from "#app/files/document-response.ts";
import { shareCard } from "#services";

const dayOfSeconds = 86_400;

export const GET = handler(
  "show the shop's card",
  async (): Promise<Response> => documentResponse(await shareCard(await requestContext()), dayOfSeconds),
);
