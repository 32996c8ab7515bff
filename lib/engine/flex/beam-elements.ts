/** The ski as Hermite beam elements, for what has to find out by itself where it is carried. */
import { interpolate } from "#engine/math";
import type { BeamStation } from "./beam-types";

/** Half bandwidth: two unknowns a node, coupled to the next node. */
export const BEAM_BAND = 3;

/** Hermite beam elements, EI linear over each; unknowns w, w′ node by node. */
export function beamBand(stations: readonly BeamStation[], xs: readonly number[]): Float64Array {
  const stride = BEAM_BAND + 1;
  const band = new Float64Array(2 * xs.length * stride);
  const positions = stations.map((station) => station.xMm);
  const values = stations.map((station) => station.bendingStiffnessNmm2);
  const at = xs.map((x) => interpolate(positions, values, x));
  for (let e = 0; e + 1 < xs.length; e++) {
    const h = (xs[e + 1] ?? 0) - (xs[e] ?? 0);
    elementMatrix(h, at[e] ?? 0, at[e + 1] ?? 0).forEach((row, i) => {
      for (let j = 0; j <= i; j++) {
        const entry = (2 * e + i) * stride + BEAM_BAND - i + j;
        band[entry] = (band[entry] ?? 0) + (row[j] ?? 0);
      }
    });
  }
  return band;
}

/** ∫ B ᵀ·EI·B dx with EI from e0 to e1, exact (R. D. Cook et al., Concepts and Applications of Finite Element Analysis). */
function elementMatrix(h: number, e0: number, e1: number): number[][] {
  const s = e0 + e1;
  const [d0, d1] = [2 * e0 + e1, e0 + 2 * e1];
  const [k, m] = [6 * s, h * h];
  return [
    [k, 2 * h * d0, -k, 2 * h * d1],
    [2 * h * d0, m * (3 * e0 + e1), -2 * h * d0, m * s],
    [-k, -2 * h * d0, k, -2 * h * d1],
    [2 * h * d1, m * s, -2 * h * d1, m * (e0 + 3 * e1)],
  ].map((row) => row.map((value) => value / h ** 3));
}
