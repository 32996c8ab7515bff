/** The letter that offers another base colour: what is short, until when, what fits, and what waiting means. */
import words from "#content/copy/breakdowns.json";
import nameWords from "#content/copy/names.json";
import { fill } from "#engine/units";
import type { PromiseEffect } from "#shop/queue/views";
import { longDay, rangeLine, replyBy } from "./delay-letter";
import type { BaseNeed, BaseShortage } from "./views";

/** @param effect how the pair's dates move if it waits; null when they hardly do */
export function colourOffer(
  now: Date,
  base: BaseShortage,
  need: BaseNeed,
  ski: string,
  effect: PromiseEffect | null,
): { readonly body: string; readonly data: Readonly<Record<string, unknown>> } {
  const by = replyBy(now);
  const w = words.letter;
  const colours = need.alternatives.map(({ label }) => label);
  const body = [
    fill(w.greeting, { name: need.skierFirstName }),
    fill(w.colour.short, { ski, colour: base.label, day: longDay(base.expectedOn) }),
    ...(need.counterchangedWith === null ? [] : [w.colour.counterchanged]),
    fill(w.colour.offer, { colours: either(colours) }),
    ...(effect === null ? [] : [rangeLine(w.colour, effect.after, { colour: base.label })]),
    fill(w.colour.replyBy, { replyBy: longDay(by) }),
    w.close,
  ].join("\n\n");
  const data = { colour: base.colour, expectedOn: base.expectedOn, alternatives: need.alternatives, replyBy: by };
  return { body, data };
}

/** "A", "A or B", "A, B or C" */
function either(names: readonly string[]): string {
  const last = names.at(-1) ?? "";
  return names.length < 2 ? last : fill(nameWords.or, { list: names.slice(0, -1).join(", "), last });
}
