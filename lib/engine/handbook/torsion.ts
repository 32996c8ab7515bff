/**
 * Torsion of simple cross-sections, to judge where the thin-strip value 4b/d66 holds. Saint-Venant torsion of prismatic bars,
 * free to warp. The rectangle's series is exact to 1e-9; the closed box is exact for walls thin against the box. Only checks
 * use it: it holds the torsion of the laminate room against Timoshenko & Goodier, Theory of Elasticity, and Bredt.
 */

/**
 * Saint-Venant torsion constant of a solid rectangle, mm⁴, by the exact series (S. P. Timoshenko & J. N. Goodier, Theory of
 * Elasticity): J = b·h³/3·[1 − 192 h/(π⁵ b)·Σ tanh(nπb/2h)/n⁵, n odd].
 *
 * @throws RangeError when a side is not above 0
 */
export function rectangleTorsionConstantMm4(widthMm: number, heightMm: number): number {
  if (!(widthMm > 0 && heightMm > 0)) {
    throw new RangeError(`widthMm ${widthMm} and heightMm ${heightMm} must both be above 0`);
  }
  const b = Math.max(widthMm, heightMm);
  const h = Math.min(widthMm, heightMm);
  let sum = 0;
  for (let n = 1; n < 200; n += 2) sum += Math.tanh((n * Math.PI * b) / (2 * h)) / n ** 5;
  return ((b * h ** 3) / 3) * (1 - ((192 * h) / (Math.PI ** 5 * b)) * sum);
}

/**
 * Torsional stiffness of a thin-walled closed box, N·mm²: Bredt's GJ = 4A²/Σ(s/Gt), A the area inside the wall mid-lines.
 */
export function closedBoxTorsionalStiffnessNmm2(
  enclosedAreaMm2: number,
  walls: readonly { readonly lengthMm: number; readonly thicknessMm: number; readonly shearModulusMpa: number }[],
): number {
  return (
    (4 * enclosedAreaMm2 ** 2) /
    walls.reduce((sum, wall) => sum + wall.lengthMm / (wall.shearModulusMpa * wall.thicknessMm), 0)
  );
}
