/** How sure a spec's numbers are: the scatter of the catalogue's rules, propagated through the finished ski. */
import { type CoreSolution, type FlexSpread, flexSpread, type ScatterSettings } from "#engine/flex";
import type { SolvedSpec } from "./solve-spec";
import type { BuildCatalog } from "./types";

/**
 * Standard deviations of the finished ski of a spec, plate and mat included. The bare ski's springs vary by nearly the same
 * share (the plate, on its soft foil, adds a few per cent of stiffness).
 *
 * @returns null for a release that says nothing of scatter
 */
export function spreadOf({ build, core, flexWithPlate }: SolvedSpec, catalog: BuildCatalog): FlexSpread | null {
  const scatter = scatterOf(catalog);
  if (!scatter) return null;
  const kept = spreads.get(core) ?? new Map<number, FlexSpread>();
  spreads.set(core, kept);
  const known = kept.get(build.mountFromTipMm);
  if (known) return known;
  const spread = flexSpread(build, core.profile, scatter, flexWithPlate);
  kept.set(build.mountFromTipMm, spread);
  return spread;
}

/**
 * The shop's scatter; with a book of corrections the model leaves out no more than what the book's own fit left unexplained
 * (an upper bound, since that difference also holds the other sources).
 */
function scatterOf({ rules, corrections }: BuildCatalog): ScatterSettings | undefined {
  const { scatter } = rules;
  const left = corrections?.differenceLeft;
  if (!scatter || !left) return scatter;
  return {
    ...scatter,
    modelSpring: Math.min(scatter.modelSpring, left.spring),
    modelMass: Math.min(scatter.modelMass, left.mass),
  };
}

/** By the solution, which is remembered for a spec and belongs to one catalogue, and where its plate lies. */
const spreads = new WeakMap<CoreSolution, Map<number, FlexSpread>>();

/** Times the standard deviation: half the band that holds nine of ten (normal distribution, z at 0.95). */
const NINE_OF_TEN = 1.645;

/** Half width of the band that nine of ten lie in, in the unit of the deviation. */
export function nineOfTen(deviation: number): number {
  return NINE_OF_TEN * deviation;
}
