"use server";
/** What a call asks of the server. Each: parse, who asks, one use case, words. */
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { idField, shopInstantField, withoutEmpty } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { quoteReply, seenInForm } from "#app/_server/quote-reply.ts";
import { staffContext } from "#app/_server/request.ts";
import { notSaved, saveSection, sectionIn } from "#app/_server/section-form.ts";
import { replyOf } from "#app/_server/sheet-reply.ts";
import type { QuoteReply, SectionState } from "#app/_ui/sheet/section-state.ts";
import type { AssessReply, Patch, SaveReply } from "#app/_ui/sheet/use-sheet.client.ts";
import { say } from "#app/shop/say.ts";
import { tellLink } from "#app/shop/told-link.ts";
import type { FitFlag } from "#engine/fit";
import type { Outcome } from "#engine/units";
import {
  acknowledgeFlagSchema,
  allowSaleSchema,
  askReviewSchema,
  callBackSchema,
  confirmRightsSchema,
  phoneSchema,
  sheetPatchSchema,
  turnDownSchema,
} from "#schemas";
import { idOf } from "#schemas/ids";
import {
  acknowledgeFlag,
  allowSale,
  askReview,
  assess,
  type Context,
  copySheet,
  createQuote,
  openSheet,
  type QuoteSeen,
  readSheet,
  releaseSheet,
  type SheetId,
  type SheetView,
  saveSheet,
  setCallBack,
  settings,
  stateRights,
  takeOverSheet,
  turnDown,
} from "#services";

const context = () => staffContext();
const sheetField = { sheetId: idField.transform((id) => idOf("sheet", id)) };
const show = (_value: unknown, { sheetId }: { readonly sheetId: SheetId }) => revalidatePath(`/shop/call/${sheetId}`);

export const openCall = formAction({
  name: "open a call",
  schema: withoutEmpty(z.strictObject({ phone: phoneSchema, name: z.string().max(120).optional() })),
  context,
  run: (ctx, { phone, name }) => openSheet(ctx, { channel: "phone", phone, ...(name ? { name } : {}) }),
  words: say,
  done: async ({ sheet, token }) => {
    if (token) await tellLink("sheet", sheet.sheetId, token);
    redirect(`/shop/call/${sheet.sheetId}`);
  },
});

export const takeOver = formAction({
  name: "take a draft over",
  schema: z.strictObject(sheetField),
  context,
  run: takeOverSheet,
  words: say,
  done: show,
});

export const putDown = formAction({
  name: "put a draft down",
  schema: z.strictObject(sheetField),
  context,
  run: releaseSheet,
  words: say,
  done: () => redirect("/shop/call"),
});

export const changedCopy = formAction({
  name: "copy a sheet",
  schema: z.strictObject(sheetField),
  context,
  run: copySheet,
  words: say,
  done: ({ sheet }) => redirect(`/shop/call/${sheet.sheetId}`),
});

export const callBackLater = formAction({
  name: "set a call back",
  schema: callBackSchema.extend({ ...sheetField, at: shopInstantField("Call back", settings().shop.timeZone) }),
  context,
  run: setCallBack,
  words: say,
  done: show,
});

export const beforeOwner = formAction({
  name: "put a sheet before the owner",
  schema: askReviewSchema.extend(sheetField),
  context,
  run: askReview,
  words: say,
  done: show,
});

export const turnCallerDown = formAction({
  name: "turn a sheet down",
  schema: turnDownSchema.extend(sheetField),
  context,
  run: turnDown,
  words: say,
  done: show,
});

export const quoteAllTheSame = formAction({
  name: "allow a stopped sale",
  schema: allowSaleSchema.extend(sheetField),
  context,
  run: allowSale,
  words: say,
  done: show,
});

export const answerForFlag = formAction({
  name: "acknowledge a flag",
  schema: acknowledgeFlagSchema.extend(sheetField),
  context,
  run: acknowledgeFlag,
  words: say,
  done: show,
});

/** A use case called from the sheet itself. */
const onSheet = <T>(name: string, work: (ctx: Context) => Promise<Outcome<T>>) =>
  replyOf(name, async () => work(await staffContext()), say);

export async function saveCall(sheetId: SheetId, patch: Patch, baseVersion: number): Promise<SaveReply> {
  const parsed = sheetPatchSchema.safeParse({ patch, baseVersion });
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return { ok: false, message: issue?.message ?? "", path: (issue?.path ?? []).slice(1).join(".") };
  }
  const saved = await onSheet("save a call", (ctx) => saveSheet(ctx, { sheetId, ...parsed.data }));
  return saved.ok ? { ok: true, ...saved.value } : saved;
}

/** As the skier's sheet gets it, with every flag that stands and what an owner's word would lift. */
export async function assessCall(
  sheetId: SheetId,
): Promise<{ readonly reply: AssessReply; readonly flags: readonly FitFlag[]; readonly liftable: readonly string[] }> {
  const assessed = await onSheet("assess a call", (ctx) => assess(ctx, { sheetId }));
  if (!assessed.ok) return { reply: assessed, flags: [], liftable: [] };
  const { dateRange, assessment, liftable } = assessed.value;
  const model = assessment.spec?.model;
  const flags = assessment.recommendation?.flags ?? [];
  return {
    reply: { ok: true, dateRange, totalCents: assessment.price?.totalCents ?? null },
    flags: flags.filter((flag) => flag.model === undefined || flag.model === model),
    liftable,
  };
}

export async function reloadCall(sheetId: SheetId): Promise<SheetView | null> {
  const read = await onSheet("read a call again", (ctx) => readSheet(ctx, { sheetId }));
  return read.ok ? read.value : null;
}

/** Of what the page showed, and of nothing else. */
export async function quoteCall(sheetId: SheetId, seen: QuoteSeen): Promise<QuoteReply> {
  return quoteReply(
    seen,
    (each, work) => onSheet("make a quote", (ctx) => work(createQuote(ctx, { sheetId, seen: each }))),
    async ({ quote, token }) => {
      await tellLink("quote", quote.quoteId, token);
      redirect(`/shop/quotes/${quote.quoteId}`);
    },
  );
}

export async function postCallQuote(
  sheetId: SheetId,
  _previous: QuoteReply | null,
  form: FormData,
): Promise<QuoteReply> {
  return quoteCall(sheetId, seenInForm(form));
}

/** A part of the sheet, sent without scripts. */
export async function postCallSection(
  sheetId: SheetId,
  _previous: SectionState,
  form: FormData,
): Promise<SectionState> {
  const part = sectionIn(form);
  const saved = await onSheet("save a part of a call", (ctx) => saveSection(ctx, sheetId, part, { say }));
  return saved.ok ? saved.value : notSaved(part, saved);
}

export async function askOwner(
  sheetId: SheetId,
  note: string,
): Promise<{ readonly ok: boolean; readonly message?: string }> {
  const parsed = askReviewSchema.safeParse({ note });
  if (!parsed.success) return { ok: false, message: parsed.error.issues[0]?.message ?? "" };
  return onSheet("put a sheet before the owner", (ctx) => askReview(ctx, { sheetId, note: parsed.data.note }));
}

export async function stateCallRights(
  artworkId: string,
  basis: string,
  name: string,
): Promise<{ readonly ok: boolean; readonly message?: string }> {
  const parsed = confirmRightsSchema.safeParse({ basis, name });
  if (!parsed.success) return { ok: false, message: parsed.error.issues[0]?.message ?? "" };
  return onSheet("state picture rights", (ctx) =>
    stateRights(ctx, { artworkId: idOf("artwork", artworkId), ...parsed.data }),
  );
}
