/** What the labels of a pair are about: their share of a build sheet's facts. */
import type { BuildSheetFacts } from "#papers/build-sheet/facts";

export type LabelFacts = Pick<BuildSheetFacts, "shop" | "stamp" | "pair" | "catalog" | "spec">;
