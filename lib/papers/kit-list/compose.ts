/** Composes the kit list: every line of this configuration, with lot, place and a box to scan into. */

import { cutRow, mouldName } from "#papers/build-sheet/compose";
import type { BuildSheetFacts } from "#papers/parts/facts";
import { mm } from "#papers/parts/format";
import { resinRows } from "#papers/parts/recipe-rows";
import { modelOf } from "#papers/parts/spec-rows";
import type { KitListData } from "./facts";

type KitListFacts = Pick<BuildSheetFacts, "shop" | "stamp" | "pair" | "catalog" | "spec" | "parts" | "lots" | "floor">;

/** @throws RangeError when the spec names a model the catalogue does not have */
export function composeKitList(facts: KitListFacts): KitListData {
  const { spec, catalog, parts, lots } = facts;
  const model = modelOf(spec, catalog);
  const mould = mouldName(spec, catalog);
  return {
    shop: facts.shop,
    stamp: facts.stamp,
    pair: facts.pair,
    title: `${model.name} · ${spec.lengthCm} cm · revision ${model.revision}`,
    identity: [
      { label: "Mould", value: mould },
      { label: "Length", value: mm(spec.lengthCm * 10) },
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
          ? `${lot.substitution.instead}, approved by ${lot.substitution.approvedBy}`
          : "",
      };
    }),
    resin: resinRows(parts, facts.floor),
  };
}
