/**
 * Running sums of a stack of layers: the fast road to a section whose parts are given by moduli alone. It gives what
 * laminate's `sectionConstants` gives for such parts (Q11 = E, Q66 = G, Q12 = 0), without building matrices.
 * Per unit of modulus: a = ∫ w dz, s = ∫ w·z dz, i = ∫ w·z² dz, z from the bottom of the stack.
 */
export class StackSum {
  thicknessMm = 0;
  ea = 0;
  es = 0;
  ei = 0;
  ga = 0;
  gs = 0;
  gi = 0;
  /** g per metre of length. */
  massGPerM = 0;

  /** Adds a layer on top: its thickness and its E·w, G·w (N/mm) and ρ·w (kg/m³·mm). */
  add(thicknessMm: number, ew: number, gw: number, densityWidth: number): void {
    const z = this.thicknessMm;
    const s = thicknessMm * (z + thicknessMm / 2);
    const i = thicknessMm * (z * z + z * thicknessMm + (thicknessMm * thicknessMm) / 3);
    this.ea += ew * thicknessMm;
    this.es += ew * s;
    this.ei += ew * i;
    this.ga += gw * thicknessMm;
    this.gs += gw * s;
    this.gi += gw * i;
    this.massGPerM += (densityWidth * thicknessMm) / 1000;
    this.thicknessMm = z + thicknessMm;
  }
}

/** A part's share of a layer: E·w, G·w, ρ·w summed over its width. */
export interface WidthSum {
  ew: number;
  gw: number;
  densityWidth: number;
}

/** ∫ m dA, ∫ m·z dA and ∫ m·z² dA of a whole section for one modulus m; z from the base. */
export interface StackMoments {
  readonly a: number;
  readonly s: number;
  readonly i: number;
}

/** Young's moments of a stack below, a core of `coreMm` and a stack above. */
export function youngMoments(below: StackSum, core: WidthSum, coreMm: number, above: StackSum): StackMoments {
  const z = below.thicknessMm;
  const top = z + coreMm;
  const wood = core.ew * coreMm;
  return {
    a: below.ea + wood + above.ea,
    s: below.es + wood * (z + coreMm / 2) + above.es + above.ea * top,
    i: below.ei + wood * (z * top + (coreMm * coreMm) / 3) + above.ei + 2 * top * above.es + top * top * above.ea,
  };
}

/** Shear moments of the same. */
export function shearMoments(below: StackSum, core: WidthSum, coreMm: number, above: StackSum): StackMoments {
  const z = below.thicknessMm;
  const top = z + coreMm;
  const wood = core.gw * coreMm;
  return {
    a: below.ga + wood + above.ga,
    s: below.gs + wood * (z + coreMm / 2) + above.gs + above.ga * top,
    i: below.gi + wood * (z * top + (coreMm * coreMm) / 3) + above.gi + 2 * top * above.gs + top * top * above.ga,
  };
}

/** Second moment about the own neutral axis: EI from Young's moments; ×4 it is GJ from shear moments (4b/d66). */
export function aboutOwnAxis({ a, s, i }: StackMoments): number {
  return a > 0 ? i - (s * s) / a : 0;
}
