import type { OperationState, SkiState } from "#engine/floor";

export type { OperationState } from "#engine/floor";

import type { PairSpec } from "#engine/configuration";
import type { FlexSpread, SkiFlex, SpringSpans, ThicknessProfile } from "#engine/flex";
import type { ReworkFault, StationId } from "#engine/floor";
import type { PartsList } from "#engine/parts";
import type { Instant, IsoDate, OperationId, OrderId, PairId, SkiId } from "#engine/units";
import type { PressChoice } from "#shop/floor/views";
import type { DateRange, EventView } from "#shop/names/views";
import type { GatesView, OrderState, PromiseClass, ProofState, ProofView } from "#shop/order/views";

export interface OperationView {
  readonly operationId: OperationId;
  readonly key: string;
  readonly station: StationId;
  readonly stationNumber: number | string;
  readonly stationName: string;
  /** It is done in a press, which is asked for at its start. */
  readonly usesPress: boolean;
  /** 0 the first time, 1 for the first redo … */
  readonly visit: number;
  /** The one ski it is for; null: both. */
  readonly side: "L" | "R" | null;
  readonly state: OperationState;
  readonly version: number;
  readonly typicalMinutes: number;
  readonly startedAt: Instant | null;
  readonly startedBy: string | null;
  readonly finishedAt: Instant | null;
  readonly finishedBy: string | null;
  /** The press it was or is in, by its name; null elsewhere and where none was recorded. */
  readonly pressName: string | null;
  /** Cure or rest after the work before it: not before this instant. */
  readonly notBefore: Instant | null;
}

export interface StripView {
  readonly stripId: string;
  readonly side: "L" | "R";
  readonly position: "C" | "I" | "M" | "O";
  readonly place: "left" | "centre" | "right";
  readonly species: string;
  readonly board: string;
  readonly modulusMpa: number;
  readonly densityKgM3: number;
  readonly bin: string;
}

export interface TravellerView {
  readonly print: number;
  readonly pairRevision: number;
  readonly printedAt: Instant;
  readonly printedBy: string;
  readonly voided: { readonly at: Instant; readonly reason: string } | null;
}

/** A pair for the floor: everything that builds it, no price and no address. */
export interface PairView {
  readonly pairId: PairId;
  readonly serial: string;
  readonly orderId: OrderId;
  readonly orderNumber: string;
  readonly state: OrderState;
  readonly version: number;
  readonly revision: number;
  readonly spec: PairSpec;
  readonly specHash: string;
  /** Of the catalogue that it was sold from. */
  readonly releaseHash: string;
  readonly modelName: string;
  readonly modelRevision: string;
  readonly flexClassLabel: string;
  readonly skierFirstName: string;
  readonly mould: string;
  readonly skis: readonly {
    readonly skiId: SkiId;
    readonly side: "L" | "R";
    readonly serial: string;
    readonly state: SkiState;
    /** 1, 2 …: which time this ski was built. */
    readonly build: number;
    /** Where it is parked while the other one is built again. */
    readonly location: string | null;
  }[];
  readonly flex: SkiFlex;
  /** What each of its springs is read over. */
  readonly springSpans: SpringSpans;
  /** How sure its numbers are; null for a pair of a release that says nothing of scatter. */
  readonly spread: FlexSpread | null;
  /** What two skis of a pair may differ by, in the words of the release. */
  readonly twinLimits: { readonly springCentre: string; readonly mass: string };
  readonly core: {
    readonly profile: ThicknessProfile;
    readonly achievedRatio: number;
    readonly limitedBy: readonly string[];
  };
  /** Each with the number by which people know its station. */
  readonly parts: Omit<PartsList, "lines"> & {
    readonly lines: readonly (PartsList["lines"][number] & { readonly stationNumber: number | string })[];
  };
  readonly strips: readonly StripView[];
  /** Some are lacking for a core that is still to be glued. */
  readonly isStripsShort: boolean;
  readonly operations: readonly OperationView[];
  /** The station that makes a fault of one ski good at the earliest. */
  readonly reworkFrom: Readonly<Record<ReworkFault, StationId>>;
  /** What holds it up, at a station and all that follow. */
  readonly holds: readonly {
    readonly station: StationId;
    readonly stationNumber: number | string;
    readonly reason: "material" | "decision";
    readonly note: string;
    readonly expectedOn: IsoDate | null;
  }[];
  /** To choose from while the pair may go into a press; else none. */
  readonly presses: readonly PressChoice[];
  /** The press its fixed slot is on. */
  readonly plannedPress: string | null;
  readonly gates: GatesView;
  readonly proofState: ProofState;
  readonly proofs: readonly ProofView[];
  readonly promiseClass: PromiseClass;
  readonly promisedOn: IsoDate | null;
  readonly expected: DateRange | null;
  readonly pressOn: IsoDate | null;
  readonly prints: readonly TravellerView[];
  readonly revisions: readonly {
    readonly revision: number;
    readonly reason: string;
    readonly at: Instant;
    readonly by: string;
    readonly specHash: string;
  }[];
  readonly history: readonly EventView[];
}

/** What a scanned code stands for; a voided print says so and names the valid one. */
export interface ScanResult {
  readonly pairId: PairId;
  readonly serial: string;
  readonly side: "L" | "R" | null;
  /** The code is a ski's that was scrapped: another one is built in its place. */
  readonly isScrapped: boolean;
  readonly print: TravellerView | null;
  readonly isVoid: boolean;
}
