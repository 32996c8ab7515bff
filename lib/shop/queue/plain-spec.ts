import { assessSheet } from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import { engineOn } from "#shop/catalogue/current";

/** An ordinary pair: the skier the fit's numbers start from, on the model recommended first. @throws Error without one */
export function plainSpec(now: Date): PairSpec {
  const catalog = engineOn(now);
  const { heightReferenceCm, massReferenceKg } = catalog.fit;
  const answers = {
    heightCm: heightReferenceCm,
    massKg: massReferenceKg,
    ability: "confident",
    offPistePercent: 30,
  } as const;
  const { spec } = assessSheet({ answers, choices: {} }, catalog);
  if (spec === null) throw new Error("the catalogue recommends nothing for its own reference skier");
  return spec;
}
