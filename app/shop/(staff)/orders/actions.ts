"use server";
/** What staff do with an order and its pairs. Each: parse, who asks, one use case, words. */
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { idField, maybeTicked, wholeField, withoutEmpty } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import {
  approveProofSchema,
  askProofChangesSchema,
  cancelOrderSchema,
  confirmOrderSchema,
  confirmRightsSchema,
  correctContactSchema,
  recordDepositSchema,
  recordReceiptSchema,
  recordRefundSchema,
  shipOrderSchema,
  waiveRushSchema,
} from "#schemas";
import { idOf } from "#schemas/ids";
import {
  approveProof,
  askProofChanges,
  cancelOrder,
  confirmOrder,
  confirmRights,
  correctBuyer,
  deliverOrder,
  editPair,
  issueProof,
  lockSpecification,
  type OrderId,
  recordDeposit,
  recordReceipt,
  recordRefund,
  shipOrder,
  waiveRush,
} from "#services";
import { choicesOf, editFields } from "./edit-fields";

const context = () => staffContext();
const orderField = { orderId: idField.transform((id) => idOf("order", id)) };
const pairField = { ...orderField, pairId: idField.transform((id) => idOf("pair", id)) };
const show = (_value: unknown, { orderId }: { readonly orderId: OrderId }) => revalidatePath(`/shop/orders/${orderId}`);

export const correct = formAction({
  name: "correct a buyer",
  schema: correctContactSchema.extend({ ...orderField, version: wholeField }),
  context,
  run: correctBuyer,
  words: say,
  done: show,
});

export const deposit = formAction({
  name: "record a deposit",
  schema: withoutEmpty(recordDepositSchema.extend(orderField)),
  context,
  run: recordDeposit,
  words: say,
  done: show,
});

export const receipt = formAction({
  name: "record a receipt",
  schema: withoutEmpty(recordReceiptSchema.extend(orderField)),
  context,
  run: recordReceipt,
  words: say,
  done: show,
});

export const refund = formAction({
  name: "record a refund",
  schema: recordRefundSchema.extend(orderField),
  context,
  run: recordRefund,
  words: say,
  done: show,
});

export const confirm = formAction({
  name: "confirm an order's contact",
  schema: confirmOrderSchema.extend(orderField),
  context,
  run: confirmOrder,
  words: say,
  done: show,
});

export const waive = formAction({
  name: "waive a rush fee",
  schema: waiveRushSchema.extend(orderField),
  context,
  run: waiveRush,
  words: say,
  done: show,
});

export const lock = formAction({
  name: "lock a specification",
  schema: z.strictObject(pairField),
  context,
  run: lockSpecification,
  words: say,
  done: show,
});

export const sendProof = formAction({
  name: "send a proof",
  schema: withoutEmpty(z.strictObject({ ...pairField, note: z.string().max(2000).optional() })),
  context,
  run: (ctx, { pairId, note }) => issueProof(ctx, { pairId, ...(note ? { note } : {}) }),
  words: say,
  done: show,
});

export const proofApproved = formAction({
  name: "approve a proof",
  schema: approveProofSchema.extend({ ...pairField, revision: wholeField }),
  context,
  run: approveProof,
  words: say,
  done: show,
});

export const proofChanges = formAction({
  name: "ask for changes to a proof",
  schema: askProofChangesSchema.extend({ ...pairField, revision: wholeField }),
  context,
  run: askProofChanges,
  words: say,
  done: show,
});

export const rights = formAction({
  name: "confirm picture rights",
  schema: confirmRightsSchema.extend(pairField),
  context,
  run: confirmRights,
  words: say,
  done: show,
});

export const cancel = formAction({
  name: "cancel an order",
  schema: cancelOrderSchema.extend(orderField),
  context,
  run: cancelOrder,
  words: say,
  done: show,
});

export const ship = formAction({
  name: "ship an order",
  schema: withoutEmpty(shipOrderSchema.extend(orderField)),
  context,
  run: shipOrder,
  words: say,
  done: show,
});

export const deliver = formAction({
  name: "an order has arrived",
  schema: z.strictObject(orderField),
  context,
  run: deliverOrder,
  words: say,
  done: show,
});

export const changePair = formAction({
  name: "change a pair",
  schema: z.strictObject({
    ...pairField,
    ...editFields,
    revision: wholeField,
    reason: cancelOrderSchema.shape.reason,
    ownerApproves: maybeTicked,
  }),
  context,
  run: (ctx, { pairId, revision, reason, ownerApproves, ...fields }) =>
    editPair(ctx, { pairId, revision, reason, ownerApproves, choices: choicesOf(fields) }),
  words: say,
  done: (_preview, { orderId }) => redirect(`/shop/orders/${orderId}`),
});
