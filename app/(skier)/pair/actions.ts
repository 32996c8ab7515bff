"use server";
/** What the skier answers on the page of a pair. The link is the order's. */
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { linkField, wholeField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { linkContext } from "#app/_server/request.ts";
import refusalWords from "#content/copy/refusals.json";
import type { Refusal } from "#engine/units";
import {
  approveProofSchema,
  askProofChangesSchema,
  confirmRightsSchema,
  contactCodeSchema,
  recordDepositSchema,
  wordsFor,
} from "#schemas";
import { idOf } from "#schemas/ids";
import { approveProof, askProofChanges, confirmByCode, confirmRights, recordDeposit, sendCodeAgain } from "#services";

const words = (refusal: Refusal) => wordsFor(refusal, refusalWords);
const pairField = { ...linkField, pairId: z.string().min(1).max(60) };
const context = async ({ token }: { readonly token: string }) => (await linkContext(token, "order")).ctx;
const show = (_value: unknown, { token }: { readonly token: string }) => revalidatePath(`/pair/${token}`);

export const chooseDeposit = formAction({
  name: "choose how to pay the deposit",
  schema: recordDepositSchema.pick({ method: true }).extend(linkField),
  context,
  run: async (ctx, { token, method }) => {
    const { subject } = await linkContext(token, "order");
    return recordDeposit(ctx, { orderId: idOf("order", subject.id), method });
  },
  words,
  done: show,
});

export const confirmContact = formAction({
  name: "confirm an order by its code",
  schema: contactCodeSchema.extend(linkField),
  context,
  run: async (ctx, { token, code }) => {
    const { subject } = await linkContext(token, "order");
    return confirmByCode(ctx, { orderId: idOf("order", subject.id), code });
  },
  words,
  done: show,
});

export const anotherLetter = formAction({
  name: "send the code again",
  schema: z.strictObject(linkField),
  context,
  run: async (ctx, { token }) => {
    const { subject } = await linkContext(token, "order");
    return sendCodeAgain(ctx, { orderId: idOf("order", subject.id) });
  },
  words,
  done: show,
});

export const approve = formAction({
  name: "approve a proof",
  schema: approveProofSchema.extend({ ...pairField, revision: wholeField }),
  context,
  run: (ctx, { pairId, revision, name }) => approveProof(ctx, { pairId: idOf("pair", pairId), revision, name }),
  words,
  done: show,
});

export const askForChanges = formAction({
  name: "ask for changes to a proof",
  schema: askProofChangesSchema.extend({ ...pairField, revision: wholeField }),
  context,
  run: (ctx, { pairId, revision, note }) => askProofChanges(ctx, { pairId: idOf("pair", pairId), revision, note }),
  words,
  done: show,
});

export const confirmPictureRights = formAction({
  name: "confirm picture rights",
  schema: confirmRightsSchema.extend(pairField),
  context,
  run: (ctx, { pairId, basis, name }) => confirmRights(ctx, { pairId: idOf("pair", pairId), basis, name }),
  words,
  done: show,
});
