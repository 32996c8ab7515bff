/**
 * What the snow gives back at one place of the ski, N per mm of its length, square to the base.
 *
 * Groomed snow resists with a force in proportion to the volume it is displaced by, H newtons a cubic millimetre (M. Mössner,
 * G. Innerhofer, K. Schindelwig, P. Kaps, H. Schretter & W. Nachbauer, Measurement of mechanical properties of snow for
 * simulation of skiing, J. Glaciology 59 (2013) 1170–1178: 236 penetrations, H from 0.04 to 90 N/mm³). So a point of the base
 * that lies e below the surface carries H·e. With the base tilted by θ and its edge s below the snow, measured square to the
 * base, the point at u from the edge lies at e = s·cos θ − u·sin θ, and over the part of the width b that is in the snow
 *   u_in = min(b, s/tan θ),   p = H·(s·cos θ·u_in − u_in²·sin θ/2),   p = 0 for s ≤ 0 (snow does not pull).
 * Flat, p = H·b·s: the elastic bed of Winkler (1867). Own derivation from the law above. The side of the ski, which cuts
 * in as well, carries nothing here; nor is snow told apart before and behind, loosened or packed by the ski's passing.
 */
import type { Radians } from "#engine/units";

export interface BedReply {
  readonly pressureNPerMm: number;
  /** dp/ds, N/mm². */
  readonly stiffnessNPerMm2: number;
  /** ∫p ds, N. */
  readonly energyN: number;
}

const NOTHING: BedReply = { pressureNPerMm: 0, stiffnessNPerMm2: 0, energyN: 0 };

/** The law for one hardness and edge angle. @throws RangeError unless H > 0 and 0 ≤ θ < π/2 */
export function bedLaw(hardnessNPerMm3: number, edgeAngle: Radians): (depthMm: number, widthMm: number) => BedReply {
  if (!(hardnessNPerMm3 > 0 && Number.isFinite(hardnessNPerMm3))) {
    throw new RangeError(`hardnessNPerMm3: ${hardnessNPerMm3} N/mm³ is not above 0`);
  }
  if (!(edgeAngle >= 0 && edgeAngle < Math.PI / 2)) {
    throw new RangeError(`edgeAngle: ${edgeAngle} rad must be from 0 to below π/2`);
  }
  const [H, sin, cos] = [hardnessNPerMm3, Math.sin(edgeAngle), Math.cos(edgeAngle)];
  return (s, b) => {
    if (!(s > 0 && b > 0)) return NOTHING;
    const whole = (b * sin) / cos;
    if (s >= whole) {
      const stiffness = H * b * cos;
      const middle = s - whole / 2;
      return {
        pressureNPerMm: stiffness * middle,
        stiffnessNPerMm2: stiffness,
        energyN: stiffness * (middle ** 2 / 2 + whole ** 2 / 24),
      };
    }
    const half = (H * cos ** 2) / (2 * sin);
    return { pressureNPerMm: half * s ** 2, stiffnessNPerMm2: 2 * half * s, energyN: (half * s ** 3) / 3 };
  };
}
