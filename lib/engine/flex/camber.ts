/**
 * A cambered ski on a flat hard bench under one load: which part lies down and how high the rest still stands. Beam elements on
 * a bench that only pushes; the set of touching nodes is found by repetition (primal-dual active sets, as in any textbook of
 * contact mechanics). A camber that begins without a kink rolls inward from its ends as soon as it is loaded, which two fixed
 * supports would miss.
 *
 * Small deflections, a rigid bench and no weight of the ski itself. With the nodes taken, heights are within 0.001 mm and the
 * closing force within 1 % of a mesh four times finer. The last hundredths are stiff: where the ski first touches beside its
 * mount line, a flat camber takes a tenth more force from 0.01 mm to the 0.002 mm that count here as closed, so closing forces
 * compare only with one and the same gap.
 */
import { profileHeightMm } from "#engine/geometry";
import { evenlySpaced, findRoot, solveBanded } from "#engine/math";
import { beamBand, BEAM_BAND as WIDTH } from "./beam-elements";
import type { FlexStation, SkiBuild, SkiFlex } from "./types";

const PIECES = 120;
/** A gap that counts as closed, mm: what a dial gauge just shows. */
const CLOSED_MM = 0.002;
/** Rounds in which all nodes may change at once; afterwards only the one that is most wrong, which cannot go in circles. */
const ROUNDS = 60;
const SINGLE_ROUNDS = 2000;

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

/** Force at the mount line that brings it down to a flat bench, N. @param pieces elements along the camber */
export function closingForceN(build: SkiBuild, { stations }: SkiFlex, pieces = PIECES): number {
  const beam = beamOf(build, stations);
  const left = (forceN: number) => pressedCamber(beam, forceN, pieces).heightMm - CLOSED_MM;
  if (left(0) <= 0) return 0;
  let highest = 50;
  while (left(highest) > 0 && highest < 1e5) highest *= 2;
  return findRoot(left, highest > 50 ? highest / 2 : 0, highest, 0.05);
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
export function pressedCamber(beam: CamberedBeam, forceN: number, pieces = PIECES): LoadedCamber {
  if (!(forceN >= 0)) throw new RangeError(`forceN: ${forceN} N is below 0`);
  const mesh = meshOf(beam, pieces);
  const { xs, rest, loadAt } = mesh;
  const { touching, down } = settle(mesh, forceN);
  const stands = xs.filter((_, i) => touching[i]);
  return {
    heightMm: Math.max(0, (rest[loadAt] ?? 0) - (down[loadAt] ?? 0)),
    standsFromMm: stands.findLast((x) => x <= beam.loadMm) ?? beam.fromMm,
    standsToMm: stands.find((x) => x >= beam.loadMm) ?? beam.toMm,
  };
}

interface Mesh {
  readonly xs: readonly number[];
  readonly rest: readonly number[];
  readonly loadAt: number;
  /** Of the beam alone, as solveBanded takes it. */
  readonly band: Float64Array;
}

function meshOf(beam: CamberedBeam, pieces: number): Mesh {
  const { fromMm, toMm, loadMm } = beam;
  const even = evenlySpaced(fromMm, toMm, pieces);
  const step = (toMm - fromMm) / pieces;
  const xs = [...even.filter((x) => Math.abs(x - loadMm) > step / 4), loadMm].sort((a, b) => a - b);
  return {
    xs,
    rest: xs.map((x) => Math.max(0, beam.restHeightMm(x))),
    loadAt: xs.indexOf(loadMm),
    band: beamBand(beam.stations, xs),
  };
}

interface Settled {
  readonly touching: readonly boolean[];
  /** How far every node goes down, mm. */
  readonly down: readonly number[];
}

/** Finds the nodes that stand on the bench: none presses through it, none is held down by it. */
function settle(mesh: Mesh, forceN: number): Settled {
  const { xs, rest, loadAt } = mesh;
  let touching = xs.map((_, i) => i === 0 || i === xs.length - 1);
  let state = solveWith(mesh, touching, forceN);
  for (let round = 0; round < SINGLE_ROUNDS; round++) {
    const wrong = xs.map((_, i) => {
      if (touching[i]) return Math.max(0, -(state.reactions[i] ?? 0)) / state.scaleN;
      return Math.max(0, (state.down[i] ?? 0) - (rest[i] ?? 0)) / state.scaleMm;
    });
    const worst = wrong.reduce((most, value) => Math.max(most, value), 0);
    if (worst <= 1e-10) break;
    const isAll = round < ROUNDS;
    const pick = wrong.indexOf(worst);
    const next = touching.map((is, i) => ((isAll ? (wrong[i] ?? 0) > 1e-10 : i === pick) ? !is : is));
    touching = standing(next, touching, loadAt);
    state = solveWith(mesh, touching, forceN);
  }
  return { touching, down: state.down };
}

/** One end always stands on either side of the load: without it the beam would have nothing to turn on. */
function standing(next: readonly boolean[], before: readonly boolean[], loadAt: number): boolean[] {
  const isAhead = next.some((is, i) => is && i <= loadAt);
  const isBehind = next.some((is, i) => is && i >= loadAt);
  return next.map((is, i) => is || ((i <= loadAt ? !isAhead : !isBehind) && before[i] === true));
}

interface Trial {
  readonly down: readonly number[];
  /** Of the bench, upwards, where a node touches. */
  readonly reactions: readonly number[];
  readonly scaleN: number;
  readonly scaleMm: number;
}

/** The beam with these nodes on the bench. */
function solveWith({ rest, loadAt, band }: Mesh, touching: readonly boolean[], forceN: number): Trial {
  const stride = WIDTH + 1;
  const size = 2 * rest.length;
  const load = new Float64Array(size);
  load[2 * loadAt] = forceN;
  const isFixed = (unknown: number) => unknown % 2 === 0 && touching[unknown / 2] === true;
  const matrix = band.slice();
  const solution = load.slice();
  for (let i = 0; i < size; i++) {
    for (let j = Math.max(0, i - WIDTH); j <= i; j++) {
      const entry = i * stride + WIDTH - i + j;
      const value = band[entry] ?? 0;
      const [fixedI, fixedJ] = [isFixed(i), isFixed(j)];
      if (i === j) {
        if (fixedI) matrix[entry] = 1;
        continue;
      }
      if (fixedI || fixedJ) matrix[entry] = 0;
      if (fixedJ && !fixedI) solution[i] = (solution[i] ?? 0) - value * (rest[j / 2] ?? 0);
      if (fixedI && !fixedJ) solution[j] = (solution[j] ?? 0) - value * (rest[i / 2] ?? 0);
    }
  }
  for (let i = 0; i < size; i += 2) if (isFixed(i)) solution[i] = rest[i / 2] ?? 0;
  solveBanded(matrix, solution, WIDTH);
  const reactions = rest.map((_, node) => (isFixed(2 * node) ? reactionAt(band, solution, load, 2 * node) : 0));
  return {
    reactions,
    down: rest.map((_, node) => solution[2 * node] ?? 0),
    scaleN: Math.max(1e-9, ...reactions.map(Math.abs)),
    scaleMm: Math.max(1e-9, ...rest),
  };
}

/** Load less K·w: what holds this unknown from below. */
function reactionAt(band: Float64Array, w: Float64Array, load: Float64Array, unknown: number): number {
  const stride = WIDTH + 1;
  let sum = load[unknown] ?? 0;
  for (let j = Math.max(0, unknown - WIDTH); j < Math.min(w.length, unknown + WIDTH + 1); j++) {
    const [row, column] = j <= unknown ? [unknown, j] : [j, unknown];
    sum -= (band[row * stride + WIDTH - row + column] ?? 0) * (w[j] ?? 0);
  }
  return sum;
}
