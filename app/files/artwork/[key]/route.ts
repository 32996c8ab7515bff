/**
 * Takes a picture for a sheet: the raw bytes as the body, its name in ?name=. The key is the sheet's private link, or its
 * id for staff. The body is streamed into a file and counted while it arrives.
 */
import { handler, refusalResponse } from "#app/_server/handler.ts";
import { linkContext, requestContext } from "#app/_server/request.ts";
import { withUploadedFile } from "#app/_server/uploaded-file.ts";
import { looksLikeToken } from "#auth";
import refusalWords from "#content/copy/refusals.json";
import type { Refusal } from "#engine/units";
import { wordsFor } from "#schemas";
import { idOf } from "#schemas/ids";
import { type Context, type SheetId, uploadArtwork } from "#services";

const megabyte = 1024 * 1024;
const mostMegabytes = 60;
const mostBytes = mostMegabytes * megabyte;

export const POST = handler(
  "take a picture",
  async (request: Request, { params }: { params: Promise<{ key: string }> }): Promise<Response> => {
    const { ctx, sheetId } = await sheetBehind((await params).key);
    const declared = Number(request.headers.get("content-length") ?? 0);
    if (declared > mostBytes) return tooBig(declared);
    const fileName = new URL(request.url).searchParams.get("name")?.slice(0, 200) || "picture";
    return withUploadedFile(request, mostBytes, async (bytes) => {
      if (bytes === null) return tooBig(declared);
      const taken = await uploadArtwork(ctx, { sheetId, fileName, bytes });
      return taken.ok ? Response.json({ artwork: taken.value }) : refused(taken.refusal);
    });
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

function tooBig(bytes: number): Response {
  return refused({ code: "artwork-too-big", megabytes: Math.ceil(bytes / megabyte), mostMegabytes });
}
