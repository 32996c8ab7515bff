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

/**
 * GJ at a station, asked for by its index, N·mm². A section is solved when a station beside it is first asked for, so that
 * who reads a part of a ski waits for that part alone.
 *
 * @param longestStepMm between two solved stations; 0 = solve them all
 */
export function torsionAlong(
  build: SkiBuild,
  stations: readonly SectionStation[],
  longestStepMm = LONGEST_STEP_MM,
): (index: number) => number {
  const factor = build.twistFactor ?? 1;
  if (build.sections === "thin-skins") {
    return onceEach((i) => {
      const station = stations[i];
      return station ? factor * skinsTorsionalStiffness(localSection(build, station.xMm), station.coreMm) : 0;
    });
  }
  const solved = solvedAt(stations, longestStepMm);
  const ratio = onceEach((at) => ratioAt(build, stations[at]));
  return onceEach((i) => {
    const station = stations[i];
    if (!station) return 0;
    const next = Math.max(
      1,
      solved.findIndex((at) => at >= i),
    );
    const [from, to] = [solved[next - 1] ?? 0, solved[next] ?? solved[next - 1] ?? 0];
    const x0 = stations[from]?.xMm ?? station.xMm;
    const x1 = stations[to]?.xMm ?? station.xMm;
    const r1 = ratio(to);
    const here = x1 > x0 ? ratio(from) + ((r1 - ratio(from)) * (station.xMm - x0)) / (x1 - x0) : r1;
    return factor * station.thinStripTorsionNmm2 * here;
  });
}

/** Works each value out when it is first asked for, and keeps it. */
function onceEach(of: (index: number) => number): (index: number) => number {
  const known: number[] = [];
  return (index) => {
    known[index] ??= of(index);
    return known[index];
  };
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
