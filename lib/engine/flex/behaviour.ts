/**
 * What a built ski does as a whole, beside its springs: how it swings, twists and rings. Bare or finished, whichever flex is
 * handed in. Exact for stiffness and mass linear between stations, but for the frequencies (see frequencies.ts).
 */
import { interpolate } from "#engine/math";
import { type FreeFrequencies, freeFreeFrequencies } from "./frequencies";
import { pieceTurn } from "./piece";
import { springTestOf } from "./spring-test";
import type { FlexStation, SkiBuild, SkiFlex } from "./types";

export interface SkiBehaviour extends FreeFrequencies {
  /** About the vertical axis through the balance point, kg·m². */
  readonly polarMomentKgM2: number;
  /** The same through the mount line, about which the skier turns the ski. */
  readonly polarMomentAtMountKgM2: number;
  /** Torsional constants c_T = M_T/α of ISO 6289, held at the load point, torque at a support; N·m per degree. */
  readonly twistForebodyNmPerDeg: number;
  readonly twistAfterbodyNmPerDeg: number;
}

/** Everything of a ski beside its springs. Some milliseconds, nearly all for the frequencies: for pages, not for sliders. */
export function skiBehaviour(build: SkiBuild, flex: SkiFlex): SkiBehaviour {
  const { stations, massKg } = flex;
  const stationMassKg = massOf(stations);
  // Mass that no station carries (glue, resin at faces) is taken to lie like the rest.
  const heavier = massKg / stationMassKg;
  const free = freeFreeFrequencies(stations);
  const polarMomentKgM2 = heavier * polarMoment(stations, flex.balancePointMm);
  const { frontSupportMm, rearSupportMm, loadMm } = springTestOf(build);
  return {
    bendingHz: free.bendingHz / Math.sqrt(heavier),
    torsionHz: free.torsionHz / Math.sqrt(heavier),
    polarMomentKgM2,
    polarMomentAtMountKgM2: polarMomentKgM2 + massKg * ((flex.balancePointMm - build.mountFromTipMm) / 1000) ** 2,
    twistForebodyNmPerDeg: perDegree(twistPerNmm(stations, frontSupportMm, loadMm)),
    twistAfterbodyNmPerDeg: perDegree(twistPerNmm(stations, loadMm, rearSupportMm)),
  };
}

/** rad per N·mm → N·m per degree. */
const perDegree = (radPerNmm: number) => Math.PI / 180 / radPerNmm / 1000;

/** Turn of one end against the other under a unit end torque, ∫dx/GJ, rad per N·mm; exact for GJ linear between stations. */
export function twistPerNmm(stations: readonly FlexStation[], fromMm: number, toMm: number): number {
  let turn = 0;
  for (const [i, left] of stations.entries()) {
    const right = stations[i + 1];
    if (!right) break;
    const x0 = Math.max(left.xMm, fromMm);
    const x1 = Math.min(right.xMm, toMm);
    if (x1 <= x0) continue;
    // The piece's own two values: at a step the next piece has others.
    const xs = [left.xMm, right.xMm];
    const gs = [left.torsionalStiffnessNmm2, right.torsionalStiffnessNmm2];
    turn += pieceTurn(x1 - x0, 1, 1, interpolate(xs, gs, x0), interpolate(xs, gs, x1));
  }
  return turn;
}

/**
 * What the shop's twist bench reads, N·m per degree: torque over the turn between clamp and arm (c_TB of ISO 6289 where the arm
 * lies at the shoulder and the clamp at the mount line). Without a setting, between mount line and shoulder.
 */
export function twistBenchNmPerDeg(build: SkiBuild, { stations }: Pick<SkiFlex, "stations">): number {
  const { fromMm, toMm } = twistSpan(build);
  return perDegree(twistPerNmm(stations, fromMm, toMm));
}

/** Between the clamp and the arm, mm from the tip. */
export function twistSpan(build: SkiBuild): { readonly fromMm: number; readonly toMm: number } {
  const { frontSupportMm, loadMm } = springTestOf(build);
  const { clampMm, armAtMm } = build.twistTest ?? { clampMm: loadMm, armAtMm: frontSupportMm };
  return { fromMm: Math.min(clampMm, armAtMm), toMm: Math.max(clampMm, armAtMm) };
}

/** Turn of one place against another under a torque about the ski's axis, degrees. */
export function twistDeg(
  stations: readonly FlexStation[],
  span: { readonly fromMm: number; readonly toMm: number },
  torqueNmm: number,
): number {
  return (torqueNmm * twistPerNmm(stations, span.fromMm, span.toMm) * 180) / Math.PI;
}

function massOf(stations: readonly FlexStation[]): number {
  return overPieces(stations, (s) => s.massGPerM);
}

/** ∫ m((x − x0)² + w²/12) dx, kg·m²: a thin plate in its own plane (ISO 6003 names the quantity; formula: mechanics). */
function polarMoment(stations: readonly FlexStation[], aboutMm: number): number {
  return overPieces(stations, (s) => s.massGPerM * (((s.xMm - aboutMm) / 1000) ** 2 + (s.widthMm / 1000) ** 2 / 12));
}

/** Simpson's rule with the middle of each piece interpolated, from g/m over mm to kg. */
function overPieces(stations: readonly FlexStation[], of: (station: FlexStation) => number): number {
  let sum = 0;
  for (const [i, a] of stations.entries()) {
    const b = stations[i + 1];
    if (!b) break;
    const middle = {
      ...a,
      xMm: (a.xMm + b.xMm) / 2,
      widthMm: (a.widthMm + b.widthMm) / 2,
      massGPerM: (a.massGPerM + b.massGPerM) / 2,
    };
    sum += ((b.xMm - a.xMm) * (of(a) + 4 * of(middle) + of(b))) / 6;
  }
  return sum / 1e6;
}
