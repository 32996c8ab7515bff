/** What a kit list is about: its share of a build sheet's facts. */
import type { BuildSheetFacts } from "#papers/build-sheet/facts";

export type KitListFacts = Pick<
  BuildSheetFacts,
  "shop" | "stamp" | "pair" | "catalog" | "spec" | "parts" | "lots" | "floor"
>;
