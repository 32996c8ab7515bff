/** The ski of a side that will be sold: a scrapped one stays in the record beside the one built for it. */
import type { PairRecord } from "#data/pairs";

export function standingSki(pair: Pick<PairRecord, "skis">, side: "L" | "R"): PairRecord["skis"][number] | undefined {
  return pair.skis.find((ski) => ski.side === side && ski.state !== "scrapped");
}
