/**
 * The shop floor as data: stations, people, presses, moulds, hours, and what can go wrong. All values are the shop's own
 * settings (content/catalog/floor.json); nothing here is a constant of the engine. Minutes are touch minutes a pair.
 */
import type { StationId, WithStations } from "#engine/floor";
import type { IsoDate } from "#engine/units";

export interface CrewMember {
  readonly id: string;
  readonly label: string;
  readonly stations: readonly StationId[];
  /** Steps in when somebody is away; the plan does not count on them. */
  readonly isReserve: boolean;
}

export interface Press {
  readonly id: string;
  readonly label: string;
  readonly kind: "heated" | "cold";
  /** Family of the mould that is mounted when nothing else is known. */
  readonly initialMould?: string;
}

/** The press programme in numbers; after closing nobody is needed until it may be opened. */
export interface PressProgramme {
  readonly unloadMinutes: number;
  readonly heatUpMinutes: number;
  readonly dwellMinutes: number;
  readonly coolMinutes: number;
  /** From the end of lay-up to closing the press: what is left of the resin's working time. */
  readonly closeWithinMinutes: number;
}

export interface Mould {
  readonly id: string;
  readonly family: string;
  readonly lengthCm: number;
  /** Sets of cassettes: one pair can be laid up in the second while the first cools. */
  readonly cassettes: number;
}

export interface ChangeoverMinutes {
  readonly sameMould: number;
  readonly sameFamily: number;
  readonly otherFamily: number;
  /** Added when the mould that comes out is hot. */
  readonly hotExtra: number;
}

/** A part of the work that is done again, with a chance per pass. */
export interface ReworkLoop {
  readonly id: string;
  readonly afterStation: StationId;
  readonly probability: number;
  readonly redoStations: readonly StationId[];
  /** Share of the full minutes: one ski of two, or a second pass. */
  readonly minutesShare: number;
  /** Working days lost before the redo begins, uniform from low to high; absent: none. */
  readonly delayWorkingDays?: { readonly low: number; readonly high: number };
}

/** What hits every pair at once: illness, a late supplier. */
export interface SharedShock {
  /** Chance that one shock falls into a window of this many working days. */
  readonly probability: number;
  readonly windowWorkingDays: number;
  readonly delayWorkingDays: { readonly low: number; readonly high: number };
}

export interface ShopHours {
  /** IANA name; the engine itself counts shop-local minutes. */
  readonly timeZone: string;
  /** Minutes of the day, half-open. */
  readonly windows: readonly { readonly fromMinute: number; readonly toMinute: number }[];
  /** 1 = Monday … 7 = Sunday. */
  readonly workingWeekdays: readonly number[];
  readonly closedDays: readonly { readonly date: IsoDate; readonly label: string }[];
}

export interface ProofTurnaround {
  /** Working days from issuing a proof to the skier's approval. */
  readonly workingDays: { readonly low: number; readonly typ: number; readonly high: number };
}

export interface FloorCatalog extends WithStations {
  readonly id: string;
  readonly hours: ShopHours;
  readonly crew: readonly CrewMember[];
  readonly presses: readonly Press[];
  readonly pressProgramme: PressProgramme;
  readonly moulds: readonly Mould[];
  readonly changeoverMinutes: ChangeoverMinutes;
  readonly pressDayLostProbability: number;
  /** Chance that one of the crew is away on a day, as nobody knew before; absent: 0. */
  readonly personDayLostProbability?: number;
  readonly rework: readonly ReworkLoop[];
  readonly sharedShock: SharedShock;
  /** Standard deviation of the logarithm of the pace that all work of a week shares; absent: 0. */
  readonly weekPaceLogSd?: number;
  readonly proof: ProofTurnaround;
  readonly planning: {
    /** The press plan may pull a pair forward past others by at most this to save a change of mould. */
    readonly mouldGroupingWorkingDays: number;
    /** Press starts this near are not moved any more. */
    readonly frozenWorkingDays: number;
    /** An accepted order that is not paid keeps its place this long. */
    readonly softHoldWorkingDays: number;
  };
}
