/**
 * Running sums of a stack of layers: the fast road to a section whose parts lie along the ski's axes. It gives what laminate's
 * `sectionConstants` gives for such parts, without building matrices.
 * Per unit of modulus: a = ∫ w dz, s = ∫ w·z dz, i = ∫ w·z² dz, z from the bottom of the stack.
 */

/** A layer's moduli times width, N/mm, and density times width, kg/m³·mm. */
export interface WidthSum {
  readonly ew: number;
  readonly gw: number;
  readonly densityWidth: number;
  /** Reduced stiffnesses Q11, Q12 and Q22 of a plate that bends both ways; Q11 = E where a part is given by moduli alone. */
  readonly q11w: number;
  readonly q12w: number;
  readonly q22w: number;
}

/** ∫ m dA, ∫ m·z dA and ∫ m·z² dA of a whole section for one modulus m; z from the base. */
export interface StackMoments {
  readonly a: number;
  readonly s: number;
  readonly i: number;
}

export type Modulus = "young" | "shear" | "q11" | "q12" | "q22";

class Moments implements StackMoments {
  a = 0;
  s = 0;
  i = 0;

  add(perWidth: number, a: number, s: number, i: number): void {
    this.a += perWidth * a;
    this.s += perWidth * s;
    this.i += perWidth * i;
  }
}

export class StackSum {
  thicknessMm = 0;
  readonly young = new Moments();
  readonly shear = new Moments();
  readonly q11 = new Moments();
  readonly q12 = new Moments();
  readonly q22 = new Moments();
  /** g per metre of length. */
  massGPerM = 0;

  /** Adds a layer on top. */
  add(thicknessMm: number, { ew, gw, densityWidth, q11w, q12w, q22w }: WidthSum): void {
    const z = this.thicknessMm;
    const s = thicknessMm * (z + thicknessMm / 2);
    const i = thicknessMm * (z * z + z * thicknessMm + (thicknessMm * thicknessMm) / 3);
    this.young.add(ew, thicknessMm, s, i);
    this.shear.add(gw, thicknessMm, s, i);
    this.q11.add(q11w, thicknessMm, s, i);
    this.q12.add(q12w, thicknessMm, s, i);
    this.q22.add(q22w, thicknessMm, s, i);
    this.massGPerM += (densityWidth * thicknessMm) / 1000;
    this.thicknessMm = z + thicknessMm;
  }
}

/** A stack below, a core of `coreMm` and a stack above. */
export interface WholeStack {
  readonly below: StackSum;
  readonly core: WidthSum;
  readonly above: StackSum;
}

/** Moments of the whole for one modulus. */
export function momentsOfWhole({ below, core, above }: WholeStack, coreMm: number, modulus: Modulus): StackMoments {
  const z = below.thicknessMm;
  const top = z + coreMm;
  const wood = perWidth(core, modulus) * coreMm;
  const [under, over] = [below[modulus], above[modulus]];
  return {
    a: under.a + wood + over.a,
    s: under.s + wood * (z + coreMm / 2) + over.s + over.a * top,
    i: under.i + wood * (z * top + (coreMm * coreMm) / 3) + over.i + 2 * top * over.s + top * top * over.a,
  };
}

function perWidth(core: WidthSum, modulus: Modulus): number {
  if (modulus === "young") return core.ew;
  if (modulus === "shear") return core.gw;
  if (modulus === "q11") return core.q11w;
  return modulus === "q12" ? core.q12w : core.q22w;
}

/** Second moment about the own neutral axis: EI from Young's moments; ×4 it is GJ of a thin strip from shear moments (4b/d66). */
export function aboutOwnAxis({ a, s, i }: StackMoments): number {
  return a > 0 ? i - (s * s) / a : 0;
}

/**
 * b/d11 of the inverted [A B; B D], free to contract across the ski: what is left of D11 after stretch along, stretch across
 * and bend across have been let go one after another (Gauss). N·mm².
 */
export function freePlateBending(q11: StackMoments, q12: StackMoments, q22: StackMoments): number {
  if (!(q11.a > 0)) return 0;
  // Unknowns in order: stretch along, stretch across, bend across; last the bend along.
  const along = 1 / q11.a;
  const acrossA = q22.a - q12.a * q12.a * along;
  const acrossB = q22.s - q12.a * q12.s * along;
  const acrossD = q22.i - q12.s * q12.s * along;
  const stretchBend = q12.s - q12.a * q11.s * along;
  const bendBend = q12.i - q12.s * q11.s * along;
  const bend = q11.i - q11.s * q11.s * along;
  const ratio = acrossB / acrossA;
  const lastD = acrossD - acrossB * ratio;
  const lastBend = bendBend - stretchBend * ratio;
  return bend - (stretchBend * stretchBend) / acrossA - (lastBend * lastBend) / lastD;
}
