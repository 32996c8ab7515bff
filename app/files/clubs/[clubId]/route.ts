/** A club's open quotes as one PDF: ?paper=a4 or letter. Staff only. */
import { handler } from "#app/_server/handler.ts";
import { requestContext } from "#app/_server/request.ts";
import { documentResponse, paperOf } from "#app/files/document-response.ts";
import { idOf } from "#schemas/ids";
import { clubDocument } from "#services";

export const GET = handler(
  "print a club's offer",
  async (request: Request, { params }: { params: Promise<{ clubId: string }> }): Promise<Response> => {
    const { clubId } = await params;
    const input = { clubId: idOf("club", clubId), paper: paperOf(request) };
    return documentResponse(await clubDocument(await requestContext(), input));
  },
);
