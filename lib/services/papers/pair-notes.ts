/** What the maker must know beside the frozen specification: decisions about wood, and the one ski that is built again. */

import type { Tx } from "#data/client";
import { eventsOf } from "#data/events";
import type { PairRecord } from "#data/pairs";
import { latestVisits } from "#engine/floor";
import type { PairNote } from "#papers";
import type { StripOption } from "#services/stock/views";
import { stationIdTaking, stationNumber } from "#shop/floor/stations";
import { standingSki } from "#shop/pair/standing-ski";

/** Notes of the build sheet. */
export async function pairNotes(client: Tx, pair: PairRecord): Promise<readonly PairNote[]> {
  const events = await eventsOf(client, "pair", [pair.id]);
  const decided = events.findLast(({ kind }) => kind === "strips-decided" || kind === "pair-edited")?.facts;
  const option = decided?.kind === "strips-decided" ? decided.data.option : null;
  return [...woodNotes(option), ...reworkNotes(pair)];
}

function woodNotes(option: StripOption | null): readonly PairNote[] {
  if (option?.kind === "other-species") {
    const { kind, position, species, from, thicknessMm } = option;
    return [{ kind, position, species, insteadOf: from, thicknessMm }];
  }
  if (option?.kind === "other-thickness") {
    const { kind, modulusPercent, thicknessMm } = option;
    return [{ kind, modulusPercent, thicknessMm }];
  }
  return [];
}

function reworkNotes(pair: PairRecord): readonly PairNote[] {
  const open = latestVisits(pair.operations).filter(({ side, state }) => side !== null && state !== "done");
  const side = open[0]?.side;
  if (side !== "L" && side !== "R") return [];
  const kept = standingSki(pair, side === "L" ? "R" : "L");
  const { base } = pair.spec;
  const needsLetters =
    base.inlay === "counterchange" && open.some(({ station }) => station === stationIdTaking("base-sheets"));
  return [
    {
      kind: "one-ski",
      serial: standingSki(pair, side)?.serial ?? side,
      stations: open.map(({ station }) => stationNumber(station)),
    },
    ...(kept?.location ? [{ kind: "parked" as const, serial: kept.serial, location: kept.location }] : []),
    ...(needsLetters ? [{ kind: "extra-letters" as const, colour: side === "L" ? base.right : base.left }] : []),
  ];
}
