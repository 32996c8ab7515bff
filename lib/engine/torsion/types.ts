/** A cross-section as torsion sees it: layers of parts, each with its shear moduli. mm and MPa; y from the middle of the section. */

export interface TwistPart {
  readonly fromMm: number;
  readonly toMm: number;
  /** In the plane of the layers, G_xy; 0 = carries nothing along the section. */
  readonly inPlaneMpa: number;
  /** Through the thickness, G_xz. */
  readonly throughMpa: number;
}

export interface TwistLayer {
  readonly thicknessMm: number;
  /** From left to right, without overlap; what no part covers is empty. */
  readonly parts: readonly TwistPart[];
}

export interface TwistSection {
  /** From the bottom up. */
  readonly layers: readonly TwistLayer[];
  /** The layers are the half at y ≥ 0 of a section that is its own mirror image about y = 0. */
  readonly isHalf: boolean;
}

/** How fine a section is cut. */
export interface MeshSettings {
  /** Columns at a free edge, over the lesser of the section's width and height, and how fast they grow away from it. */
  readonly edgeColumn: number;
  readonly growth: number;
  /** Columns at least of the outermost part, where steel twists for itself as well. */
  readonly leastAtEdge: number;
  /** A layer is cut into rows no higher than this share of the same, and into at least `leastRows`. */
  readonly highestRow: number;
  readonly leastRows: number;
}
