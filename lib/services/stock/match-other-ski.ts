/** Wood for one ski built again, matched to what the ski that stays really has. */

import type { Tx } from "#data/client";
import type { PairRecord } from "#data/pairs";
import { freeStrips, holdStrip, type StripRecord } from "#data/strips";
import { type BuildCatalog, blendById } from "#engine/configuration";
import { type MatchedSki, matchOneSki, type Strip } from "#engine/matching";
import { moveState } from "#services/move";
import { workedPair } from "#shop/pair/view";
import { stripLimits, stripNeed } from "#shop/stock/need";
import { asStrip, placeOf } from "./allocate";

export interface OtherSkiMatch extends MatchedSki {
  readonly records: readonly StripRecord[];
}

/** @returns null when the ski that stays has no strips on record, or stock holds no set within the limit */
export async function matchOtherSki(
  client: Tx,
  pair: PairRecord,
  side: "L" | "R",
  now: Date,
): Promise<OtherSkiMatch | null> {
  const { spec, solved, catalog } = await workedPair(client, pair);
  const blend = blendOf(spec.core, catalog.build);
  const { positions } = stripNeed(spec, solved, blend, catalog.parts);
  const other = stripsByPosition(pair, side === "L" ? "R" : "L", now);
  if (positions.some(({ name, perSki }) => (other[name] ?? []).length !== perSki)) return null;
  const lengthMm = solved.build.coreToMm - solved.build.coreFromMm;
  // The ski that stays may have been given another species than the blend says; its twin is made of the same.
  const likeOther = positions.map((position) => ({
    ...position,
    species: [...new Set((other[position.name] ?? []).map(({ species }) => species))],
  }));
  const records = await freeStrips(client, [...new Set(likeOther.flatMap(({ species }) => species))], lengthMm);
  const strips = records.map((record) => asStrip(record, now));
  const matched = matchOneSki({ strips, positions: likeOther, other, limits: stripLimits });
  return matched === null ? null : { ...matched, records };
}

/** Takes the matched strips. @throws Error when one was taken meanwhile: the caller must hold the queue's lock */
export async function holdForSki(tx: Tx, pairId: string, side: "L" | "R", match: OtherSkiMatch): Promise<void> {
  for (const [position, ids] of Object.entries(match.strips)) {
    for (const [index, stripId] of ids.entries()) {
      const place = placeOf(ids.length, index);
      const isHeld = await moveState(tx, { kind: "strip", from: "free", to: "reserved" }, () =>
        holdStrip(tx, stripId, { pairId, side, position, place }),
      );
      if (!isHeld) throw new Error(`strip ${stripId} was taken while it was being matched`);
    }
  }
}

function blendOf(core: string, build: BuildCatalog) {
  const blend = blendById(build, core);
  if (!blend.ok) throw new RangeError(`matchOtherSki: ${core} is no core of the pair's release`);
  return blend.value;
}

function stripsByPosition(pair: PairRecord, side: "L" | "R", now: Date): Readonly<Record<string, readonly Strip[]>> {
  const held = pair.heldStrips.filter((strip) => strip.side === side);
  return Object.fromEntries(
    [...new Set(held.map(({ position }) => position ?? ""))].map((position) => [
      position,
      held.filter((strip) => strip.position === position).map((strip) => asStrip(strip, now)),
    ]),
  );
}
