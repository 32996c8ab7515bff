/** What came of asking for a quote, for both sheets: of what was seen, or with what is different now. */
import "server-only";
import type { QuoteReply } from "#app/_ui/sheet/section-state.ts";
import type { Outcome, Refusal } from "#engine/units";
import { quoteSeenSchema } from "#schemas";
import { differencesOf, type MadeQuote, type QuoteSeen } from "#services";
import { Malformed } from "./faults";
import type { Refused } from "./sheet-reply";

type Made = Promise<Outcome<MadeQuote, Refusal>>;

/**
 * @param seen as the page sent it
 * @param ask makes the quote, handing its outcome through the function it is given
 * @param done goes to the quote
 */
export async function quoteReply(
  seen: unknown,
  ask: (
    seen: QuoteSeen,
    heard: (made: Made) => Made,
  ) => Promise<{ readonly ok: true; readonly value: MadeQuote } | Refused>,
  done: (made: MadeQuote) => Promise<void> | never,
): Promise<QuoteReply> {
  const parsed = quoteSeenSchema.safeParse(seen);
  if (!parsed.success) throw new Malformed("make a quote");
  const refusals: Refusal[] = [];
  const made = await ask(parsed.data, async (outcome) => {
    const heard = await outcome;
    if (!heard.ok) refusals.push(heard.refusal);
    return heard;
  });
  if (!made.ok) return { ...made, differences: refusals.flatMap(differencesOf) };
  await done(made.value);
  return { ok: true };
}

/** What the page showed, as its form without scripts carries it. */
export function seenInForm(form: FormData): QuoteSeen {
  try {
    return quoteSeenSchema.parse(JSON.parse(String(form.get("seen"))));
  } catch {
    throw new Malformed("make a quote");
  }
}
