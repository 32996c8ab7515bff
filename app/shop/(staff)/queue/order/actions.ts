"use server";
/** Moving a pair in the queue and taking it back. */
import { redirect } from "next/navigation";
import { z } from "zod";
import { idField, textField, wholeField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { idOf } from "#schemas/ids";
import { applyMove, applyOrder, undoMove } from "#services";

const here = "/shop/queue/order";

export const move = formAction({
  name: "move a pair in the queue",
  schema: z.strictObject({
    pairId: idField.transform((id) => idOf("pair", id)),
    before: z
      .string()
      .max(60)
      .transform((id) => (id === "" ? null : idOf("pair", id))),
    revision: wholeField,
    reason: textField("Reason", 500),
  }),
  context: () => staffContext(here),
  run: applyMove,
  words: say,
  done: () => redirect(here),
});

/** "pair:minute" one after the other, as the page wrote them. */
const placesField = z
  .string()
  .max(20_000)
  .regex(/^[0-9a-f-]{36}:-?\d{1,12}(,[0-9a-f-]{36}:-?\d{1,12})*$/)
  .transform((text) =>
    text.split(",").map((each) => {
      const [id = "", minute = ""] = each.split(":");
      return { pairId: idOf("pair", id), placeMinute: Number(minute) };
    }),
  );

export const reorder = formAction({
  name: "give the queue a new order",
  schema: z.strictObject({
    places: placesField,
    revision: wholeField,
    reason: textField("Reason", 500),
  }),
  context: () => staffContext(here),
  run: applyOrder,
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
