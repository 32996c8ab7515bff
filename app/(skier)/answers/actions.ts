"use server";
/** What the skier's own part of a sheet asks of the server. A link that has ended answers in words: what was typed stays. */
import { findLink } from "#app/_server/request.ts";
import { notSaved, saveSection, sectionIn } from "#app/_server/section-form.ts";
import { replyOf } from "#app/_server/sheet-reply.ts";
import type { SectionState } from "#app/_ui/sheet/section-state.ts";
import type { Patch, SaveReply } from "#app/_ui/sheet/use-sheet.client.ts";
import refusalWords from "#content/copy/refusals.json";
import words from "#content/copy/skier.json";
import { type Outcome, type Refusal, refuse } from "#engine/units";
import { sheetPatchSchema, wordsFor } from "#schemas";
import { idOf } from "#schemas/ids";
import { type Context, readAnswers, type SheetId, type SheetView, saveAnswers } from "#services";

const ended = "link-ended";
const say = (refusal: Refusal) => (refusal.code === ended ? words.answers.ended : wordsFor(refusal, refusalWords));

/** A use case for the answers behind a link. */
const onAnswers = <T>(name: string, token: string, work: (ctx: Context, sheetId: SheetId) => Promise<Outcome<T>>) =>
  replyOf(
    name,
    async (): Promise<Outcome<T>> => {
      const found = await findLink(token);
      if (found?.subject.kind !== "answers") return refuse({ code: ended });
      return work(found.ctx, idOf("sheet", found.subject.id));
    },
    say,
  );

export async function saveAnswerFields(token: string, patch: Patch, baseVersion: number): Promise<SaveReply> {
  const parsed = sheetPatchSchema.safeParse({ patch, baseVersion });
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return { ok: false, message: issue?.message ?? "", path: (issue?.path ?? []).slice(1).join(".") };
  }
  const saved = await onAnswers("save answers", token, (ctx, sheetId) => saveAnswers(ctx, { sheetId, ...parsed.data }));
  return saved.ok ? { ok: true, ...saved.value } : saved;
}

export async function reloadAnswers(token: string): Promise<SheetView | null> {
  const read = await onAnswers("read answers again", token, (ctx, sheetId) => readAnswers(ctx, { sheetId }));
  return read.ok ? read.value : null;
}

/** The answers, sent without scripts. */
export async function postAnswers(token: string, _previous: SectionState, form: FormData): Promise<SectionState> {
  const part = sectionIn(form);
  const saved = await onAnswers("save answers", token, (ctx, sheetId) =>
    saveSection(ctx, sheetId, part, { say, read: readAnswers, save: saveAnswers }),
  );
  return saved.ok ? saved.value : notSaved(part, saved);
}
