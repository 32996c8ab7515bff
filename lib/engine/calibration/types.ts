/**
 * Learning from measured pairs. What the bench read of each ski is compared with what was computed for it, and the
 * difference is put down to materials and process by regularised least squares. Springs in N/mm, mass in kg a ski, camber in
 * mm; factors without a unit, offsets in mm.
 */
import type { BuildableSpec, BuildRules, Model } from "#engine/configuration";
import type { StripColumn } from "#engine/flex";
import type { Corrections } from "#engine/materials";

/** What the quality bench reads of one finished ski. Whatever was not read is absent. */
export interface BenchValues {
  readonly massKg?: number;
  readonly camberMm?: number;
  readonly springCentreNPerMm?: number;
  readonly springForebodyNPerMm?: number;
  readonly springAfterbodyNPerMm?: number;
  /** Torque over angle of twist on the shop's twist bench (the build's twistTest). */
  readonly twistNmPerDeg?: number;
}

export type BenchMeasure = keyof BenchValues;

/** All that can be computed of what the bench reads. */
export type PredictedValues = Required<BenchValues>;

/** Mean of the strips that lie in one position of a ski, as the strip bench measured them. */
export interface MeasuredStrip {
  readonly modulusMpa: number;
  readonly densityKgM3: number;
}

/** What decided a measured ski's core and cloth when it was built: shapes and rules change, a ski does not. */
export interface BuiltBy {
  /** Two skis with one name were built by the same. */
  readonly name: string;
  readonly models: readonly Model[];
  readonly rules: BuildRules;
}

export interface MeasuredSki {
  /** Its serial, "TY-0412-L-3". */
  readonly id: string;
  /** Serial of its pair, "TY-0412". */
  readonly pair: string;
  readonly side: "L" | "R";
  readonly spec: BuildableSpec;
  /** Absent positions count with the handbook's value of their wood. */
  readonly strips?: Readonly<Partial<Record<StripColumn["position"], MeasuredStrip>>>;
  /** The models and rules it was built by; absent = the catalogue's own. */
  readonly builtBy?: BuiltBy;
  /** The book its core was solved with; absent = the handbook's values. What is predicted of it does not follow this book. */
  readonly builtWith?: Corrections;
  readonly measured: BenchValues;
}

/** One reading left out of the fit, and why; nothing is left out silently. */
export interface LeftOut {
  readonly skiId: string;
  readonly measure: BenchMeasure;
  readonly reason: string;
}

/** How far factors may be thought to be off before anything is measured, and how well the bench reads. Catalogue data. */
export interface CalibrationSettings {
  /** Fewer pairs than this teach nothing that may be approved. */
  readonly leastPairs: number;
  /** Standard deviations of what is believed beforehand: of ln(factor) for moduli and densities, mm for offsets. */
  readonly priorSd: {
    readonly modulus: number;
    readonly density: number;
    /** For moduli and densities of steel, metal and other sheets, which handbooks know closer; absent = as the others. */
    readonly sheet?: number;
    readonly coreOffsetMm: number;
    readonly camberOffsetMm: number;
    /** Of the logarithm of what all torsional stiffness is multiplied by. */
    readonly twist: number;
  };
  /** Standard deviations of one reading with what no factor explains: shares of mass, springs and twist, mm of camber. */
  readonly readingSd: {
    readonly mass: number;
    readonly spring: number;
    readonly camberMm: number;
    readonly twist: number;
  };
  /** A reading this many standard deviations from what all the others predict is suspicious. */
  readonly suspiciousAt: number;
}

export interface CorrectionFactor {
  readonly kind: "modulus" | "density" | "core-offset" | "camber-offset" | "twist";
  /** Material id; absent for a process. */
  readonly material?: string;
  /** A factor (1 = as the handbook says), or mm for an offset. */
  readonly value: number;
  /** Standard deviation of `value` after the fit. */
  readonly sd: number;
  /** Share of what was believed beforehand that the measurements have replaced, 0 to 1: near 0 nothing was learnt. */
  readonly learnt: number;
}

/** One reading against what was computed for it. */
export interface Residual {
  readonly skiId: string;
  readonly pair: string;
  readonly measure: BenchMeasure;
  readonly measured: number;
  /** By the handbook values, without any correction. */
  readonly predictedBefore: number;
  /** With the fitted factors. */
  readonly predictedAfter: number;
  /** (measured − predicted after)/its standard deviation, from a fit without this reading. */
  readonly studentised: number;
  readonly leftOut: boolean;
}

/** How far computed was from measured: root mean square and mean, as percent of the computed value (mm for camber). */
export interface Quality {
  readonly measure: BenchMeasure;
  readonly readings: number;
  readonly biasBefore: number;
  readonly rmsBefore: number;
  readonly biasAfter: number;
  readonly rmsAfter: number;
}

export interface Calibration {
  readonly pairs: number;
  readonly enoughPairs: boolean;
  readonly factors: readonly CorrectionFactor[];
  readonly residuals: readonly Residual[];
  /** Readings beyond `suspiciousAt` that nobody has left out yet, worst first. */
  readonly suspects: readonly Residual[];
  readonly quality: readonly Quality[];
  /** What a book made of this fit would hold. */
  readonly corrections: Corrections;
}
