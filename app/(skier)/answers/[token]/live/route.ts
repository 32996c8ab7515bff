/** The sheet's version for whoever fills in its answers, as long as the link works. */
import { liveLink } from "#app/_server/live-link.ts";
import { sheetStream } from "#app/_server/sheet-followers.ts";
import { idOf } from "#schemas/ids";

export const GET = liveLink("answers", (request, id, isValid) => sheetStream(request, idOf("sheet", id), isValid));
