/** Composes the kit list: every line of this configuration, with lot, place and a box to scan into. */

import words from "#content/copy/papers.json";
import type { PartsList } from "#engine/parts";
import { fill } from "#engine/units";
import { cutRow, mouldName } from "#papers/build-sheet/compose";
import type { CautionFacts, CutRow, PairFacts, PrintStamp, Row, ShopFacts } from "#papers/parts/facts";
import { mm } from "#papers/parts/format";
import { resinRows } from "#papers/parts/recipe-rows";
import { pairTitle } from "#papers/parts/spec-rows";
import type { KitListFacts } from "./facts";

const w = words.kitList;

export interface KitRow extends CutRow {
  readonly code: string;
  readonly lot: string;
  readonly location: string;
  readonly isMandatory: boolean;
  readonly substitution: string;
}

export interface KitListData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly pair: PairFacts;
  readonly title: string;
  readonly identity: readonly Row[];
  readonly rows: readonly KitRow[];
  /** "51 lines, 86 pieces": what is counted when the kit is laid out. */
  readonly count: string;
  readonly resin: readonly Row[];
  readonly cautions: CautionFacts;
}

/** @throws RangeError when the spec names a model the catalogue does not have */
export function composeKitList(facts: KitListFacts): KitListData {
  const { spec, catalog, parts, lots } = facts;
  const mould = mouldName(spec, catalog);
  return {
    shop: facts.shop,
    stamp: facts.stamp,
    pair: facts.pair,
    title: pairTitle(spec, catalog),
    identity: [
      { label: w.mould, value: mould },
      { label: w.length, value: mm(spec.lengthCm * 10) },
    ],
    rows: parts.lines.map((line) => {
      const lot = lots.find((l) => l.code === line.code);
      return {
        ...cutRow(line),
        code: line.code,
        lot: lot?.lot ?? "",
        location: lot?.location ?? "",
        isMandatory: line.mandatoryScan,
        substitution: lot?.substitution
          ? fill(w.substituted, { instead: lot.substitution.instead, approvedBy: lot.substitution.approvedBy })
          : "",
      };
    }),
    count: countText(parts),
    resin: resinRows(parts, facts.floor),
    cautions: facts.cautions,
  };
}

/** Beside the lines, the pieces that both skis are made of; older releases counted lines alone. */
function countText({ lines, layUp }: PartsList): string {
  const pieces = lines
    .filter(({ unit, layers }) => layers !== undefined && (unit === "piece" || unit === "set"))
    .reduce((sum, line) => sum + line.quantityLeft + line.quantityRight + line.quantityPair, 0);
  return fill(layUp === "words" ? w.lines : w.linesAndPieces, { lines: lines.length, pieces });
}
