/** Answers to calls that the sheet makes by itself while somebody types: a value, a refusal in words, or a fault's reference. */
import { unstable_rethrow } from "next/navigation";
import type { Outcome, Refusal } from "#engine/units";
import { faultWords, noteRefusal, reportFault } from "./faults";

export interface Refused {
  readonly ok: false;
  readonly message: string;
  readonly path?: string;
}

/** @param say a refusal in words */
export async function replyOf<T>(
  name: string,
  work: () => Promise<Outcome<T>>,
  say: (refusal: Refusal) => string,
): Promise<{ readonly ok: true; readonly value: T } | Refused> {
  try {
    const outcome = await work();
    if (outcome.ok) return outcome;
    const { refusal } = outcome;
    noteRefusal(refusal, name);
    return { ok: false, message: say(refusal), ...(refusal.path === undefined ? {} : { path: refusal.path }) };
  } catch (error) {
    unstable_rethrow(error);
    return { ok: false, message: faultWords(reportFault(error, name)) };
  }
}
