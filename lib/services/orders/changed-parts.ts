/** Which parts of the specification differ between two specs. */

import { canonicalJson } from "#catalog";
import type { PairSpec } from "#engine/configuration";
import type { SpecificationPart } from "#engine/floor";

const fieldsOf: readonly (readonly [SpecificationPart, readonly (keyof PairSpec)[]])[] = [
  ["shape", ["model", "lengthCm"]],
  ["core", ["core", "lightening"]],
  ["reinforcements", ["reinforcements"]],
  ["flex", ["flexRatio"]],
  ["mount", ["mount", "plate"]],
  ["base", ["base"]],
  ["graphic", ["graphic"]],
  ["protectors", ["tipTailProtectors"]],
  ["finish", ["finish"]],
];

export function changedParts(before: PairSpec, after: PairSpec): readonly SpecificationPart[] {
  const differs = (field: keyof PairSpec) => canonicalJson(before[field]) !== canonicalJson(after[field]);
  return fieldsOf.filter(([, fields]) => fields.some(differs)).map(([part]) => part);
}
