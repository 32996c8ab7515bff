/** What the maker must know beside the frozen specification: decisions about wood, and the one ski that is built again. */

import type { Tx } from "#data/client";
import { eventsOf } from "#data/events";
import type { PairRecord } from "#data/pairs";
import { latestVisits } from "#engine/floor";
import { textForPeople } from "#engine/units";
import type { StripOption } from "#services/stock/views";
import { stationIdTaking, stationNumber } from "#shop/floor/stations";
import { standingSki } from "#shop/pair/standing-ski";

/** Lines for the notes of the build sheet. */
export async function pairNotes(client: Tx, pair: PairRecord): Promise<readonly string[]> {
  const events = await eventsOf(client, "pair", [pair.id]);
  const decided = events.findLast(({ kind }) => kind === "strips-decided" || kind === "pair-edited")?.facts;
  const option = decided?.kind === "strips-decided" ? decided.data.option : null;
  return [...woodNotes(option), ...reworkNotes(pair)];
}

function woodNotes(option: StripOption | null): readonly string[] {
  if (option?.kind === "other-species")
    return [
      `Strips at ${option.position}: ${option.species} instead of ${option.from}. Mill the core ${millimetres(option.thicknessMm)} against the table.`,
    ];
  if (option?.kind === "other-thickness")
    return [
      `Strips ${textForPeople(option.modulusPercent, 1)} % off the design. Mill the core ${millimetres(option.thicknessMm)} against the table.`,
    ];
  return [];
}

function millimetres(value: number): string {
  const text = textForPeople(value, 2);
  return value > 0 ? `+${text} mm` : `${text} mm`;
}

function reworkNotes(pair: PairRecord): readonly string[] {
  const open = latestVisits(pair.operations).filter(({ side, state }) => side !== null && state !== "done");
  const side = open[0]?.side;
  if (side !== "L" && side !== "R") return [];
  const kept = standingSki(pair, side === "L" ? "R" : "L");
  const { base } = pair.spec;
  const needsLetters =
    base.inlay === "counterchange" && open.some(({ station }) => station === stationIdTaking("base-sheets"));
  const colour = side === "L" ? base.right : base.left;
  return [
    `Only ${standingSki(pair, side)?.serial ?? side} is built: stations ${open.map(({ station }) => stationNumber(station)).join(", ")}.`,
    ...(kept?.location ? [`${kept.serial} is parked: ${kept.location}.`] : []),
    ...(needsLetters ? [`Cut an extra letter set from a spare ${colour} sheet.`] : []),
  ];
}
