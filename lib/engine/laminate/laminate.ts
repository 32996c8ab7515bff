/**
 * Classical lamination theory of thin plates, as in R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, ch. 2 and 4
 * (the same equations in A. K. Kaw, Mechanics of Composite Materials, 2nd ed. 2006). Plane stress, perfect bond, no
 * transverse shear.
 *
 * Validity: thin plates (length and width above ten thicknesses), small strains, away from free edges by about one
 * thickness. Error: none beyond rounding against the book's worked examples; against real cloths as large as that of the ply
 * constants, 5–10 %, which learning from measured pairs takes out.
 */
import { invert, type Matrix } from "#engine/math";
import { radians } from "#engine/units";
import type { Lamina, LaminateConstants, Ply, PlyMaterial } from "./types";

/** Entries of a symmetric 3×3 matrix: 11, 12, 16, 22, 26, 66. */
export type Stiffness = readonly [number, number, number, number, number, number];

/** @throws RangeError when the constants are not those of a stable material (Jones eq. 2.41: |ν12| < √(E1/E2)). */
function checkLamina({ e1Mpa, e2Mpa, g12Mpa, nu12 }: Lamina): void {
  for (const [name, value] of Object.entries({ e1Mpa, e2Mpa, g12Mpa })) {
    if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name}: ${value} MPa is not above 0`);
  }
  const limit = Math.sqrt(e1Mpa / e2Mpa);
  if (!(Math.abs(nu12) < limit)) throw new RangeError(`nu12: ${nu12} is not within ±${limit}, the root of e1Mpa/e2Mpa`);
}

/** Reduced stiffness Q of a lamina in its own axes, MPa (Jones eq. 2.66). @throws RangeError for an impossible lamina. */
export function reducedStiffness(lamina: Lamina): Stiffness {
  checkLamina(lamina);
  const { e1Mpa, e2Mpa, g12Mpa, nu12 } = lamina;
  const scale = 1 - (nu12 * nu12 * e2Mpa) / e1Mpa;
  return [e1Mpa / scale, (nu12 * e2Mpa) / scale, 0, e2Mpa / scale, 0, g12Mpa];
}

/** Stiffness Q̄ of a ply in the axes of the laminate, MPa (Jones eq. 2.80). */
export function transformedStiffness(ply: PlyMaterial): Stiffness {
  const [q11, q12, , q22, , q66] = reducedStiffness(ply);
  const angle = radians(ply.angleDeg);
  const m = Math.cos(angle);
  const n = Math.sin(angle);
  const m2 = m * m;
  const n2 = n * n;
  const shear = q12 + 2 * q66;
  return [
    q11 * m2 * m2 + 2 * shear * m2 * n2 + q22 * n2 * n2,
    (q11 + q22 - 4 * q66) * m2 * n2 + q12 * (m2 * m2 + n2 * n2),
    (q11 - q12 - 2 * q66) * m2 * m * n + (q12 - q22 + 2 * q66) * m * n2 * n,
    q11 * n2 * n2 + 2 * shear * m2 * n2 + q22 * m2 * m2,
    (q11 - q12 - 2 * q66) * m * n2 * n + (q12 - q22 + 2 * q66) * m2 * m * n,
    (q11 + q22 - 2 * q12 - 2 * q66) * m2 * n2 + q66 * (m2 * m2 + n2 * n2),
  ];
}

/** Extensional, coupling and bending stiffness about the mid-plane: N/mm, N, N·mm. */
export interface PlateStiffness {
  readonly a: Matrix;
  readonly b: Matrix;
  readonly d: Matrix;
  readonly thicknessMm: number;
}

/** Sums layers from the bottom face up into A, B and D (Jones eq. 4.22–4.24). */
export function plateStiffness(
  layers: readonly { readonly thicknessMm: number; readonly stiffness: Stiffness }[],
): PlateStiffness {
  if (layers.length === 0) throw new RangeError("layers: there must be at least one");
  layers.forEach(({ thicknessMm }, i) => {
    if (!(thicknessMm > 0 && Number.isFinite(thicknessMm))) {
      throw new RangeError(`layer ${i}: thicknessMm ${thicknessMm} is not above 0`);
    }
  });
  const thicknessMm = layers.reduce((sum, layer) => sum + layer.thicknessMm, 0);
  const sums = [new Array<number>(6).fill(0), new Array<number>(6).fill(0), new Array<number>(6).fill(0)] as const;
  let bottom = -thicknessMm / 2;
  for (const layer of layers) {
    const top = bottom + layer.thicknessMm;
    const weights = [top - bottom, (top ** 2 - bottom ** 2) / 2, (top ** 3 - bottom ** 3) / 3] as const;
    sums.forEach((sum, power) => {
      layer.stiffness.forEach((q, i) => {
        sum[i] = (sum[i] ?? 0) + q * (weights[power] ?? 0);
      });
    });
    bottom = top;
  }
  return { a: full(sums[0]), b: full(sums[1]), d: full(sums[2]), thicknessMm };
}

function full([s11 = 0, s12 = 0, s16 = 0, s22 = 0, s26 = 0, s66 = 0]: readonly number[]): Matrix {
  return [
    [s11, s12, s16],
    [s12, s22, s26],
    [s16, s26, s66],
  ];
}

/** Compliances of a plate: the blocks a, b, d of the inverse of the 6×6 [A B; B D] (Jones eq. 4.87; Kaw eq. 4.59). */
export interface PlateCompliance {
  readonly a: Matrix;
  readonly b: Matrix;
  readonly d: Matrix;
}

export function plateCompliance({ a, b, d }: Pick<PlateStiffness, "a" | "b" | "d">): PlateCompliance {
  const rows = [0, 1, 2];
  const inverse = invert([
    ...rows.map((i) => [...(a[i] ?? []), ...(b[i] ?? [])]),
    ...rows.map((i) => [...(b[i] ?? []), ...(d[i] ?? [])]),
  ]);
  const block = (row: number, column: number) =>
    inverse.slice(row, row + 3).map((values) => values.slice(column, column + 3));
  return { a: block(0, 0), b: block(0, 3), d: block(3, 3) };
}

/**
 * Everything the `laminate` verb reports, from plies listed from the bottom face up. Membrane constants are 1/(h·a),
 * flexural ones 12/(h³·d) of the inverted 6×6, so they are those of a free laminate even when B is not zero.
 *
 * @throws RangeError naming the ply for an impossible constant or thickness
 */
export function laminateConstants(plies: readonly Ply[]): LaminateConstants {
  const stiffness = plateStiffness(
    plies.map((ply) => ({ thicknessMm: ply.thicknessMm, stiffness: transformedStiffness(ply) })),
  );
  const { a, b, d } = plateCompliance(stiffness);
  const h = stiffness.thicknessMm;
  const per = (matrix: Matrix, column: number) => (matrix[0]?.[column] ?? Number.NaN) / (matrix[0]?.[0] ?? Number.NaN);
  const membrane = (i: number) => 1 / (h * (a[i]?.[i] ?? Number.NaN));
  const flexural = (i: number) => 12 / (h ** 3 * (d[i]?.[i] ?? Number.NaN));
  return {
    aNPerMm: stiffness.a,
    bN: stiffness.b,
    dNmm: stiffness.d,
    exMpa: membrane(0),
    eyMpa: membrane(1),
    gxyMpa: membrane(2),
    nuXy: -(a[0]?.[1] ?? Number.NaN) / (a[0]?.[0] ?? Number.NaN),
    flexExMpa: flexural(0),
    flexEyMpa: flexural(1),
    flexGxyMpa: flexural(2),
    thicknessMm: h,
    aComplianceMmPerN: a,
    bCompliancePerN: b,
    dCompliancePerNmm: d,
    shearPerStretch: per(a, 2),
    twistPerBend: per(d, 2),
  };
}
