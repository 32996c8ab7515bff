import type { StaffRole } from "#data/access";
import type { Hazard, StationId } from "#engine/floor";
import type { Instant } from "#engine/units";
import type { EventView } from "#shop/names/views";

/** One sign-in that is going on. */
export interface SignInView {
  readonly sessionId: string;
  /** By password, or by short code for what is done on the floor. */
  readonly kind: "full" | "floor";
  /** What an owner called the device, else what the browser calls itself; none where it is not known. */
  readonly device: string | null;
  readonly since: Instant;
  readonly lastUsedAt: Instant;
  /** When it ends by itself if nothing is done any more. */
  readonly endsAt: Instant;
  /** The one that asks. */
  readonly isThis: boolean;
}

/** Somebody of the shop, here or gone. */
export interface PersonView {
  readonly staffId: string;
  readonly name: string;
  readonly email: string;
  readonly role: StaffRole;
  readonly since: Instant;
  readonly leftAt: Instant | null;
  readonly hasFloorCode: boolean;
  /** The demo's published password still counts. */
  readonly isDemoPassword: boolean;
  readonly signIns: readonly SignInView[];
}

/** A device that an owner enrolled for short codes. */
export interface FloorDeviceView {
  readonly deviceId: string;
  readonly name: string;
  readonly browser: string;
  readonly enrolledAt: Instant;
  readonly enrolledBy: string;
  readonly lastSeenAt: Instant;
  readonly isThis: boolean;
}

/** A screen on the wall with its read-only link. */
export interface WallView {
  readonly wallId: string;
  readonly name: string;
  readonly openedAt: Instant;
  readonly until: Instant;
  readonly isOver: boolean;
}

/** Guesses at somebody's password or code that were held up. */
export interface GuessingView {
  readonly staffId: string;
  readonly name: string;
  readonly lastAt: Instant;
  readonly times: number;
}

/** All of an owner's page about people. */
export interface PeopleView {
  readonly people: readonly PersonView[];
  readonly devices: readonly FloorDeviceView[];
  /** The device that asks, when it can be enrolled: known by its cookie and not enrolled yet. */
  readonly thisBrowser: string | null;
  readonly walls: readonly WallView[];
  readonly guessing: readonly GuessingView[];
  /** The newest first. */
  readonly record: readonly PeopleEvent[];
}

/** What happened to somebody, a device or a screen; `about` is its name. */
export interface PeopleEvent extends EventView {
  readonly about: string;
}

/** One's own account. */
export interface AccountView {
  readonly staffId: string;
  readonly name: string;
  readonly email: string;
  readonly hasFloorCode: boolean;
  readonly signIns: readonly SignInView[];
}

/** What there is of private links to one thing. */
export interface LinkStandingView {
  readonly open: number;
  readonly over: number;
  readonly until: Instant | null;
}

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
