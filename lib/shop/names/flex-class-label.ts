import names from "#content/copy/names.json";
import type { EngineCatalog } from "#engine/assessment";
import { flexClassOf, type PairSpec } from "#engine/configuration";
import { fill } from "#engine/units";

/** "3, balanced": the class as people say it. */
export function flexClassLabel(spec: Pick<PairSpec, "flexRatio">, catalog: Pick<EngineCatalog, "build">): string {
  const own = flexClassOf(spec.flexRatio, catalog.build.flexClasses);
  return own ? fill(names.flexClass, { number: own.number, label: own.label }) : names.noFlexClass;
}
