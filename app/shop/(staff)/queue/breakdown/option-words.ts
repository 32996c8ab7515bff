/** A way on in words, with the figures it was computed with. */
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/breakdowns.json";
import type { RemedyOption } from "#services";

export function optionWords({ way, figures }: Pick<RemedyOption, "way" | "figures">): string {
  return fill(words.options[way], figures ?? {});
}
