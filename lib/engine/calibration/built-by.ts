/** What decided a measured ski when it was built, as one object a catalogue, so that what is worked out with it is kept. */
import type { BuildCatalog } from "#engine/configuration";
import type { BuiltBy } from "./types";

const ofReleases = new WeakMap<BuildCatalog, BuiltBy>();
const ofPaper = new WeakMap<BuildCatalog, BuiltBy>();

/** Models and rules of the release that a pair was ordered from. @param name of that release */
export function builtByRelease(build: BuildCatalog, name: string): BuiltBy {
  const known = ofReleases.get(build) ?? { name, models: build.models, rules: build.rules };
  ofReleases.set(build, known);
  return known;
}

/** Pairs of the shop's paper book were built on their models' own cloth, before bench rules stood in the catalogue. */
export function builtOnPaper(build: BuildCatalog): BuiltBy {
  const { bench: _bench, cloth: _cloth, ...rules } = build.rules;
  const known = ofPaper.get(build) ?? { name: "paper", models: build.models, rules };
  ofPaper.set(build, known);
  return known;
}
