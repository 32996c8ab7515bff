/**
 * The shop's documents of a pair as PDF: build-sheet, kit-list, labels; ?paper=a4 or letter. Staff only. Fetching a build sheet
 * numbers a print and voids the older ones, so no other site's link may do it.
 */
import { notFound } from "next/navigation";
import { handler } from "#app/_server/handler.ts";
import { requestContext } from "#app/_server/request.ts";
import { documentResponse, isAskedByOthers, paperOf } from "#app/files/document-response.ts";
import words from "#content/copy/start.json";
import { idOf } from "#schemas/ids";
import { buildSheetDocument, kitListDocument, labelsDocument } from "#services";

const documents = { "build-sheet": buildSheetDocument, "kit-list": kitListDocument, labels: labelsDocument } as const;

export const GET = handler(
  "print a pair's document",
  async (
    request: Request,
    { params }: { params: Promise<{ pairId: string; document: string }> },
  ): Promise<Response> => {
    if (isAskedByOthers(request)) return Response.json({ message: words.gate.origin }, { status: 403 });
    const { pairId, document } = await params;
    const print = Object.entries(documents).find(([name]) => name === document)?.[1];
    if (!print) notFound();
    return documentResponse(
      await print(await requestContext(), { pairId: idOf("pair", pairId), paper: paperOf(request) }),
    );
  },
);
