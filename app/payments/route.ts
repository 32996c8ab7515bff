/**
 * Where the payment service says that money has come: the message as JSON, its signature in a header. It is the signature that
 * counts; the answer to a message that was acted on already is a conflict, so that a service may send again without harm.
 */
import { handler, refusalResponse } from "#app/_server/handler.ts";
import { requestContext } from "#app/_server/request.ts";
import refusalWords from "#content/copy/refusals.json";
import { wordsFor } from "#schemas";
import { receivePaymentMessage } from "#services";

const mostBytes = 10_000;

export const POST = handler("take a payment message", async (request: Request): Promise<Response> => {
  const declared = Number(request.headers.get("content-length") ?? mostBytes + 1);
  const body = declared > mostBytes ? "" : (await request.text()).slice(0, mostBytes);
  const signature = request.headers.get("x-payment-signature") ?? "";
  const taken = await receivePaymentMessage(await requestContext(), { body, signature });
  if (!taken.ok) return refusalResponse(taken.refusal, wordsFor(taken.refusal, refusalWords));
  return Response.json({ paidAt: taken.value.paidAt }, { headers: { "cache-control": "no-store" } });
});
