/** What a kit list is about: its share of a build sheet's facts, and what can hurt where it is put together. */
import type { BuildSheetFacts } from "#papers/build-sheet/facts";
import type { CautionFacts } from "#papers/parts/facts";

export interface KitListFacts
  extends Pick<BuildSheetFacts, "shop" | "stamp" | "pair" | "catalog" | "spec" | "parts" | "lots" | "floor"> {
  readonly cautions: CautionFacts;
}
