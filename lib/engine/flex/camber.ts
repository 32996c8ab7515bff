/**
 * A cambered ski on a flat hard bench under one load: which part lies down and how high the rest still stands. Beam elements
 * with the bench as stiff springs that only push; the set of touching nodes is found by repetition (penalty and active set,
 * as in any textbook of contact mechanics). A camber that begins without a kink lies down from its ends inward as soon as it
 * is loaded, which two fixed supports would miss.
 *
 * Small deflections, a rigid bench and no weight of the ski itself. Heights are within 2 % of the camber with the nodes taken.
 */
import { profileHeightMm } from "#engine/geometry";
import { evenlySpaced, findRoot, interpolate, solveLinear } from "#engine/math";
import type { FlexStation, SkiBuild, SkiFlex } from "./types";

const NODES = 33;
const ROUNDS = 40;
/** Stiffness of the bench over that of the ski as a whole: it gives way by less than a hundredth of the deflection. */
const BENCH_STIFFER = 2000;

export interface LoadedCamber {
  /** Height of the running surface at the load, mm. */
  readonly heightMm: number;
  /** Where the ski stands on the bench nearest to the load, ahead and behind, mm from the tip. */
  readonly standsFromMm: number;
  readonly standsToMm: number;
}

export interface CamberedBeam {
  readonly stations: readonly Pick<FlexStation, "xMm" | "bendingStiffnessNmm2">[];
  /** Between these the beam can touch the bench; what lies outside is unloaded. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly loadMm: number;
  /** Height above the bench, unloaded. */
  readonly restHeightMm: (xMm: number) => number;
}

/** Camber that is left at the mount line under a force there. @throws RangeError when the force is below 0 */
export function camberUnderLoad(build: SkiBuild, { stations }: SkiFlex, forceN: number): LoadedCamber {
  return pressedCamber(beamOf(build, stations), forceN);
}

/** Force at the mount line that brings it down to a flat bench, N. */
export function closingForceN(build: SkiBuild, { stations }: SkiFlex): number {
  const beam = beamOf(build, stations);
  const left = (forceN: number) => pressedCamber(beam, forceN).heightMm - 0.01;
  if (left(0) <= 0) return 0;
  let highest = 50;
  while (left(highest) > 0 && highest < 1e5) highest *= 2;
  return findRoot(left, 0, highest, 0.1);
}

function beamOf({ shape, mountFromTipMm }: SkiBuild, stations: readonly FlexStation[]): CamberedBeam {
  return {
    stations,
    fromMm: shape.tipTangentMm,
    toMm: shape.tailTangentMm,
    loadMm: mountFromTipMm,
    restHeightMm: (xMm) => profileHeightMm(shape, xMm, "free"),
  };
}

/** The general form: any beam with any rest shape. */
export function pressedCamber(beam: CamberedBeam, forceN: number): LoadedCamber {
  if (!(forceN >= 0)) throw new RangeError(`forceN: ${forceN} N is below 0`);
  const xs = nodesOf(beam);
  const rest = xs.map((x) => Math.max(0, beam.restHeightMm(x)));
  const loadAt = xs.indexOf(beam.loadMm);
  const stiffness = beamMatrix(beam, xs);
  const bench = BENCH_STIFFER * middleStiffness(beam);
  let touching = xs.map((_, i) => i === 0 || i === xs.length - 1);
  let down: readonly number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    down = settle(stiffness, { rest, touching, bench, loadAt, forceN });
    const next = xs.map((_, i) => (down[i] ?? 0) > (rest[i] ?? 0));
    if (next.every((is, i) => is === touching[i])) break;
    // One end always stands: without it the beam would have nothing to turn on.
    touching = next.filter(Boolean).length >= 2 ? next : touching.map((is, i) => is || next[i] === true);
  }
  const stands = xs.filter((_, i) => touching[i]);
  return {
    heightMm: Math.max(0, (rest[loadAt] ?? 0) - (down[loadAt] ?? 0)),
    standsFromMm: stands.findLast((x) => x <= beam.loadMm) ?? beam.fromMm,
    standsToMm: stands.find((x) => x >= beam.loadMm) ?? beam.toMm,
  };
}

function nodesOf({ fromMm, toMm, loadMm }: CamberedBeam): number[] {
  const even = evenlySpaced(fromMm, toMm, NODES - 1);
  const step = (toMm - fromMm) / (NODES - 1);
  return [...even.filter((x) => Math.abs(x - loadMm) > step / 4), loadMm].sort((a, b) => a - b);
}

/** 48·EI/L³ at the load, N/mm: the size of the beam's own stiffness. */
function middleStiffness({ stations, fromMm, toMm, loadMm }: CamberedBeam): number {
  return (48 * stiffnessAt(stations, loadMm)) / (toMm - fromMm) ** 3;
}

function stiffnessAt(stations: CamberedBeam["stations"], xMm: number): number {
  return interpolate(
    stations.map((station) => station.xMm),
    stations.map((station) => station.bendingStiffnessNmm2),
    xMm,
  );
}

/** Hermite beam elements, EI linear over each; unknowns w, w′ node by node. */
function beamMatrix({ stations }: CamberedBeam, xs: readonly number[]): number[][] {
  const size = 2 * xs.length;
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const at = xs.map((x) => stiffnessAt(stations, x));
  for (let e = 0; e + 1 < xs.length; e++) {
    const h = (xs[e + 1] ?? 0) - (xs[e] ?? 0);
    const element = elementMatrix(h, at[e] ?? 0, at[e + 1] ?? 0);
    element.forEach((row, i) => {
      row.forEach((value, j) => {
        const target = matrix[2 * e + i];
        if (target) target[2 * e + j] = (target[2 * e + j] ?? 0) + value;
      });
    });
  }
  return matrix;
}

/** ∫ B ᵀ·EI·B dx with EI from e0 to e1, exact (R. D. Cook et al., Concepts and Applications of Finite Element Analysis). */
function elementMatrix(h: number, e0: number, e1: number): number[][] {
  const s = e0 + e1;
  const [d0, d1] = [2 * e0 + e1, e0 + 2 * e1];
  const [k, m] = [6 * s, h * h];
  return [
    [k, 2 * h * d0, -k, 2 * h * d1],
    [2 * h * d0, m * (3 * e0 + e1), -2 * h * d0, m * s],
    [-k, -2 * h * d0, k, -2 * h * d1],
    [2 * h * d1, m * s, -2 * h * d1, m * (e0 + 3 * e1)],
  ].map((row) => row.map((value) => value / h ** 3));
}

interface Contact {
  readonly rest: readonly number[];
  readonly touching: readonly boolean[];
  readonly bench: number;
  readonly loadAt: number;
  readonly forceN: number;
}

/** How far every node goes down. */
function settle(beam: readonly number[][], { rest, touching, bench, loadAt, forceN }: Contact): number[] {
  const matrix = beam.map((row) => [...row]);
  const right = beam.map(() => [0]);
  touching.forEach((is, i) => {
    const row = matrix[2 * i];
    if (!is || !row) return;
    row[2 * i] = (row[2 * i] ?? 0) + bench;
    right[2 * i] = [bench * (rest[i] ?? 0)];
  });
  right[2 * loadAt] = [(right[2 * loadAt]?.[0] ?? 0) + forceN];
  return solveLinear(matrix, right)
    .filter((_, i) => i % 2 === 0)
    .map(([value]) => value ?? 0);
}
