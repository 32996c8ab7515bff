/**
 * Plies and sections. MPa, mm, N; z up. A laminate's matrices are about its mid-plane, a section's heights are measured from
 * its bottom face.
 */
import type { Matrix } from "#engine/math";

/** One unidirectional or woven ply in its own axes. */
export interface Lamina {
  readonly e1Mpa: number;
  readonly e2Mpa: number;
  readonly g12Mpa: number;
  readonly nu12: number;
}

/** A ply in a stack: its first axis turned by `angleDeg` from the length of the ski, counter-clockwise seen from above. */
export interface PlyMaterial extends Lamina {
  readonly angleDeg: number;
}

export interface Ply extends PlyMaterial {
  readonly thicknessMm: number;
}

export interface LaminateConstants {
  readonly aNPerMm: Matrix;
  readonly bN: Matrix;
  readonly dNmm: Matrix;
  readonly exMpa: number;
  readonly eyMpa: number;
  readonly gxyMpa: number;
  readonly nuXy: number;
  readonly flexExMpa: number;
  readonly flexEyMpa: number;
  readonly flexGxyMpa: number;
  readonly thicknessMm: number;
  /** Blocks of the inverse of [A B; B D]: strains and curvatures per force and moment. */
  readonly aComplianceMmPerN: Matrix;
  readonly bCompliancePerN: Matrix;
  readonly dCompliancePerNmm: Matrix;
  /** Shear strain that a pull along the ski brings, per unit of its strain: a16/a11. */
  readonly shearPerStretch: number;
  /** Twist that bending along the ski brings, per unit of its curvature: d16/d11. */
  readonly twistPerBend: number;
}

/** One part of a layer, side by side with the others. Without a density it has no mass. */
export type SectionPart =
  | {
      readonly widthMm: number;
      readonly modulusMpa: number;
      /** Absent: the part gives no torsional stiffness. */
      readonly shearModulusMpa?: number | undefined;
      readonly densityKgM3?: number | undefined;
    }
  | { readonly widthMm: number; readonly ply: SectionPly; readonly densityKgM3?: number | undefined };

/** A ply within a section; without G13 its G12 holds through the thickness too. */
export interface SectionPly extends PlyMaterial {
  readonly g13Mpa?: number | undefined;
}

export interface SectionLayer {
  readonly thicknessMm: number;
  readonly parts: readonly SectionPart[];
}

export interface SectionConstants {
  /** From the bottom face. */
  readonly neutralAxisMm: number;
  readonly axialStiffnessN: number;
  readonly bendingStiffnessNmm2: number;
  /** Saint-Venant's, every part in its place. */
  readonly torsionalStiffnessNmm2: number;
  /** 4b/d66: an endless strip of the smeared layers. */
  readonly thinStripTorsionalStiffnessNmm2: number;
  readonly massGPerM: number;
  readonly thicknessMm: number;
}
