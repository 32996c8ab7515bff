/** The skier's own answers on a sheet, by a link that opens nothing else of it: until a quote is made, or the sheet is closed. */
import { permit } from "#auth";
import type { SheetId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { findSheetFor } from "./find-sheet";
import { type SaveSheetInput, saveFields } from "./save-sheet";
import { sheetView } from "./view";
import type { SavedSheet, SheetView } from "./views";

const isAnswer = (path: string): boolean => /^(answers|typed|said)\./.test(path);

/** The sheet with its answers and nothing else. Refuses `not-allowed`, `not-found`, and `sheet-closed` once it is not open. */
export async function readAnswers(ctx: Context, input: { readonly sheetId: SheetId }): Promise<Outcome<SheetView>> {
  const subject = { kind: "answers", id: input.sheetId } as const;
  const found = await findSheetFor(ctx, ctx.db, "answers.read", subject);
  if (!found.ok) return found;
  const { state } = found.value;
  if (state !== "open") return refuse({ code: "sheet-closed", state });
  return accept(answersOf(await sheetView(ctx.db, found.value, ctx.actor, ctx.now)));
}

/** As `saveSheet`, for answers alone. Refuses any other field as `invalid-field`. */
export async function saveAnswers(ctx: Context, input: SaveSheetInput): Promise<Outcome<SavedSheet>> {
  const allowed = permit(ctx.actor, "answers.change", { kind: "answers", id: input.sheetId });
  if (!allowed.ok) return allowed;
  const path = Object.keys(input.patch).find((each) => !isAnswer(each));
  if (path !== undefined) return refuse({ code: "invalid-field", path, value: input.patch[path], message: path });
  const saved = await saveFields(ctx, input);
  if (!saved.ok) return saved;
  return accept({ ...saved.value, sheet: answersOf(saved.value.sheet) });
}

/** Everything that is not an answer is left out, and so is who works on the sheet. */
function answersOf(view: SheetView): SheetView {
  return {
    ...view,
    choices: {},
    contact: {},
    club: null,
    asked: {},
    notes: null,
    flagAcks: [],
    fields: Object.fromEntries(Object.entries(view.fields).filter(([path]) => isAnswer(path))),
    openedBy: "",
    lease: null,
    customerId: null,
    callBack: null,
    review: null,
    turnedDown: null,
    quotes: [],
    artworks: [],
  };
}
