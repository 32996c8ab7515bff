/**
 * The ski as a beam. Stations carry everything that varies along x. Units: mm, N, MPa; EI and GJ in N·mm²; mass in g per
 * metre at a station and kg for a whole ski. Statics only: dynamics convert to metres first.
 */
import type { SkiShape } from "#engine/geometry";

/** Anything with width in a section: its share of the section, bottom to top order is the order of the layers. */
export interface LayerMaterial {
  /** Of the catalogue; absent where a section is given by its moduli alone. */
  readonly id?: string;
  readonly label: string;
  readonly exMpa: number;
  readonly eyMpa: number;
  readonly gxyMpa: number;
  readonly nuXy: number;
  readonly densityKgM3: number;
  /** Of a cloth: which ways its fibres run, degrees from the ski's axis. */
  readonly fibresDeg?: readonly number[];
}

export type LayerExtent =
  /** The whole width; a metal sheet stops at the inner faces of the edges. */
  | { readonly kind: "full" }
  /** Bands that run along the ski, symmetric about the centre line. */
  | { readonly kind: "bands"; readonly count: number; readonly bandWidthMm: number }
  /** Only between two places of the ski, along its centre line, whatever the mount line. */
  | { readonly kind: "span"; readonly fromMm: number; readonly toMm: number; readonly widthMm: number }
  /** Only between two distances from the mount line (negative = towards the tip), of a given half width or the whole. */
  | { readonly kind: "zone"; readonly fromMountMm: number; readonly toMountMm: number; readonly widthMm?: number };

/** One layer of the stack, listed from the base up. `core` stands where the wood goes. */
export type BuildLayer =
  | { readonly role: "base"; readonly material: LayerMaterial; readonly thicknessMm: number }
  | {
      readonly role: "fabric" | "metal" | "rubber" | "topsheet" | "mat";
      readonly id: string;
      readonly material: LayerMaterial;
      readonly thicknessMm: number;
      readonly extent: LayerExtent;
      /** The reinforcement that brought it; absent on a layer of the model's own. */
      readonly fromOption?: string;
    }
  | { readonly role: "core" };

/** A core strip position, from the centre line outward. */
export interface StripColumn {
  readonly position: "C" | "I" | "M" | "O";
  readonly innerMm: number;
  readonly outerMm: number;
  readonly axialModulusMpa: number;
  /** Across the grain, across the ski; absent = as along. */
  readonly acrossModulusMpa?: number;
  readonly shearModulusMpa: number;
  readonly densityKgM3: number;
}

export interface EdgeSteel {
  readonly widthMm: number;
  /** Of the bar; a section counts no more of it than lies below the core, which is not rebated for it. */
  readonly heightMm: number;
  /** Along x from shoulder − half of the surplus to heel + half of it, unless `span` says where. */
  readonly lengthMm: number;
  /** From where to where it runs, mm from the tip. */
  readonly span?: { readonly fromMm: number; readonly toMm: number };
  readonly material: LayerMaterial;
  /** Mass of the whole edge, anchors included, over that of its bar; anchors weigh but do not stiffen. */
  readonly anchorMassFactor: number;
}

/** A binding plate in its pocket: added after the core is solved, so it enters QC targets but never k. */
export interface PlatePocket {
  readonly material: LayerMaterial;
  readonly thicknessMm: number;
  /** Foil under the plate; the pocket is as deep as plate and foil together and follows the taper of the core. */
  readonly rubberMm: number;
  /** A soft foil lets the plate slip (see plate-bond.ts); absent, the plate counts as bonded and the foil weighs nothing. */
  readonly rubber?: LayerMaterial;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly centreMm: number;
}

/** A hollow in the upper face of the core, along the centre line; nothing fills it. */
export interface LighteningPocket {
  readonly fromMm: number;
  readonly toMm: number;
  readonly widthMm: number;
  readonly depthMm: number;
}

/**
 * How a section is reckoned. `thin-skins`: every layer by its moduli, twist of two skins joined by core and walls.
 * `layered`: cloths with what they hold back across the ski, twist by Saint-Venant with every part in its place.
 */
export type SectionTheory = "thin-skins" | "layered";

/** The whole construction of one ski, before the core thickness is known. */
export interface SkiBuild {
  readonly shape: SkiShape;
  readonly layers: readonly BuildLayer[];
  readonly columns: readonly StripColumn[];
  readonly sidewall: { readonly widthMm: number; readonly material: LayerMaterial };
  readonly edge: EdgeSteel;
  /** Where wood begins and ends; spacers fill the ends at the core's end thickness. */
  readonly coreFromMm: number;
  readonly coreToMm: number;
  /** What the spacers are made of; absent = the sidewall's material. */
  readonly spacer?: LayerMaterial;
  readonly plate?: PlatePocket;
  /** Absent = the core is whole but for the plate. They keep clear of the plate. */
  readonly pockets?: readonly LighteningPocket[];
  /** Mass that carries no stiffness, g per ski: glue, resin at two faces, edge rubber. */
  readonly extraMassG: number;
  readonly mountFromTipMm: number;
  /** Where spring constants are read; absent = supports at shoulder and heel, load at the mount line. */
  readonly springTest?: SpringTest;
  /** How the shop reads twist; absent = it does not. */
  readonly twistTest?: TwistTest;
  /** What torsional stiffness is multiplied by, as measured pairs have taught; absent = 1. */
  readonly twistFactor?: number;
  /** How sections are reckoned; absent = layered. */
  readonly sections?: SectionTheory;
  /** Built core thickness minus programmed, mm, as measured pairs have taught; absent = 0. */
  readonly coreOffsetMm?: number;
}

/** How twist is read: the ski clamped at one place, an arm across it at another, a weight on the arm's end. Settings. */
export interface TwistTest {
  readonly clampMm: number;
  readonly armAtMm: number;
  readonly torqueNm: number;
  /** From the ski's axis to the weight; the weight is torque over arm. */
  readonly armMm: number;
}

/** Where a ski is held and pressed, mm from the tip. Positions are settings, not those of a standard. */
export interface SpringTest {
  readonly frontSupportMm: number;
  readonly rearSupportMm: number;
  readonly loadMm: number;
}

/** Core thickness at stations, linear between them. */
export interface ThicknessProfile {
  readonly stations: readonly { readonly xMm: number; readonly thicknessMm: number }[];
}

export interface FlexStation {
  readonly xMm: number;
  readonly widthMm: number;
  readonly coreMm: number;
  readonly thicknessMm: number;
  readonly bendingStiffnessNmm2: number;
  readonly torsionalStiffnessNmm2: number;
  readonly neutralAxisMm: number;
  readonly massGPerM: number;
}

/** F498-like constants; support and load positions are settings. */
export interface SpringConstants {
  readonly springCentreNPerMm: number;
  readonly springForebodyNPerMm: number;
  readonly springAfterbodyNPerMm: number;
  /** Afterbody over forebody. */
  readonly balance: number;
}

export interface SkiFlex extends SpringConstants {
  /** Share of the centre deflection that comes from shear of the core; left out of the springs while under 1 %. */
  readonly coreShearPercent: number;
  readonly stations: readonly FlexStation[];
  readonly massKg: number;
  readonly balancePointMm: number;
}

/** Bending stiffness along a reference build: linear between stations, of the ski without plate and mat. */
export interface ReferenceCurve {
  readonly lengthMm: number;
  readonly stations: readonly { readonly xMm: number; readonly bendingStiffnessNmm2: number }[];
}

/** What a core is solved for: EI(x) = flexRatio · (L/Lref)² · EIref(x · Lref/L). */
export interface FlexTarget {
  readonly reference: ReferenceCurve;
  readonly flexRatio: number;
}

export interface CoreLimits {
  readonly minMm: number;
  readonly maxMm: number;
  /** Greatest change of thickness per mm of length the mill can follow. */
  readonly maxSlope: number;
  /** Rounding of the programme, e.g. 0.05 mm. */
  readonly stepMm: number;
  /** What hand and bench ask beyond the mill's limits; absent = nothing. */
  readonly bench?: CoreBench;
}

/** What a maker asks of a core, whatever its stiffness comes to. Places in mm from the tip. */
export interface CoreBench {
  /** Under the boot: from here outwards the core never grows thicker again. */
  readonly bootZone: CoreZone;
  /** Stretches where the built core may not be thinner than this; one under the boot, one where a pocket is milled. */
  readonly floors: readonly (CoreZone & { readonly leastMm: number })[];
  /** Thicknesses that the ends may have, ascending: each end of the core meets a spacer cut from sheet. */
  readonly endSheetsMm: readonly number[];
  /** By how much the rest of the ski may be softer than wanted where the floors make it stiffer, as a share; 0 = not at all. */
  readonly reliefShare: number;
}

export interface CoreZone {
  readonly fromMm: number;
  readonly toMm: number;
}

/** `cloth` says that thickness alone did not do and another cloth was taken. */
export type CoreLimit =
  | "minimum-thickness"
  | "maximum-thickness"
  | "slope"
  | "step"
  | "boot-floor"
  | "no-rise"
  | "end-sheet"
  | "cloth";

export interface CoreSolution {
  readonly profile: ThicknessProfile;
  /** Ratio of centre spring constants, built over reference, at this length. */
  readonly achievedRatio: number;
  readonly wantedRatio: number;
  readonly limitedBy: readonly CoreLimit[];
}
