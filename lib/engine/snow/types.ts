/**
 * A ski on snow. x in mm from the tip as in the geometry room; deflection positive towards the snow, square to the base;
 * forces in N, line pressures in N per mm of ski.
 */
import type { SkiShape } from "#engine/geometry";
import type { Radians } from "#engine/units";

/** Snow as it resists: force per volume of snow displaced, which on a flat base is pressure over depth. A setting. */
export interface SnowBed {
  /** N/mm³. */
  readonly hardnessNPerMm3: number;
}

/** A force spread evenly over a stretch of the ski, square to its base. */
export interface SpreadForce {
  readonly fromMm: number;
  readonly toMm: number;
  readonly forceN: number;
}

/** Any beam over any snow line. */
export interface BeamOnSnow {
  /** Ascending; linear between. The first and the last are the ends of the beam. */
  readonly stations: readonly { readonly xMm: number; readonly bendingStiffnessNmm2: number }[];
  readonly loads: readonly SpreadForce[];
  /** How far each place stands off the snow before it is loaded, square to the base; only its shape matters. */
  readonly gapMm: (xMm: number) => number;
  /** Of the base. */
  readonly widthMm: (xMm: number) => number;
  readonly bed: SnowBed;
  /** Between base and snow; 0 is flat. */
  readonly edgeAngle: Radians;
}

export interface SnowStation {
  readonly xMm: number;
  /** How far this place has moved towards the snow, rigid motion included. */
  readonly downMm: number;
  /** Into the snow, square to the base; negative where it stands off. */
  readonly depthMm: number;
  readonly pressureNPerMm: number;
}

export interface OnSnow {
  readonly stations: readonly SnowStation[];
  /** Sum of the snow's pressure, N, and where its resultant stands, mm from the tip. */
  readonly carriedN: number;
  readonly carriedAtMm: number;
}

/** One ski with its skier. */
export interface SkiOnSnowInput {
  readonly shape: SkiShape;
  /** Of the finished ski. */
  readonly stations: readonly { readonly xMm: number; readonly bendingStiffnessNmm2: number }[];
  /** Middle of the boot, mm from the tip. */
  readonly mountMm: number;
  /** The weight is spread evenly over it. */
  readonly bootSoleMm: number;
  /** Of the skier with all that is carried; all of it stands on this ski. */
  readonly weightN: number;
  readonly bed: SnowBed;
  readonly edgeAngle: Radians;
}

export interface SkiOnSnowStation extends SnowStation {
  /** Of the running surface, loaded, square to the base, over the snow at the widest point of the edge. */
  readonly heightMm: number;
  /** Of the snow under the edge, on the same scale: level when flat, hollow on edge. */
  readonly snowMm: number;
}

export interface SkiOnSnow {
  readonly stations: readonly SkiOnSnowStation[];
  /** Square to the base, N: the weight over cos θ. */
  readonly loadN: number;
  readonly carriedN: number;
  readonly carriedAtMm: number;
  /** Length that touches, and from where to where. */
  readonly contactMm: number;
  readonly contactFromMm: number;
  readonly contactToMm: number;
  /** Into the snow under the middle of the boot. */
  readonly sinkMm: number;
  /** How high the tip end stands over the snow line. */
  readonly tipGapMm: number;
  /** Greatest pressure and its place. */
  readonly peakNPerMm: number;
  readonly peakAtMm: number;
  /** Of the circle through the pressed edge, seen on the snow. */
  readonly turnRadiusM: number;
  /** Share of the load that the ski carries outside a middle half of its sidecut's length. */
  readonly endsShare: number;
}
