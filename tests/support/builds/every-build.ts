/** Everything that a skier could order of stiffness: model × length × wood × reinforcements × flex. */
import type { BuildCatalog, FlexSpec, Model } from "#engine/configuration";
import { intBelow, type Random32, seededRandom, unitFromU32 } from "#engine/math";

export type Construction = Omit<FlexSpec, "flexRatio">;

/** Every construction of the catalogue's models: woods for the use, any set of reinforcements within the shop's plies. */
export function everyConstruction({ models, blends, reinforcements, rules }: BuildCatalog): readonly Construction[] {
  const setsFor = (model: Model): readonly (readonly string[])[] => {
    const offered = reinforcements.filter(
      ({ forUses, placement }) => forUses.includes(model.use) && !(model.hasMetal && placement.kind === "metal-pair"),
    );
    const sets = Array.from({ length: 2 ** offered.length }, (_, bits) =>
      offered.filter((_each, i) => bits & (1 << i)),
    );
    const plies = (set: typeof offered) => set.reduce((sum, { extraPlies }) => sum + extraPlies, 0);
    return sets.filter((set) => plies(set) <= rules.maxExtraPlies).map((set) => set.map(({ id }) => id));
  };
  return models.flatMap((model) =>
    model.lengths.flatMap(({ lengthCm }) =>
      blends
        .filter(({ forUses }) => forUses.includes(model.use))
        .flatMap(({ id }) =>
          setsFor(model).map((set) => ({ model: model.id, lengthCm, core: id, reinforcements: set })),
        ),
    ),
  );
}

/** The flexes that the shop sells: from the softest class to the end of the stiffest. */
export function flexRange({ flexClasses }: BuildCatalog): { readonly from: number; readonly below: number } {
  return {
    from: Math.min(...flexClasses.map(({ from }) => from)),
    below: Math.max(...flexClasses.map(({ below }) => below)),
  };
}

/** A seeded draw, each construction and each flex as likely as any other. */
export function drawnBuilds(catalog: BuildCatalog, count: number, seed: number): readonly FlexSpec[] {
  const all = everyConstruction(catalog);
  const { from, below } = flexRange(catalog);
  const random: Random32 = seededRandom(seed);
  return Array.from({ length: count }, () => {
    const construction = all[intBelow(random, all.length)] as Construction;
    return { ...construction, flexRatio: from + (below - from) * unitFromU32(random()) };
  });
}

/** Every construction at evenly spaced flexes. */
export function* allBuilds(catalog: BuildCatalog, steps: number): Generator<FlexSpec> {
  const { from, below } = flexRange(catalog);
  for (const construction of everyConstruction(catalog)) {
    for (let i = 0; i < steps; i++) yield { ...construction, flexRatio: from + ((below - from) * (i + 0.5)) / steps };
  }
}
