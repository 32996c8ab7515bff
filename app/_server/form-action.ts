/**
 * The one shape of a mutation from our own pages: parse → who asks → one service call → what the person sees.
 *
 *   export const save = formAction({
 *     name: "save the answers",
 *     schema: answersSchema,
 *     context: staffContext,
 *     run: (ctx, input) => saveSheet(ctx, input),
 *     words: sheetWords,                      refusal → words, from content/copy
 *     done: (value) => redirect(`/shop/quotes/${value.id}`),
 *   });
 *
 * in a file with "use server", and `useActionState(save, …)` in the page's client leaf, or `<form action>` plain.
 */
import { unstable_rethrow } from "next/navigation";
import "server-only";
import type { z } from "zod";
import words from "#content/copy/start.json";
import type { Outcome, Refusal } from "#engine/units";
import type { Context } from "#services/context";
import { faultWords, Malformed, noteRefusal, reportFault } from "./faults";
import { type FormState, messagesByPath, readForm, typedValues } from "./form-state";

export interface FormAction<Schema extends z.ZodType, Value> {
  /** For the log, such as "save the answers". */
  readonly name: string;
  readonly schema: Schema;
  readonly context: (input: z.output<Schema>) => Promise<Context>;
  readonly run: (ctx: Context, input: z.output<Schema>) => Promise<Outcome<Value, Refusal>>;
  readonly words: (refusal: Refusal) => string;
  /** Before a refusal is put into words: a redirect to where it is shown better, with what was typed. */
  readonly refused?: (refusal: Refusal, values: FormState["values"], input: z.output<Schema>) => void | Promise<void>;
  /** After success: revalidate, redirect. */
  readonly done?: (value: Value, input: z.output<Schema>) => void | Promise<void>;
}

export function formAction<Schema extends z.ZodType, Value>(action: FormAction<Schema, Value>) {
  return async (_previous: FormState, form: FormData): Promise<FormState> => {
    if (!(form instanceof FormData)) throw new Malformed(action.name);
    const fields = readForm(form);
    const values = typedValues(fields);
    const unkeepable = Object.entries(values).find(([, value]) => String(value).includes("\0"));
    if (unkeepable !== undefined) {
      return { status: "refused", values: {}, refusals: { [unkeepable[0]]: words.gate.unkeepable } };
    }
    const parsed = action.schema.safeParse(fields);
    if (!parsed.success) return { status: "refused", values, refusals: messagesByPath(parsed.error.issues) };
    try {
      const outcome = await action.run(await action.context(parsed.data), parsed.data);
      if (!outcome.ok) {
        const { refusal } = outcome;
        noteRefusal(refusal, action.name);
        await action.refused?.(refusal, values, parsed.data);
        return { status: "refused", values, refusals: { [refusal.path ?? ""]: action.words(refusal) } };
      }
      await action.done?.(outcome.value, parsed.data);
      return { status: "done", values, refusals: {} };
    } catch (error) {
      // Redirects and "not found" travel as exceptions of the framework.
      unstable_rethrow(error);
      return { status: "failed", values, refusals: { "": faultWords(reportFault(error, action.name)) } };
    }
  };
}
