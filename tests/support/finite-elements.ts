/**
 * A straight beam by finite elements, to check the engine's beam against: cubic Hermite elements in bending, linear ones in
 * twist, consistent masses (R. D. Cook, D. S. Malkus, M. E. Plesha & R. J. Witt, Concepts and Applications of Finite Element
 * Analysis, 4th ed. 2002, from memory). Stiffness and mass are linear between stations and integrated exactly inside an
 * element by Gauss' rule. Nothing of lib/engine is used; matrices are ml-matrix's. mm, N, tonnes, s.
 */
import { CholeskyDecomposition, EigenvalueDecomposition, Matrix, solve } from "ml-matrix";

/** Values at a place; linear between places. Two places closer than a tenth of a millimetre make a step. */
export interface FemStation {
  readonly xMm: number;
  /** EI in bending, GJ in twist, N·mm². */
  readonly stiffnessNmm2: number;
  /** Per length: mass in t/mm in bending, rotary inertia in t·mm in twist. */
  readonly inertia: number;
}

/** Held at two places, or clamped at one. */
export type FemSupport =
  | { readonly kind: "simple"; readonly xMm: readonly [number, number] }
  | { readonly kind: "clamped"; readonly xMm: number };

const STEP_MM = 0.1;
const NODE_SPACING_MM = 8;
/** Gauss' points and weights on −1…1, exact to the seventh power: cubic × cubic × linear. */
const GAUSS = [
  [-0.8611363115940526, 0.3478548451374538],
  [-0.3399810435848563, 0.6521451548625461],
  [0.3399810435848563, 0.6521451548625461],
  [0.8611363115940526, 0.3478548451374538],
] as const;

/** Deflection at the load of one newton, mm. */
export function femUnitDeflectionMm(stations: readonly FemStation[], support: FemSupport, loadMm: number): number {
  const held = support.kind === "simple" ? support.xMm : [support.xMm];
  const nodes = nodesOf(stations, [...held, loadMm]);
  const { stiffness } = assembled(stations, nodes, hermite);
  const at = (x: number) => nodes.findIndex((node) => Math.abs(node - x) < 1e-9);
  const fixed = new Set(held.flatMap((x) => (support.kind === "simple" ? [2 * at(x)] : [2 * at(x), 2 * at(x) + 1])));
  const free = Array.from({ length: stiffness.rows }, (_, i) => i).filter((i) => !fixed.has(i));
  const force = Matrix.zeros(free.length, 1);
  const loaded = free.indexOf(2 * at(loadMm));
  force.set(loaded, 0, 1);
  return solve(stiffness.selection(free, free), force).get(loaded, 0);
}

/** First bending frequency of the free beam, Hz: the third root, after two of moving as a rigid body. */
export const femFreeBendingHz = (stations: readonly FemStation[]): number => freeHz(stations, hermite, 2);

/** First twisting frequency of the free beam, Hz: the second root. */
export const femFreeTorsionHz = (stations: readonly FemStation[]): number => freeHz(stations, linear, 1);

function freeHz(stations: readonly FemStation[], shape: Shape, rigid: number): number {
  const { stiffness, mass } = assembled(stations, nodesOf(stations, []), shape);
  // (K + σM)·v = (λ + σ)·M·v turned over, so that the lowest roots are the largest and come out most exact.
  const shift = (2 * Math.PI * 10) ** 2;
  const shifted = mirrored(Matrix.add(stiffness, Matrix.mul(mass, shift)));
  const lower = new CholeskyDecomposition(shifted).lowerTriangularMatrix;
  const half = solve(lower, mass);
  const whole = solve(lower, half.transpose());
  const roots = new EigenvalueDecomposition(mirrored(whole), { assumeSymmetric: true }).realEigenvalues
    .map((value) => 1 / value - shift)
    .sort((a, b) => a - b);
  return Math.sqrt(roots[rigid] ?? Number.NaN) / (2 * Math.PI);
}

/** Symmetric to the last digit: the decompositions look. */
const mirrored = (matrix: Matrix) => Matrix.mul(Matrix.add(matrix, matrix.transpose()), 0.5);

/** Second derivatives (or first, in twist) and values of an element's shape functions at u of 0…1. */
interface Shape {
  readonly perNode: number;
  readonly strain: (u: number, h: number) => readonly number[];
  readonly value: (u: number, h: number) => readonly number[];
}

const hermite: Shape = {
  perNode: 2,
  strain: (u, h) => [(12 * u - 6) / h ** 2, (6 * u - 4) / h, (6 - 12 * u) / h ** 2, (6 * u - 2) / h],
  value: (u, h) => [
    1 - 3 * u ** 2 + 2 * u ** 3,
    h * (u - 2 * u ** 2 + u ** 3),
    3 * u ** 2 - 2 * u ** 3,
    h * (u ** 3 - u ** 2),
  ],
};
const linear: Shape = { perNode: 1, strain: (_, h) => [-1 / h, 1 / h], value: (u) => [1 - u, u] };

/** Ends, places that must be nodes, and stations not too near to another. */
function nodesOf(stations: readonly FemStation[], must: readonly number[]): number[] {
  const from = stations[0]?.xMm ?? 0;
  const to = stations.at(-1)?.xMm ?? 0;
  const nodes = [...new Set([from, to, ...must])];
  for (const { xMm } of stations) {
    if (nodes.every((node) => Math.abs(node - xMm) >= NODE_SPACING_MM)) nodes.push(xMm);
  }
  return nodes.sort((a, b) => a - b);
}

function assembled(stations: readonly FemStation[], nodes: readonly number[], shape: Shape) {
  const size = nodes.length * shape.perNode;
  const stiffness = Matrix.zeros(size, size);
  const mass = Matrix.zeros(size, size);
  nodes.slice(1).forEach((right, k) => {
    const left = nodes[k] ?? right;
    for (const { xMm, weightMm, stiffnessNmm2, inertia } of gaussPlaces(stations, left, right)) {
      const u = (xMm - left) / (right - left);
      const strain = shape.strain(u, right - left);
      const value = shape.value(u, right - left);
      strain.forEach((si, i) => {
        strain.forEach((sj, j) => {
          const [row, column] = [k * shape.perNode + i, k * shape.perNode + j];
          stiffness.set(row, column, stiffness.get(row, column) + weightMm * stiffnessNmm2 * si * sj);
          const inertial = weightMm * inertia * (value[i] ?? 0) * (value[j] ?? 0);
          mass.set(row, column, mass.get(row, column) + inertial);
        });
      });
    }
  });
  return { stiffness, mass };
}

/** Gauss' places between two nodes, station by station, so that each stretch is integrated with its own straight line. */
function gaussPlaces(stations: readonly FemStation[], from: number, to: number) {
  return stations.slice(1).flatMap((right, i) => {
    const left = stations[i] ?? right;
    const [x0, x1] = [Math.max(from, left.xMm), Math.min(to, right.xMm)];
    if (!(x1 > x0)) return [];
    const isStep = right.xMm - left.xMm < STEP_MM;
    return GAUSS.map(([at, weight]) => {
      const xMm = (x0 + x1) / 2 + (at * (x1 - x0)) / 2;
      const share = isStep ? 0.5 : (xMm - left.xMm) / (right.xMm - left.xMm);
      return {
        xMm,
        weightMm: (weight * (x1 - x0)) / 2,
        stiffnessNmm2: left.stiffnessNmm2 + share * (right.stiffnessNmm2 - left.stiffnessNmm2),
        inertia: left.inertia + share * (right.inertia - left.inertia),
      };
    });
  });
}
