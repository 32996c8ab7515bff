/**
 * GJ along a ski. The section solver is asked where the section changes suddenly and every few centimetres between; at the
 * other stations its ratio to the thin strip's 4b/d66, which every station knows, is taken to run straight. The strip's value
 * follows thickness and width by itself, its ratio hardly moves: within 1 % of solving every station at the tips, and the twist of a half within 0.1 %.
 */
import { torsionalStiffnessNmm2 } from "#engine/torsion";
import { localSection, type SectionStation, skinsTorsionalStiffness } from "./local-section";
import { twistSectionAt } from "./twist-section";
import type { SkiBuild } from "./types";

const LONGEST_STEP_MM = 45;
/** A station is solved when width or core have changed by this share since the last. */
const CHANGE = 0.06;
/** Stations nearer than this are the two sides of a sudden change. */
const SUDDEN_MM = 0.1;

/** GJ at every station, N·mm². @param longestStepMm between two solved stations; 0 = solve them all */
export function torsionAlong(
  build: SkiBuild,
  stations: readonly SectionStation[],
  longestStepMm = LONGEST_STEP_MM,
): readonly number[] {
  const factor = build.twistFactor ?? 1;
  if (build.sections === "thin-skins") {
    return stations.map(({ xMm, coreMm }) => factor * skinsTorsionalStiffness(localSection(build, xMm), coreMm));
  }
  const solved = solvedAt(stations, longestStepMm);
  const ratios = solved.map((at) => ratioAt(build, stations[at]));
  let next = 1;
  return stations.map(({ xMm, thinStripTorsionNmm2 }, i) => {
    while (next < solved.length - 1 && (solved[next] ?? 0) < i) next++;
    const [from, to] = [solved[next - 1] ?? 0, solved[next] ?? 0];
    const [r0, r1] = [ratios[next - 1] ?? 0, ratios[next] ?? 0];
    const x0 = stations[from]?.xMm ?? xMm;
    const x1 = stations[to]?.xMm ?? xMm;
    const ratio = x1 > x0 ? r0 + ((r1 - r0) * (xMm - x0)) / (x1 - x0) : r1;
    return factor * thinStripTorsionNmm2 * ratio;
  });
}

function ratioAt(build: SkiBuild, station: SectionStation | undefined): number {
  if (!station || !(station.thinStripTorsionNmm2 > 0)) return 0;
  return torsionalStiffnessNmm2(twistSectionAt(build, station.xMm, station.coreMm)) / station.thinStripTorsionNmm2;
}

/** Which stations are solved: ends, both sides of every step, and others as width, core or distance ask. */
function solvedAt(stations: readonly SectionStation[], longestStepMm: number): readonly number[] {
  const solved: number[] = [];
  stations.forEach((station, i) => {
    const last = stations[solved.at(-1) ?? -1];
    const before = stations[i - 1];
    const after = stations[i + 1];
    const isStep = (a: SectionStation | undefined, b: SectionStation | undefined) =>
      a !== undefined && b !== undefined && b.xMm - a.xMm < SUDDEN_MM;
    const differs = (key: "widthMm" | "coreMm") =>
      last !== undefined && Math.abs(station[key] - last[key]) > CHANGE * Math.max(station[key], last[key]);
    // A station is also solved when leaving it out would leap too far to the next.
    const isFar = last !== undefined && after !== undefined && after.xMm - last.xMm > longestStepMm;
    if (
      !last ||
      !after ||
      isFar ||
      isStep(before, station) ||
      isStep(station, after) ||
      differs("widthMm") ||
      differs("coreMm")
    )
      solved.push(i);
  });
  return solved;
}
