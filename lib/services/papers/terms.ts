import type { Catalog } from "#catalog";
import { type CautionLabel, type CautionPaper, cautionsAt, type SoldFor } from "#engine/floor";
import type { CautionFacts, LabelFacts, TermFacts } from "#papers";
import { currentCatalog } from "#shop/catalogue/current";

/** Cancelling by the terms of a release; what can hurt is told as the shop says it today. */
export function termFacts(
  { cancellation }: Pick<Catalog["shop"], "cancellation">,
  paper: CautionPaper,
  soldFor: readonly SoldFor[],
): TermFacts {
  return { cancellation, cautions: cautionFacts(currentCatalog().safety, paper, soldFor) };
}

/** What a paper says of what can hurt. */
export function cautionFacts(
  { hazards, localRules }: Catalog["safety"],
  paper: CautionPaper,
  soldFor: readonly SoldFor[] = [],
): CautionFacts {
  return { localRules, lines: cautionsAt(hazards, { paper }, soldFor) };
}

/** What the labels say, under all of them and each on its own. */
export function labelFacts(safety: Catalog["safety"]): Pick<LabelFacts, "cautions" | "labelCautions"> {
  const on = (label: CautionLabel) => cautionsAt(safety.hazards, { label });
  return {
    cautions: cautionFacts(safety, "labels"),
    labelCautions: {
      "strip-bundle": on("strip-bundle"),
      core: on("core"),
      base: on("base"),
      print: on("print"),
      cassette: on("cassette"),
      "finished-ski": on("finished-ski"),
    },
  };
}
