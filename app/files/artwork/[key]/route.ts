/**
 * Takes a picture for a sheet: the raw bytes as the body, its name in ?name=. The key is the sheet's private link, or its
 * id for staff. The body is counted while it arrives, so that nothing larger than the limit is ever held.
 */
import { handler, refusalResponse } from "#app/_server/handler.ts";
import { linkContext, requestContext } from "#app/_server/request.ts";
import { looksLikeToken } from "#auth";
import refusalWords from "#content/copy/refusals.json";
import type { Refusal } from "#engine/units";
import { wordsFor } from "#schemas";
import { idOf } from "#schemas/ids";
import { type Context, type SheetId, uploadArtwork } from "#services";

const mostBytes = 60 * 1024 * 1024;

export const POST = handler(
  "take a picture",
  async (request: Request, { params }: { params: Promise<{ key: string }> }): Promise<Response> => {
    const { ctx, sheetId } = await sheetBehind((await params).key);
    const declared = Number(request.headers.get("content-length") ?? 0);
    const bytes = declared > mostBytes ? null : await readUpTo(request, mostBytes);
    if (bytes === null) return refused({ code: "artwork-too-big", bytes: declared, mostMegabytes: 60 });
    const fileName = new URL(request.url).searchParams.get("name")?.slice(0, 200) || "picture";
    const taken = await uploadArtwork(ctx, { sheetId, fileName, bytes });
    return taken.ok ? Response.json({ artwork: taken.value }) : refused(taken.refusal);
  },
);

function refused(refusal: Refusal): Response {
  return refusalResponse(refusal, wordsFor(refusal, refusalWords));
}

async function sheetBehind(key: string): Promise<{ readonly ctx: Context; readonly sheetId: SheetId }> {
  if (!looksLikeToken(key)) return { ctx: await requestContext(), sheetId: idOf("sheet", key) };
  const { ctx, subject } = await linkContext(key, "sheet");
  return { ctx, sheetId: idOf("sheet", subject.id) };
}

/** The whole body, or null as soon as it is larger than the limit. */
async function readUpTo(request: Request, most: number): Promise<Uint8Array | null> {
  const parts: Uint8Array[] = [];
  let length = 0;
  const reader = request.body?.getReader();
  while (reader) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) {
      await reader.cancel();
      return null;
    }
    parts.push(value);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
