/** Choosing among builds of the same flex: the ones that nothing beats on mass and price, and the cheapest that is light enough. */
import type { SameFlexOption } from "./alternatives";

/** What is weighed against each other. Twist is shown beside it: whether more of it is better is the skier's to say. */
export interface MassAndPrice {
  readonly massG: number;
  readonly priceCents: number;
}

/**
 * The options that no other dominates, in the given order (Pareto optimality; Miettinen, Nonlinear Multiobjective
 * Optimization, 1999, ch. 2, from memory). One dominates another when it is not heavier and not dearer, and lighter or cheaper.
 * Equals do not dominate each other: both stay.
 */
export function paretoSet<T extends MassAndPrice>(options: readonly T[]): readonly T[] {
  // By price, then mass: an option is dominated exactly when something before its equals is as light as it or lighter.
  const sorted = options.toSorted((a, b) => a.priceCents - b.priceCents || a.massG - b.massG);
  const kept = new Set<T>();
  let lightest: MassAndPrice | undefined;
  for (const option of sorted) {
    const isEqual = lightest?.massG === option.massG && lightest.priceCents === option.priceCents;
    if (lightest && option.massG >= lightest.massG && !isEqual) continue;
    kept.add(option);
    lightest = option;
  }
  return options.filter((option) => kept.has(option));
}

export type LighterAnswer =
  /** The cheapest that is at least so much lighter than the build on the sheet. */
  | { readonly kind: "found"; readonly wantedG: number; readonly option: SameFlexOption }
  /** None is: the lightest of all, and by how much. Null when it is the build on the sheet, or nothing can be built. */
  | { readonly kind: "not-so-light"; readonly wantedG: number; readonly lightest: SameFlexOption | null };

/**
 * The cheapest option at least `grams` a pair lighter than the build on the sheet; of equally cheap ones the lightest,
 * then the one stiffer in twist.
 *
 * @throws RangeError when `grams` is not above 0
 */
export function lighterBy(options: readonly SameFlexOption[], grams: number): LighterAnswer {
  if (!(grams > 0 && Number.isFinite(grams))) throw new RangeError(`grams: ${grams} is not above 0`);
  const byTwist = (a: SameFlexOption, b: SameFlexOption) => b.forebodyTwistNmmPerRad - a.forebodyTwistNmmPerRad;
  const [option] = options
    .filter((each) => each.change.massG <= -grams)
    .toSorted((a, b) => a.priceCents - b.priceCents || a.massG - b.massG || byTwist(a, b));
  if (option) return { kind: "found", wantedG: grams, option };
  const [lightest] = options
    .filter((each) => each.change.massG < 0)
    .toSorted((a, b) => a.massG - b.massG || a.priceCents - b.priceCents || byTwist(a, b));
  return { kind: "not-so-light", wantedG: grams, lightest: lightest ?? null };
}
