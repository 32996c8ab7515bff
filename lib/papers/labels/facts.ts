/** What the labels of a pair are about: their share of a build sheet's facts, and what can hurt where each is stuck on. */
import type { CautionLabel } from "#engine/floor";
import type { BuildSheetFacts } from "#papers/build-sheet/facts";
import type { CautionFacts } from "#papers/parts/facts";

export interface LabelFacts extends Pick<BuildSheetFacts, "shop" | "stamp" | "pair" | "catalog" | "spec"> {
  /** Under all of them. */
  readonly cautions: CautionFacts;
  /** On the label itself. */
  readonly labelCautions: Readonly<Record<CautionLabel, CautionFacts["lines"]>>;
}
