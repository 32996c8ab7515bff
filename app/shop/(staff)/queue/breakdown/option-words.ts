/** A way on in words, with the figures it was computed with. */
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/breakdowns.json";
import type { RemedyOption } from "#services";

export function optionWords({ way, figures, procedure }: Pick<RemedyOption, "way" | "figures" | "procedure">): string {
  const text = fill(words.options[way], figures ?? {});
  return procedure === undefined ? text : fill(words.underProcedure, { text, procedure });
}
