/** The target that every order of a model is measured by: EI(x) of its own class 3 ski. */
import { type ReferenceCurve, referenceCurve } from "#engine/flex";
import { referenceBuildFor } from "./build";
import { designedProfile } from "./designed-profile";
import type { BuildCatalog, Model } from "./types";

/** EI(x) of the model's reference build with its designed core. */
export function referenceOf(model: Model, catalog: BuildCatalog): ReferenceCurve {
  const known = referenceCurves.get(model);
  if (known) return known;
  const build = referenceBuildFor(model, catalog);
  const curve = referenceCurve(build, designedProfile(model, build.shape, catalog.rules));
  referenceCurves.set(model, curve);
  return curve;
}

/*
 * A sheet is assessed at every keystroke, and most keystrokes leave stiffness alone. The memory holds only what its arguments
 * determine and goes with the model; a catalogue is never changed once it is made.
 */
const referenceCurves = new WeakMap<Model, ReferenceCurve>();
