/** The beam in bending: Euler–Bernoulli, EI linear between stations. mm, N; deflection positive in the force's direction. */

export interface BeamStation {
  /** Ascending; two stations at one x make a step. */
  readonly xMm: number;
  readonly bendingStiffnessNmm2: number;
  readonly torsionalStiffnessNmm2?: number | undefined;
}

export type BeamSupport =
  | { readonly kind: "simple"; readonly xMm: readonly [number, number] }
  /** May be inside the beam: what lies on the other side of it is unloaded. */
  | { readonly kind: "clamped"; readonly xMm: number };

export interface BeamProblem {
  readonly stations: readonly BeamStation[];
  readonly support: BeamSupport;
  /** One force; it may hang over a support. */
  readonly load: { readonly xMm: number; readonly forceN: number };
  /** Twists the beam between its two supports, or between the clamp and the load. */
  readonly torqueNmm?: number | undefined;
}

export interface BeamResult {
  /** At the load. */
  readonly deflectionMm: number;
  /** The greatest in the force's direction, anywhere on the beam. */
  readonly maxDeflectionMm: number;
  readonly maxAtMm: number;
  /** Force over deflection at the load. */
  readonly springNPerMm: number;
  readonly curve: readonly { readonly xMm: number; readonly deflectionMm: number }[];
  readonly twistRad?: number;
}
