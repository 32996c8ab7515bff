"use client";
/** What the solver made of the core: how thick, what flex it reaches, what held it back, which cloth, what the flex weighs. */
import type { EngineCatalog } from "#engine/assessment";
import {
  type BenchRules,
  clothChange,
  massOfFlexG,
  nearestBuild,
  type PairSpec,
  type SolvedSpec,
} from "#engine/configuration";
import type { CoreLimit } from "#engine/flex";
import { interpolate } from "#engine/math";
import { textForPeople } from "#engine/units";
import { signedText } from "../signed";
import { fill } from "../words";
import type { SheetWords } from "./words";

export function CoreStory({
  spec,
  catalog,
  words,
}: {
  readonly spec: PairSpec;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
}) {
  const nearest = nearestBuild(spec, catalog.build);
  if (!nearest.ok) return null;
  const { solved, isReached } = nearest.value;
  const w = words.core.solved;
  const reasons = reasonsFor(solved.core.limitedBy, catalog.build.rules.bench, words);
  return (
    <div className="grid max-w-measure gap-1 text-sm text-pencil">
      <p>{isReached ? reachedText(spec, solved, catalog, words) : fill(w.nearest, coreWords(solved, words))}</p>
      {reasons.map((reason) => (
        <p key={reason}>{reason}</p>
      ))}
    </div>
  );
}

function coreWords({ core, build }: SolvedSpec, words: SheetWords) {
  const thickMm = interpolate(
    core.profile.stations.map((station) => station.xMm),
    core.profile.stations.map((station) => station.thicknessMm),
    build.mountFromTipMm,
  );
  return {
    mm: textForPeople(thickMm, 2),
    achieved: textForPeople(core.achievedRatio, 2),
    wanted: textForPeople(core.wantedRatio, 2),
    limits: limitNames(core.limitedBy, words),
  };
}

function limitNames(limits: readonly CoreLimit[], words: SheetWords): string {
  return limits.map((limit) => words.core.solved.limits[limit]).join(", ");
}

/** A ratio that differs by less than this share reads the same. */
const TELLING = 0.01;

function reachedText(spec: PairSpec, solved: SolvedSpec, catalog: EngineCatalog, words: SheetWords): string {
  const w = words.core.solved;
  const weighs = massOfFlexG(spec, catalog.build);
  const change = clothChange(solved.cloth, catalog.build.materials);
  const { because, by } = solved.cloth;
  const grams = weighs.ok ? weighs.value : null;
  const held = solved.core.limitedBy.length > 0 ? fill(w.limited, coreWords(solved, words)) : w.free;
  const off = Math.abs(solved.core.achievedRatio / solved.core.wantedRatio - 1);
  const tolerance = catalog.build.rules.bench?.flexTolerance;
  return [
    fill(w.line, coreWords(solved, words)),
    tolerance && off > TELLING
      ? fill(w.within, { percent: textForPeople(100 * off, 1), reason: tolerance.reason })
      : "",
    grams === null ? "" : Math.abs(grams) >= 1 ? fill(w.weighs, { mass: signedText(grams) }) : w.weighsNothing,
    change && by ? fill(w.cloth[change.kind], { ...change, limits: limitNames(because, words), by: w.by[by] }) : held,
  ]
    .filter(Boolean)
    .join(" ");
}

/** The shop's own reasons for the rules that held the core. */
function reasonsFor(limits: readonly CoreLimit[], bench: BenchRules | undefined, words: SheetWords): readonly string[] {
  if (!bench) return [];
  const w = words.core.solved;
  const reasons: Partial<Record<CoreLimit, readonly string[]>> = {
    "boot-floor": [bench.bootCore.reason, bench.woodUnderPocket.reason, bench.relief.reason],
    "no-rise": [bench.noRise.reason],
    "end-sheet": [bench.endSheets.reason],
  };
  return limits.flatMap((limit) => {
    const own = reasons[limit];
    if (!own) return [];
    const name = w.limits[limit];
    return [fill(w.because, { limit: name.charAt(0).toUpperCase() + name.slice(1), reason: own.join(" ") })];
  });
}
