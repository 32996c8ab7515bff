import path from "node:path";
import { engineCatalog, loadCatalog, priceBookNamed } from "#catalog";
import type { EngineCatalog } from "#engine/assessment";
import {
  type BuildCatalog,
  completeSpec,
  type PairSpec,
  type SolvedSpec,
  type SpecChoices,
  solveSpec,
} from "#engine/configuration";

const loaded = loadCatalog(path.resolve(import.meta.dirname, "../../content"));

/** The demo shop's catalogue with its first price book, as a page is given it. */
export const catalog: EngineCatalog = {
  ...engineCatalog(loaded, priceBookNamed(loaded, "PB-3")),
  snow: loaded.snow,
};

/** A complete spec of a Midlow 95 at 178, class 3, where nothing else is chosen. */
export function specOf(choices: SpecChoices = {}): PairSpec {
  const model = choices.model ?? "midlow-95";
  const lengthCm = catalog.build.models.find((each) => each.id === model)?.shape.refLengthCm ?? 0;
  const finish = { baseBevelDeg: 1, sideAngleDeg: 2, detuneTipMm: 50, detuneTailMm: 50, structure: "M" } as const;
  const spec = completeSpec(choices, { model, lengthCm, flexRatio: 1, finish, mount: { offsetMm: 0 } }, catalog.build);
  if (!spec.ok) throw new Error(JSON.stringify(spec.refusal));
  return spec.value;
}

export function solved(spec: PairSpec, build: BuildCatalog = catalog.build): SolvedSpec {
  const solution = solveSpec(spec, build);
  if (!solution.ok) throw new Error(JSON.stringify(solution.refusal));
  return solution.value;
}
