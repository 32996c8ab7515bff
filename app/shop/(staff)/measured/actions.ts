"use server";
/** What the owner decides about readings, the books made of them, and pairs of the paper book. */
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { idField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { benchMeasureField, bookPairSchema, decisionField } from "#schemas";
import { addBookPair, approveCorrections, decideReading } from "#services";
import { readingFields, readingsIn, typedNumber } from "./reading-fields";

const context = () => staffContext("/shop/measured");
const show = () => revalidatePath("/shop/measured");

export const decide = formAction({
  name: "decide about a reading",
  schema: z.strictObject({
    serial: idField,
    measure: benchMeasureField,
    value: z.string().transform(Number),
    choice: decisionField,
    reason: z.string().max(2000),
  }),
  context,
  run: decideReading,
  words: say,
  done: show,
});

export const approve = formAction({
  name: "approve a book of corrections",
  schema: z.strictObject({ fingerprint: z.string().max(80) }),
  context,
  run: approveCorrections,
  words: say,
  done: show,
});

export const addPair = formAction({
  name: "add a pair of the paper book",
  schema: z.strictObject({
    serial: bookPairSchema.shape.serial,
    model: bookPairSchema.shape.model,
    core: bookPairSchema.shape.core,
    reinforcement: z.string().max(60),
    lengthCm: typedNumber("Length").pipe(bookPairSchema.shape.lengthCm),
    flexRatio: typedNumber("Flex ratio").pipe(bookPairSchema.shape.flexRatio),
    ...readingFields("left-"),
    ...readingFields("right-"),
  }),
  context,
  run: (ctx, fields) => {
    const { serial, model, core, reinforcement, lengthCm, flexRatio } = fields;
    return addBookPair(ctx, {
      serial,
      spec: { model, lengthCm, core, flexRatio, reinforcements: reinforcement === "" ? [] : [reinforcement] },
      left: readingsIn(fields, "left-"),
      right: readingsIn(fields, "right-"),
    });
  },
  words: say,
  done: show,
});
