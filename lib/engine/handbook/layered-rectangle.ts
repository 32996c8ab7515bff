/**
 * Saint-Venant torsion of a rectangle of stacked layers, each with its own shear modulus, by the stress function Φ (L. Prandtl
 * 1903; S. P. Timoshenko & J. N. Goodier, Theory of Elasticity, art. 109, from memory, layer by layer; own derivation). Within
 * a layer (Φ,yy + Φ,zz)/G = −2, Φ = 0 around, Φ and Φ,z/G continuous between layers. With Φ = Σ Z_n(z)·sin(nπy/b), n odd,
 * and k = nπ/b every layer has Z = P + homogeneous, P = 8G/(nπk²), and the values between layers solve a tridiagonal system.
 * GJ = 2∫Φ dA. Exact but for the number of terms, and by another road than finite elements of the warping. Only checks use it.
 */

export interface RectangleLayer {
  readonly thicknessMm: number;
  readonly shearModulusMpa: number;
}

const TERMS = 1500;

/** GJ of layers of one width, N·mm². @throws RangeError when a size or modulus is not above 0 */
export function layeredRectangleTorsionNmm2(widthMm: number, layers: readonly RectangleLayer[]): number {
  const isSound = layers.every(({ thicknessMm, shearModulusMpa }) => thicknessMm > 0 && shearModulusMpa > 0);
  if (!(widthMm > 0 && layers.length > 0 && isSound))
    throw new RangeError("width, thickness and modulus must be above 0");
  let sum = 0;
  for (let n = 1; n < 2 * TERMS; n += 2) sum += (2 * 2 * widthMm * areaOfTerm(n, widthMm, layers)) / (n * Math.PI);
  return sum;
}

/** ∫ Z_n dz. */
function areaOfTerm(n: number, widthMm: number, layers: readonly RectangleLayer[]): number {
  const k = (n * Math.PI) / widthMm;
  const rows = layers.map(({ thicknessMm: t, shearModulusMpa: g }) => {
    // coth and 1/sinh without overflow.
    const e = Math.exp(-k * t);
    const full = (1 + e * e) / (1 - e * e);
    const cross = (2 * e) / (1 - e * e);
    return { t, g, full: (k * full) / g, cross: (k * cross) / g, p: (8 * g) / (n * Math.PI * k * k) };
  });
  // Unknown values at the inner faces by Thomas' algorithm; 0 at bottom and top.
  const inner = rows.length - 1;
  const pivots: number[] = [];
  const rights: number[] = [];
  for (let i = 0; i < inner; i++) {
    const [a, b] = [rows[i], rows[i + 1]];
    if (!a || !b) break;
    const load = a.p * (a.full - a.cross) + b.p * (b.full - b.cross);
    const before = pivots[i - 1];
    const ratio = before === undefined ? 0 : a.cross / before;
    pivots.push(a.full + b.full - ratio * a.cross);
    rights.push(load + ratio * (rights[i - 1] ?? 0));
  }
  const values = new Array<number>(rows.length + 1).fill(0);
  for (let i = inner - 1; i >= 0; i--) {
    values[i + 1] = ((rights[i] ?? 0) + (rows[i + 1]?.cross ?? 0) * (values[i + 2] ?? 0)) / (pivots[i] ?? 1);
  }
  return rows.reduce((area, { t, p }, i) => {
    const ends = (values[i] ?? 0) + (values[i + 1] ?? 0) - 2 * p;
    return area + p * t + (ends * Math.tanh((k * t) / 2)) / k;
  }, 0);
}
