/** A section of the sheet as a form without scripts: saves what was changed and comes back with what was not taken. */
import "server-only";
import { changesOf, type FormSection, type Sent, type SheetNow, sectionKeys } from "#app/_ui/sheet/section-fields.ts";
import { newSection, type SectionState } from "#app/_ui/sheet/section-state.ts";
import { valuesOf } from "#app/_ui/sheet/sheet-values.ts";
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/sheet.json";
import { assessSheet } from "#engine/assessment";
import { accept, type Outcome, type Refusal } from "#engine/units";
import { activeCatalog, assess, type Context, readSheet, type SheetId, type SheetView, saveSheet } from "#services";
import { Malformed } from "./faults";
import { readForm } from "./form-state";

/** Of a page: how a refusal is said, and whose fields may be sent. */
interface Door {
  readonly say: (refusal: Refusal) => string;
  readonly read?: (ctx: Context, input: { readonly sheetId: SheetId }) => Promise<Outcome<SheetView>>;
  readonly save?: typeof saveSheet;
}

interface SentSection {
  readonly section: FormSection;
  /** What its controls said when the page was drawn. */
  readonly was: Sent;
  readonly sent: Sent;
}

/** @throws Malformed when it is no form of a section */
export function sectionIn(form: unknown): SentSection {
  if (!(form instanceof FormData)) throw new Malformed("save a part of a sheet");
  const { section, was, ...sent } = readForm(form);
  const known = sectionKeys.find((each) => each === section);
  if (known === undefined || typeof was !== "string") throw new Malformed("save a part of a sheet");
  return { section: known, was: shownBefore(was), sent };
}

export async function saveSection(
  ctx: Context,
  sheetId: SheetId,
  { section, was, sent }: SentSection,
  { say, read = readSheet, save = saveSheet }: Door,
): Promise<Outcome<SectionState>> {
  const [view, catalog] = [await read(ctx, { sheetId }), await activeCatalog(ctx)];
  if (!view.ok) return view;
  if (!catalog.ok) return catalog;
  const now = sheetNow(view.value, catalog.value.engine);
  const { patches, unread, overtaken } = changesOf(section, sent, was, now);
  const wrong: Record<string, string> = {};
  const refused: Record<string, { value: unknown; message: string }> = {};
  for (const name of unread) wrong[name] = fill(words.save.noNumber, { said: first(sent[name]) });
  for (const name of overtaken) wrong[name] = fill(words.save.overtaken, { said: first(sent[name]) });
  const waiting = new Map(Object.entries(patches));
  while (waiting.size > 0) {
    const patch = Object.assign({}, ...waiting.values()) as Readonly<Record<string, unknown>>;
    const saved = await save(ctx, { sheetId, patch, baseVersion: view.value.version });
    if (saved.ok) {
      const lost = new Set(saved.value.conflicts.map(({ path }) => path));
      for (const [name, each] of waiting) {
        if (Object.keys(each).some((path) => lost.has(path))) {
          wrong[name] = fill(words.save.overtaken, { said: first(sent[name]) });
        }
      }
      break;
    }
    const { refusal } = saved;
    const isAbout = (path: string) => refusal.path === path || (refusal.path?.startsWith(`${path}.`) ?? false);
    const name = [...waiting].find(([, each]) => Object.keys(each).some(isAbout))?.[0];
    const message = say(refusal);
    wrong[name ?? ""] = message;
    if (name === undefined) break;
    for (const [path, value] of Object.entries(waiting.get(name) ?? {})) {
      if (isAbout(path)) refused[path] = { value, message };
    }
    waiting.delete(name);
  }
  const assessed = await assess(ctx, { sheetId });
  const typed = Object.fromEntries(Object.keys(wrong).map((name) => [name, first(sent[name])]));
  const dateRange = assessed.ok ? assessed.value.dateRange : null;
  return accept({ ...newSection, section, typed, wrong, refused, dateRange });
}

/** Nothing was looked at: everything stands in the section as it was sent. */
export function notSaved({ section, sent }: SentSection, { message }: { readonly message: string }): SectionState {
  const typed = Object.fromEntries(Object.entries(sent).map(([name, value]) => [name, first(value)]));
  return { ...newSection, section, typed, wrong: { "": message } };
}

function sheetNow(view: SheetView, catalog: SheetNow["catalog"]): SheetNow {
  const { spec, price } = assessSheet({ answers: view.answers, choices: view.choices }, catalog);
  const units = { height: view.typed.height?.unit ?? "cm", mass: view.typed.mass?.unit ?? "kg" } as const;
  return { values: valuesOf(view), spec, totalCents: price?.totalCents ?? null, catalog, units };
}

/** Whatever was sent in its place counts as nothing shown: then everything was changed. */
function shownBefore(was: string): Sent {
  try {
    const shown: unknown = JSON.parse(was);
    return typeof shown === "object" && shown !== null ? { ...(shown as Sent) } : {};
  } catch {
    return {};
  }
}

const first = (value: Sent[string] | undefined): string => (typeof value === "string" ? value : (value?.[0] ?? ""));
