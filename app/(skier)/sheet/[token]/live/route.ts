/** The sheet's version for whoever holds its link, as long as the link works. */
import { liveLink } from "#app/_server/live-link.ts";
import { sheetStream } from "#app/_server/sheet-followers.ts";
import { idOf } from "#schemas/ids";

export const GET = liveLink("sheet", (request, id, isValid) => sheetStream(request, idOf("sheet", id), isValid));
