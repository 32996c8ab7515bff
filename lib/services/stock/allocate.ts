/** Takes matched strips out of stock for one pair. Runs inside the transaction that makes or changes the pair. */

import type { Tx } from "#data/client";
import { freeStrips, holdStrip, type StripRecord } from "#data/strips";
import type { BuildCatalog, PairSpec } from "#engine/configuration";
import { blendById, solveSpec } from "#engine/configuration";
import {
  type MatchedPair,
  type MatchedStrips,
  matchStrips,
  mayLieAt,
  type SkiStrips,
  type Strip,
  type StripLimits,
  type StripNeed,
  type StripPosition,
} from "#engine/matching";
import type { PartsRules } from "#engine/parts";
import type { StripAllocation } from "#schemas/stored/index";
import { moveState } from "#services/move";
import { stripLimits, stripNeed } from "#shop/stock/need";

/** What of a release decides which strips a pair may have. */
export interface StripCatalog {
  readonly build: BuildCatalog;
  readonly parts: PartsRules;
}

/**
 * @throws Error when a strip that was read free a moment ago is not: the caller must hold the queue's lock (see bumpQueue)
 */
export async function allocateStrips(
  tx: Tx,
  pair: { readonly pairId: string; readonly spec: PairSpec; readonly catalog: StripCatalog; readonly now: Date },
): Promise<StripAllocation> {
  const {
    spec,
    catalog: { build, parts },
  } = pair;
  const solved = solveSpec(spec, build);
  const blend = blendById(build, spec.core);
  if (!solved.ok || !blend.ok) throw new RangeError(`allocateStrips: ${spec.model} in ${spec.core} cannot be built`);
  const need = stripNeed(spec, solved.value, blend.value, parts);
  const { coreFromMm, coreToMm } = solved.value.build;
  const species = [...new Set(Object.values(blend.value.strips))];
  const stock = await freeStrips(tx, species, coreToMm - coreFromMm);
  const matched = firstMatch(stock, need, pair.now, stripLimits);
  const found = matched.pairs[0];
  if (found === undefined) return { isMade: false, why: matched.why };
  await holdSet(tx, pair.pairId, found, need.positions);
  const { twinDifferencePercent, modulusMpa } = found;
  return { isMade: true, twinDifferencePercent, modulusMpa };
}

/**
 * Of the strips that suffice those of the smallest section first, larger ones only where these make no set, so that wide
 * strips stay for wide skis; of each the oldest. A rack's worth of a species nearly always holds a set (140 strips: nine of
 * ten, content/README.md) and is searched in a few milliseconds; all of the stock only when it does not.
 */
export function firstMatch(
  stock: readonly StripRecord[],
  need: StripNeed,
  now: Date,
  limits: StripLimits,
): MatchedStrips {
  const all = stock.map((strip) => asStrip(strip, now));
  const fitting = all.filter((strip) => need.positions.some((position) => mayLieAt(strip, position)));
  const sections = [...new Set(fitting.map(sectionMm2))].toSorted((a, b) => a - b);
  for (const largest of sections) {
    const strips = rackOf(fitting.filter((strip) => sectionMm2(strip) <= largest));
    const matched = matchStrips({ strips, need, limits });
    if (matched.unmet === 0) return matched;
  }
  return matchStrips({ strips: all, need, limits });
}

/** The first of each species. */
function rackOf(strips: readonly Strip[]): readonly Strip[] {
  const species = [...new Set(strips.map((strip) => strip.species))];
  return species.flatMap((wood) => strips.filter((strip) => strip.species === wood).slice(0, rackful));
}

/** In whole millimetres each way: strips sawn alike are one size, whatever the caliper says. */
const sectionMm2 = ({ size }: Strip) => (size ? Math.ceil(size.widthMm) * Math.ceil(size.heightMm) : 0);

const rackful = 120;

export function asStrip(record: StripRecord, now: Date): Strip {
  const { id, species, modulusMpa, densityKgM3, grade, board, measuredAt, widthMm, heightMm, lengthMm } = record;
  const ageDays = Math.max(0, Math.floor((now.getTime() - measuredAt.getTime()) / 86_400_000));
  const size = { widthMm, heightMm, lengthMm };
  return { id, species, modulusMpa, densityKgM3, grade, board, ageDays, size };
}

export async function holdSet(
  tx: Tx,
  pairId: string,
  found: MatchedPair,
  positions: readonly StripPosition[],
): Promise<void> {
  const skis: readonly (readonly ["L" | "R", SkiStrips])[] = [
    ["L", found.left],
    ["R", found.right],
  ];
  for (const [side, strips] of skis) {
    for (const { name } of positions) {
      const couple = strips[name] ?? [];
      for (const [index, stripId] of couple.entries()) {
        const place = placeOf(couple.length, index);
        const isHeld = await moveState(tx, { kind: "strip", from: "free", to: "reserved" }, () =>
          holdStrip(tx, stripId, { pairId, side, position: name, place }),
        );
        if (!isHeld) {
          throw new Error(`strip ${stripId} was taken while it was being matched`);
        }
      }
    }
  }
}

/** Where a strip of a position lies, seen from above: a couple's left edge is listed first. */
export function placeOf(count: number, index: number): "left" | "centre" | "right" {
  if (count === 1) return "centre";
  return index === 0 ? "left" : "right";
}
