"use client";
/** What the solver made of the core: how thick, what flex it reaches, what held it back, what the flex weighs. */
import type { EngineCatalog } from "#engine/assessment";
import { massOfFlexG, type PairSpec, solveSpec } from "#engine/configuration";
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
  const solved = solveSpec(spec, catalog.build);
  const weighs = massOfFlexG(spec, catalog.build);
  if (!solved.ok || !weighs.ok) return null;
  const { core, build } = solved.value;
  const w = words.core.solved;
  const thickMm = interpolate(
    core.profile.stations.map((station) => station.xMm),
    core.profile.stations.map((station) => station.thicknessMm),
    build.mountFromTipMm,
  );
  const limits = core.limitedBy.map((limit) => w.limits[limit]);
  return (
    <p className="max-w-measure text-sm text-pencil">
      {fill(w.line, {
        mm: textForPeople(thickMm, 2),
        achieved: textForPeople(core.achievedRatio, 2),
        wanted: textForPeople(core.wantedRatio, 2),
      })}{" "}
      {Math.abs(weighs.value) >= 1 ? fill(w.weighs, { mass: signedText(weighs.value) }) : w.weighsNothing}{" "}
      {limits.length > 0 ? fill(w.limited, { limits: limits.join(", ") }) : w.free}
    </p>
  );
}
