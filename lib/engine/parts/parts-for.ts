/** The whole parts list of one pair: every line this configuration needs, and no other. */
import type { BuildCatalog, PairSpec, SolvedSpec } from "#engine/configuration";
import { baseLines } from "./base-lines";
import { compositeLines } from "./composite-lines";
import { consumableLines } from "./consumable-lines";
import { partsContext } from "./context";
import { coreLines } from "./core-lines";
import { printLines } from "./print-lines";
import { resinBatch } from "./resin";
import type { PartsList, PartsRules } from "./types";

/**
 * Cut sizes from this ski's geometry and its solved core; options add and remove lines. In the order of the
 * shop's list. Masses are of one piece as cut, in g; quantities count pieces for the left ski, the right ski and the pair.
 *
 * @throws RangeError when the spec names what the catalogue does not hold
 */
export function partsFor(spec: PairSpec, solved: SolvedSpec, catalog: BuildCatalog, rules: PartsRules): PartsList {
  const context = partsContext(spec, solved, catalog, rules);
  const resin = resinBatch(context);
  const lines = [
    ...coreLines(context),
    ...baseLines(context),
    ...compositeLines(context),
    ...printLines(context),
    ...consumableLines(context, resin),
  ];
  const placeOf = new Map(rules.lines.map((rule, index) => [rule.line, index]));
  return {
    lines: lines.toSorted((a, b) => (placeOf.get(a.line) ?? 0) - (placeOf.get(b.line) ?? 0)),
    resin,
    layUp: rules.layUp,
  };
}
