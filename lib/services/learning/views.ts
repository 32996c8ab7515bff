import type { BenchMeasure, BenchValues, Calibration, Quality, Residual } from "#engine/calibration";
import type { BuildableSpec } from "#engine/configuration";
import type { TwistTest } from "#engine/flex";
import type { FloorBook, FloorLearning } from "#engine/floor-learning";
import type { Corrections } from "#engine/materials";
import type { Instant, PairId } from "#engine/units";
import type { BookSummary, FloorBookSummary } from "#schemas/stored/index";

export type { BookSummary } from "#schemas/stored/index";

export type ReadingChoice = "leave-out" | "keep";

export interface ReadingDecisionView {
  readonly serial: string;
  readonly measure: BenchMeasure;
  readonly value: number;
  readonly choice: ReadingChoice;
  readonly reason: string;
  readonly by: string;
  readonly at: Instant;
  /** False once it was decided anew, or the reading was corrected. */
  readonly holds: boolean;
}

export interface MeasuredSkiView {
  readonly serial: string;
  readonly pairSerial: string;
  readonly pairId: PairId | null;
  readonly side: "L" | "R";
  readonly spec: BuildableSpec;
  readonly values: BenchValues;
  readonly version: number;
  readonly measuredAt: Instant;
  readonly measuredBy: string;
  readonly origin: "bench" | "book";
}

export interface CorrectionBookView {
  readonly version: string;
  readonly corrections: Corrections;
  readonly summary: BookSummary;
  readonly effectiveAt: Instant;
  readonly approvedBy: string;
}

export interface LearningView {
  readonly calibration: Calibration;
  /** Names the data that was shown: an approval of other data is refused. */
  readonly fingerprint: string;
  readonly leastPairs: number;
  /** Suspects that nobody has decided about. */
  readonly undecided: readonly Residual[];
  readonly skis: readonly MeasuredSkiView[];
  /** Skis whose model, core or reinforcement the catalogue no longer has; they teach nothing. */
  readonly notCompared: readonly string[];
  /** All that were made, latest first. */
  readonly decisions: readonly ReadingDecisionView[];
  /** Latest first; the first is in force. */
  readonly books: readonly CorrectionBookView[];
}

/** For everybody: no customer, no person. */
export interface PredictedVersusMeasured {
  readonly pairs: number;
  readonly skis: number;
  readonly leastPairs: number;
  readonly bookInForce: string | null;
  readonly quality: readonly Quality[];
  readonly points: readonly Pick<
    Residual,
    "skiId" | "pair" | "measure" | "measured" | "predictedBefore" | "predictedAfter" | "leftOut"
  >[];
}

export interface PairBenchView {
  readonly skis: readonly {
    readonly side: "L" | "R";
    readonly serial: string;
    /** 0 before the first reading. */
    readonly version: number;
    readonly values: BenchValues;
    readonly measuredAt: Instant | null;
    readonly measuredBy: string | null;
  }[];
  readonly rows: readonly BenchRow[];
  /** How twist is read; null for a release that does not say. */
  readonly twistTest: TwistTest | null;
}

/** One measure of both skis against its target, in the engine's units. */
export interface BenchRow {
  readonly measure: BenchMeasure;
  readonly target: number;
  /** Half of the band around the target. */
  readonly limit: number | null;
  /** Largest difference between the twins. */
  readonly twinLimit: number | null;
  readonly left: number | null;
  readonly right: number | null;
  readonly twinDifference: number | null;
  readonly states: {
    readonly L: "in" | "out" | null;
    readonly R: "in" | "out" | null;
    readonly twins: "in" | "out" | null;
  };
}

/** What the floor's own starts and ends teach. */
export interface FloorLearningView {
  readonly learning: FloorLearning;
  readonly stationNames: Readonly<Record<string, { readonly number: number | null; readonly name: string }>>;
  /** Names the record that was shown: an approval of another one is refused. */
  readonly fingerprint: string;
  readonly leastPairs: number;
  /** What dates are made with at this moment. */
  readonly now: Omit<FloorBook, "version">;
  /** Latest first; the first is in force. */
  readonly books: readonly {
    readonly version: string;
    readonly book: FloorBook;
    readonly summary: FloorBookSummary;
    readonly reason: string;
    readonly effectiveAt: Instant;
    readonly approvedBy: string;
  }[];
}
