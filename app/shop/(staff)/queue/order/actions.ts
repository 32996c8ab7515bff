"use server";
/** Moving a pair in the queue and taking it back. */
import { redirect } from "next/navigation";
import { z } from "zod";
import { formAction } from "@/app/_server/form-action";
import { staffContext } from "@/app/_server/request";
import { applyMove, type PairId, undoMove } from "@/lib/services";
import { idField, wholeField } from "../../../fields";
import { say } from "../../../say";

const here = "/shop/queue/order";

export const move = formAction({
  name: "move a pair in the queue",
  schema: z.strictObject({
    pairId: idField.transform((id) => id as PairId),
    before: z
      .string()
      .max(60)
      .transform((id) => (id === "" ? null : (id as PairId))),
    revision: wholeField,
    reason: z.string().max(500, { error: "Reason: at most 500 characters" }),
  }),
  context: () => staffContext(here),
  run: applyMove,
  words: say,
  done: () => redirect(here),
});

export const undo = formAction({
  name: "take a move back",
  schema: z.strictObject({ decisionId: idField }),
  context: () => staffContext(here),
  run: undoMove,
  words: say,
  done: () => redirect(here),
});
