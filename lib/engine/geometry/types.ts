/**
 * Axes, once for the whole engine: x in mm along the developed running surface, 0 at the tip end, growing to the tail
 * end; nominal length = developed length. y is the half width from the centre line. z is up from a flat bench, base down.
 * A profile is of the free ski unless its name says pressed flat.
 */

/** A model's shape at its reference length; lengths scale from it (see shapeAtLength). */
export interface ModelShape {
  readonly refLengthCm: number;
  readonly shoulderWidthMm: number;
  readonly waistWidthMm: number;
  readonly heelWidthMm: number;
  readonly tipLengthMm: number;
  readonly tailLengthMm: number;
  readonly tipExponent: number;
  readonly tailExponent: number;
  readonly tipRockerPercent: number;
  readonly tailRockerPercent: number;
  readonly tipRiseMm: number;
  readonly tailRiseMm: number;
  readonly camberMm: number;
  readonly mountBehindCentreMm: number;
  readonly edgeWrap: "partial" | "full";
}

/** The shape of one model-length. */
export interface SkiShape {
  readonly lengthMm: number;
  readonly shoulderWidthMm: number;
  readonly waistWidthMm: number;
  readonly heelWidthMm: number;
  readonly tipLengthMm: number;
  readonly tailLengthMm: number;
  readonly tipExponent: number;
  readonly tailExponent: number;
  /** Shoulder to heel along x. */
  readonly sidecutLengthMm: number;
  /** Radius of the one circle tangent at the waist through shoulder and heel points. */
  readonly sidecutRadiusMm: number;
  readonly waistFromTipMm: number;
  /** The model's default mount line (boot centre). */
  readonly mountFromTipMm: number;
  readonly tipTangentMm: number;
  readonly tailTangentMm: number;
  readonly tipRiseMm: number;
  readonly tailRiseMm: number;
  readonly camberMm: number;
  readonly edgeWrap: "partial" | "full";
}

export interface OutlinePoint {
  readonly xMm: number;
  readonly halfWidthMm: number;
}

/** What one outline and profile measure. */
export interface ShapeMeasures {
  readonly planAreaMm2: number;
  readonly perimeterMm: number;
  readonly sidecutRadiusM: number;
  readonly federationRadiusM: number;
  readonly effectiveEdgeMm: number;
  /** Edge steel per side of a partial wrap (edgeSpanMm), along x. */
  readonly edgeCarryingMm: number;
  readonly tangentContactMm: number;
  /** ISO 6289 contact length: between the 0.5 mm gauge points of the pressed-flat ski. */
  readonly contactLengthMm: number;
  readonly projectedLengthMm: number;
}
