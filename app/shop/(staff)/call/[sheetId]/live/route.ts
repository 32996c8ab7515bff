/** The sheet's version for whoever works calls. Following it keeps nobody signed in. */
import { signedIn, stillSignedIn } from "#app/_server/request.ts";
import { sheetStream } from "#app/_server/sheet-followers.ts";
import { permit } from "#auth";
import { idOf } from "#schemas/ids";

export async function GET(
  request: Request,
  { params }: { readonly params: Promise<{ readonly sheetId: string }> },
): Promise<Response> {
  const staff = await signedIn();
  if (staff === null) return new Response(null, { status: 401 });
  if (!permit(staff, "sheet.read").ok) return new Response(null, { status: 403 });
  const { sheetId } = await params;
  return sheetStream(request, idOf("sheet", sheetId), await stillSignedIn());
}
