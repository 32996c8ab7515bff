"use server";
import { redirect } from "next/navigation";
/** What the skier's sheet asks of the server. Each: parse, who asks by the private link, one use case, words. */
import { keepCookie } from "#app/_server/cookies.ts";
import { quoteReply, seenInForm } from "#app/_server/quote-reply.ts";
import { linkContext, requestContext } from "#app/_server/request.ts";
import { notSaved, saveSection, sectionIn } from "#app/_server/section-form.ts";
import { replyOf } from "#app/_server/sheet-reply.ts";
import type { QuoteReply, SectionState } from "#app/_ui/sheet/section-state.ts";
import type { AssessReply, Patch, SaveReply } from "#app/_ui/sheet/use-sheet.client.ts";
import refusalWords from "#content/copy/refusals.json";
import type { Outcome, Refusal } from "#engine/units";
import { askReviewSchema, confirmRightsSchema, sheetPatchSchema, wordsFor } from "#schemas";
import { idOf } from "#schemas/ids";
import {
  askReview,
  assess,
  type Context,
  createQuote,
  openSheet,
  type QuoteSeen,
  readSheet,
  type SheetId,
  type SheetView,
  saveSheet,
  stateRights,
} from "#services";
import { sheetCookie } from "./sheet-cookie";

const say = (refusal: Refusal) => wordsFor(refusal, refusalWords);

/** A use case for the sheet behind a link. */
const onSheet = <T>(name: string, token: string, work: (ctx: Context, sheetId: SheetId) => Promise<Outcome<T>>) =>
  replyOf(
    name,
    async () => {
      const { ctx, subject } = await linkContext(token, "sheet");
      return work(ctx, idOf("sheet", subject.id));
    },
    say,
  );

/** Opens a sheet, remembers it in this browser, and goes to its private address. */
export async function startSheet(): Promise<void> {
  const opened = await openSheet(await requestContext(), { channel: "online" });
  if (!opened.ok && typeof opened.refusal.minutes === "number") redirect(`/sheet?wait=${opened.refusal.minutes}`);
  if (!opened.ok || opened.value.token === null) throw new Error("a new sheet was not opened");
  const { token } = opened.value;
  await keepCookie(sheetCookie, token, { maxAge: 60 * 60 * 24 * 90 });
  redirect(`/sheet/${token}`);
}

export async function saveFields(token: string, patch: Patch, baseVersion: number): Promise<SaveReply> {
  const parsed = sheetPatchSchema.safeParse({ patch, baseVersion });
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return { ok: false, message: issue?.message ?? "", path: (issue?.path ?? []).slice(1).join(".") };
  }
  const saved = await onSheet("save a sheet", token, (ctx, sheetId) => saveSheet(ctx, { sheetId, ...parsed.data }));
  return saved.ok ? { ok: true, ...saved.value } : saved;
}

export async function assessSheetNow(token: string): Promise<AssessReply> {
  const assessed = await onSheet("assess a sheet", token, (ctx, sheetId) => assess(ctx, { sheetId }));
  if (!assessed.ok) return assessed;
  const { dateRange, assessment } = assessed.value;
  return { ok: true, dateRange, totalCents: assessment.price?.totalCents ?? null };
}

export async function reloadSheet(token: string): Promise<SheetView | null> {
  const read = await onSheet("read a sheet again", token, (ctx, sheetId) => readSheet(ctx, { sheetId }));
  return read.ok ? read.value : null;
}

/** Of what the page showed, and of nothing else. */
export async function makeQuote(token: string, seen: QuoteSeen): Promise<QuoteReply> {
  return quoteReply(
    seen,
    (each, work) => onSheet("make a quote", token, (ctx, sheetId) => work(createQuote(ctx, { sheetId, seen: each }))),
    (made) => redirect(`/quote/${made.token}`),
  );
}

export async function postQuote(token: string, _previous: QuoteReply | null, form: FormData): Promise<QuoteReply> {
  return makeQuote(token, seenInForm(form));
}

/** A part of the sheet, sent without scripts. */
export async function postSection(token: string, _previous: SectionState, form: FormData): Promise<SectionState> {
  const part = sectionIn(form);
  const saved = await onSheet("save a part of a sheet", token, (ctx, sheetId) =>
    saveSection(ctx, sheetId, part, { say }),
  );
  return saved.ok ? saved.value : notSaved(part, saved);
}

export async function askPerson(
  token: string,
  note: string,
): Promise<{ readonly ok: boolean; readonly message?: string }> {
  const parsed = askReviewSchema.safeParse({ note });
  if (!parsed.success) return { ok: false, message: parsed.error.issues[0]?.message ?? "" };
  return onSheet("ask for a call", token, (ctx, sheetId) => askReview(ctx, { sheetId, note: parsed.data.note }));
}

export async function statePictureRights(
  token: string,
  artworkId: string,
  basis: string,
  name: string,
): Promise<{ readonly ok: boolean; readonly message?: string }> {
  const parsed = confirmRightsSchema.safeParse({ basis, name });
  if (!parsed.success) return { ok: false, message: parsed.error.issues[0]?.message ?? "" };
  return onSheet("state picture rights", token, (ctx) =>
    stateRights(ctx, { artworkId: idOf("artwork", artworkId), ...parsed.data }),
  );
}
