/** A house graphic: the same for everybody, named in the page with the release it is from. */
import { handler } from "#app/_server/handler.ts";
import { requestContext } from "#app/_server/request.ts";
import { documentResponse } from "#app/files/document-response.ts";
import { houseGraphicFile } from "#services";

const dayOfSeconds = 86_400;

export const GET = handler(
  "show a house graphic",
  async (_request: Request, { params }: { params: Promise<{ graphic: string }> }): Promise<Response> => {
    const { graphic } = await params;
    return documentResponse(await houseGraphicFile(await requestContext(), { graphic }), dayOfSeconds);
  },
);
