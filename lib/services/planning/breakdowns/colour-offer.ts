/** The letter that offers another base colour: what is short, until when, what fits, and what waiting means. */
import words from "#content/copy/breakdowns.json";
import type { PromiseEffect } from "#shop/queue/views";
import { longDay, replyBy } from "./delay-letter";
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
    w.greeting.replace("{name}", need.skierFirstName),
    w.colour.short.replace("{ski}", ski).replace("{colour}", base.label).replace("{day}", longDay(base.expectedOn)),
    ...(need.counterchangedWith === null ? [] : [w.colour.counterchanged]),
    w.colour.offer.replace("{colours}", either(colours)),
    ...(effect === null
      ? []
      : [
          w.colour.dates
            .replace("{colour}", base.label)
            .replace("{from}", longDay(effect.after.p50))
            .replace("{to}", longDay(effect.after.p90)),
        ]),
    w.colour.replyBy.replace("{replyBy}", longDay(by)),
    w.close,
  ].join("\n\n");
  const data = { colour: base.colour, expectedOn: base.expectedOn, alternatives: need.alternatives, replyBy: by };
  return { body, data };
}

/** "A", "A or B", "A, B or C" */
function either(names: readonly string[]): string {
  const last = names.at(-1) ?? "";
  return names.length < 2 ? last : `${names.slice(0, -1).join(", ")} or ${last}`;
}
