/**
 * Which other builds of one ski the shop can make at all: its own blends for the model's use, with every set of its own
 * reinforcements that fits. What is buildable is decided before anything is solved.
 */
import {
  type BuildCatalog,
  conflictsOf,
  type Model,
  type PairSpec,
  type Reinforcement,
  resolveSpec,
} from "#engine/configuration";
import type { Refusal } from "#engine/units";

/** The two choices that a build of the same flex may differ in. */
export interface BuildChoice {
  readonly core: string;
  readonly reinforcements: readonly string[];
}

export interface BuildCandidates {
  readonly candidates: readonly BuildChoice[];
  /** Builds left out because something on the sheet does not go with them: carbon over a clear window. */
  readonly clashing: number;
}

/**
 * Blends for the model's use (and the one on the sheet) times the reinforcement sets for it, in the catalogue's order,
 * without those that clash. A clash that every candidate has (a mount line, a missing inlay text) says nothing of wood
 * or reinforcement: it is the sheet's to tell and leaves nothing out here.
 */
export function buildCandidates(spec: PairSpec, model: Model, catalog: BuildCatalog): BuildCandidates {
  const offered = catalog.blends.filter((each) => each.forUses.includes(model.use)).map((each) => each.id);
  const cores = [...new Set([...offered, spec.core])];
  const sets = reinforcementSets(model, catalog);
  const all = cores.flatMap((core) =>
    sets.map((set) => {
      const choice: BuildChoice = { core, reinforcements: set.map((each) => each.id) };
      return { choice, clashes: clashKeys({ ...spec, ...choice }, catalog) };
    }),
  );
  const [first, ...others] = all;
  const everywhere = new Set(
    [...(first?.clashes ?? [])].filter((key) => others.every(({ clashes }) => clashes.has(key))),
  );
  const fitting = all.filter(({ clashes }) => [...clashes].every((key) => everywhere.has(key)));
  return { candidates: fitting.map(({ choice }) => choice), clashing: all.length - fitting.length };
}

/** Every set of the reinforcements for this use with at most the shop's extra plies; metal once, the model's own counted. */
function reinforcementSets(
  model: Model,
  { reinforcements, rules }: BuildCatalog,
): readonly (readonly Reinforcement[])[] {
  const isMetal = (each: Reinforcement) => each.placement.kind === "metal-pair";
  const fits = (set: readonly Reinforcement[]) =>
    set.reduce((sum, each) => sum + each.extraPlies, 0) <= rules.maxExtraPlies &&
    set.filter(isMetal).length + (model.hasMetal ? 1 : 0) <= 1;
  const offered = reinforcements.filter(
    (each) => each.forUses.includes(model.use) && !(model.hasMetal && isMetal(each)),
  );
  const sets: (readonly Reinforcement[])[] = [[]];
  for (const each of offered) sets.push(...sets.map((set) => [...set, each]).filter(fits));
  return sets;
}

/** What of a spec clashes, one key a clash. */
function clashKeys(spec: PairSpec, catalog: BuildCatalog): ReadonlySet<string> {
  const resolved = resolveSpec(spec, catalog);
  if (!resolved.ok) return new Set([keyOf(resolved.refusal)]);
  return new Set(conflictsOf(spec, resolved.value, catalog).map(keyOf));
}

function keyOf({ code, path, reinforcement }: Refusal): string {
  return JSON.stringify([code, path, reinforcement]);
}
