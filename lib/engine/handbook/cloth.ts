/**
 * Cured cloth: thickness, weights and the moduli of one ply from those of fibre and matrix. g/m², kg/m³, mm, MPa. Only checks
 * use it: it holds the catalogue's cloths against Kaw, Mechanics of Composite Materials, 2nd ed. 2006, ch. 3, and Hull,
 * Introduction to Composite Materials.
 */

/** Fibre volume fraction: strictly between 0 and 1. */
function requireFraction(name: string, value: number): void {
  if (!(value > 0 && value < 1)) throw new RangeError(`${name}: ${value} is not between 0 and 1`);
}

function requirePositive(values: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(values)) {
    if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name}: ${value} is not above 0`);
  }
}

/** Thickness of a cured ply, mm: areal weight over fibre density and fibre volume (after Hull, Introduction to Composite Materials). */
export function curedThicknessMm(arealWeightGM2: number, fibreDensityKgM3: number, fibreVolume: number): number {
  requirePositive({ arealWeightGM2, fibreDensityKgM3 });
  requireFraction("fibreVolume", fibreVolume);
  return arealWeightGM2 / (fibreDensityKgM3 * fibreVolume);
}

/** Densities of the two parts of a laminate. */
export interface Densities {
  readonly fibreKgM3: number;
  readonly matrixKgM3: number;
}

/** Density of the cured laminate, kg/m³. */
export function laminateDensityKgM3(fibreVolume: number, { fibreKgM3, matrixKgM3 }: Densities): number {
  requirePositive({ fibreKgM3, matrixKgM3 });
  requireFraction("fibreVolume", fibreVolume);
  return fibreVolume * fibreKgM3 + (1 - fibreVolume) * matrixKgM3;
}

/** Fibre weight fraction from the volume fraction: Wf = Vf·ρf/(Vf·ρf + Vm·ρm). */
export function fibreWeight(fibreVolume: number, densities: Densities): number {
  return (fibreVolume * densities.fibreKgM3) / laminateDensityKgM3(fibreVolume, densities);
}

/** Fibre volume fraction from the weight fraction. */
export function fibreVolume(fibreWeightFraction: number, { fibreKgM3, matrixKgM3 }: Densities): number {
  requirePositive({ fibreKgM3, matrixKgM3 });
  requireFraction("fibreWeightFraction", fibreWeightFraction);
  const fibre = fibreWeightFraction / fibreKgM3;
  return fibre / (fibre + (1 - fibreWeightFraction) / matrixKgM3);
}

/** Resin that stays in a cured ply, g/m²: t·(1 − Vf)·ρm. */
export function resinGM2(
  arealWeightGM2: number,
  fibreVolumeFraction: number,
  { fibreKgM3, matrixKgM3 }: Densities,
): number {
  return curedThicknessMm(arealWeightGM2, fibreKgM3, fibreVolumeFraction) * (1 - fibreVolumeFraction) * matrixKgM3;
}

/** Rule of mixtures, fibre and matrix side by side (E1, ν12): Pf·Vf + Pm·Vm (Kaw 2006, eq. 3.34). */
export function inParallel(fibre: number, matrix: number, fibreVolumeFraction: number): number {
  requireFraction("fibreVolume", fibreVolumeFraction);
  return fibre * fibreVolumeFraction + matrix * (1 - fibreVolumeFraction);
}

/** Inverse rule of mixtures, fibre and matrix one behind the other (a low estimate of E2, G12; Kaw 2006, eq. 3.40). */
export function inSeries(fibre: number, matrix: number, fibreVolumeFraction: number): number {
  requirePositive({ fibre, matrix });
  requireFraction("fibreVolume", fibreVolumeFraction);
  return 1 / (fibreVolumeFraction / fibre + (1 - fibreVolumeFraction) / matrix);
}

/**
 * Halpin–Tsai estimate P = Pm·(1 + ξηVf)/(1 − ηVf), η = (Pf/Pm − 1)/(Pf/Pm + ξ) (Kaw 2006, eq. 3.42–3.44).
 *
 * @param xi 2 for E2 and 1 for G12 of round fibres
 */
export function halpinTsai(fibre: number, matrix: number, fibreVolumeFraction: number, xi: number): number {
  requirePositive({ fibre, matrix, xi });
  requireFraction("fibreVolume", fibreVolumeFraction);
  const eta = (fibre / matrix - 1) / (fibre / matrix + xi);
  return (matrix * (1 + xi * eta * fibreVolumeFraction)) / (1 - eta * fibreVolumeFraction);
}

/** Shear modulus of an isotropic material, E/(2(1 + ν)). */
export function isotropicShear(modulus: number, poisson: number): number {
  return modulus / (2 * (1 + poisson));
}
