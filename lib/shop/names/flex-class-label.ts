import type { EngineCatalog } from "#engine/assessment";
import { flexClassOf, type PairSpec } from "#engine/configuration";

/** "3, balanced": the class as people say it. */
export function flexClassLabel(spec: Pick<PairSpec, "flexRatio">, catalog: Pick<EngineCatalog, "build">): string {
  const own = flexClassOf(spec.flexRatio, catalog.build.flexClasses);
  return own ? `${own.number}, ${own.label}` : "outside the classes";
}
