/** Everything about one person as JSON, for the owner. */
import { handler, refusalResponse } from "#app/_server/handler.ts";
import { requestContext } from "#app/_server/request.ts";
import refusalWords from "#content/copy/refusals.json";
import { wordsFor } from "#schemas";
import { idOf } from "#schemas/ids";
import { personFile } from "#services";

export const GET = handler(
  "write down everything about a person",
  async (_request: Request, { params }: { params: Promise<{ customerId: string }> }): Promise<Response> => {
    const { customerId } = await params;
    const file = await personFile(await requestContext(), { customerId: idOf("customer", customerId) });
    if (!file.ok) return refusalResponse(file.refusal, wordsFor(file.refusal, refusalWords));
    return new Response(file.value.text, {
      headers: {
        "content-type": "application/json; charset=utf-8",
        "content-disposition": `attachment; filename="${file.value.fileName}"`,
        "cache-control": "no-store",
        "x-content-type-options": "nosniff",
      },
    });
  },
);
