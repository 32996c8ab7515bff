import type { Catalog } from "#catalog";
import type { TermFacts } from "#papers";
import { currentCatalog } from "#shop/catalogue/current";

/** Terms of a release; what is said of bindings is today's. */
export function termFacts({ cancellation, terms }: Pick<Catalog["shop"], "cancellation" | "terms">): TermFacts {
  return { cancellation, cautions: [currentCatalog().safety.binding, ...terms.slice(-2)] };
}
