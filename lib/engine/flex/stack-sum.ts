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

/** EI about the neutral axis of a stack below, a core of `coreMm` and a stack above, N·mm². */
export function bendingStiffness(below: StackSum, core: WidthSum, coreMm: number, above: StackSum): number {
  const z = below.thicknessMm;
  const top = z + coreMm;
  const a = below.ea + core.ew * coreMm + above.ea;
  const s = below.es + core.ew * coreMm * (z + coreMm / 2) + above.es + above.ea * top;
  const i =
    below.ei +
    core.ew * coreMm * (z * z + z * coreMm + (coreMm * coreMm) / 3) +
    above.ei +
    2 * top * above.es +
    top * top * above.ea;
  return a > 0 ? i - (s * s) / a : 0;
}

/** GJ = 4b·(D66 − B66²/A66) of the same stack, N·mm². */
export function torsionalStiffness(below: StackSum, core: WidthSum, coreMm: number, above: StackSum): number {
  const z = below.thicknessMm;
  const top = z + coreMm;
  const a = below.ga + core.gw * coreMm + above.ga;
  const s = below.gs + core.gw * coreMm * (z + coreMm / 2) + above.gs + above.ga * top;
  const i =
    below.gi +
    core.gw * coreMm * (z * z + z * coreMm + (coreMm * coreMm) / 3) +
    above.gi +
    2 * top * above.gs +
    top * top * above.ga;
  return a > 0 ? 4 * (i - (s * s) / a) : 0;
}

/** Height of the neutral axis over the base, mm; the middle where there is no width. */
export function neutralAxis(below: StackSum, core: WidthSum, coreMm: number, above: StackSum): number {
  const z = below.thicknessMm;
  const a = below.ea + core.ew * coreMm + above.ea;
  const s = below.es + core.ew * coreMm * (z + coreMm / 2) + above.es + above.ea * (z + coreMm);
  return a > 0 ? s / a : (z + coreMm + above.thicknessMm) / 2;
}
