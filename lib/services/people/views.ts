import type { StaffRole } from "#data/access";
import type { Hazard, StationId } from "#engine/floor";
import type { Instant } from "#engine/units";

/** Whether somebody's yes to the cautions holds, and if not why not. */
export type CautionState = "said" | "new-season" | "texts-changed" | "never";

/** What one person of the staff is asked to read. */
export interface MyCautions {
  readonly name: string;
  /** "2026/27" */
  readonly season: string;
  readonly state: CautionState;
  /** Of the latest yes, whether it holds or not. */
  readonly saidAt: Instant | null;
  /** Of the texts as they stand here. */
  readonly textsHash: string;
  readonly stations: readonly {
    readonly station: StationId;
    readonly number: number;
    readonly name: string;
    readonly cautions: readonly Hazard[];
  }[];
  /** Of no station: on pages, papers and skis that leave the shop. */
  readonly general: readonly Hazard[];
}

export interface CautionAnswer {
  readonly staffId: string;
  readonly name: string;
  readonly role: StaffRole;
  readonly state: CautionState;
  readonly saidAt: Instant | null;
}
