/**
 * Finite-capacity scheduling that knows no skis. Time is whole minutes from 0; intervals are half-open.
 *
 * A job is a set of operations with precedence. An operation occupies resources while its attended minutes pass; those
 * minutes count only while every calendar of its resources is open. Then an unattended phase (cure, rest) passes on the wall
 * clock, holding only the resources named by `holdsDuring`. Its successors may begin when the unattended phase is over.
 */
export type MinuteWindow = readonly [fromMinute: number, toMinute: number];

/** Working hours. Minute 0 is midnight of day 0. */
export interface CalendarSpec {
  /** Open windows of a working day, minutes of the day, ascending, not overlapping. */
  readonly windows: readonly MinuteWindow[];
  /** 1 = Monday … 7 = Sunday; absent: every day. */
  readonly weekdays?: readonly number[];
  /** Weekday of day 0; absent: 1, a Monday. */
  readonly firstWeekday?: number;
  /** Day numbers that are closed (holidays). */
  readonly closedDays?: readonly number[];
  /** Closed minutes of one occasion. */
  readonly closures?: readonly MinuteWindow[];
  /** Extra open minutes of one occasion (overtime); they win over closed days, not over closures. */
  readonly extraWindows?: readonly MinuteWindow[];
}

export type ChangeoverMatrix = Readonly<Record<string, Readonly<Record<string, number>>>>;

export interface ResourceSpec {
  readonly id: string;
  readonly capacity: number;
  readonly calendar?: string;
  /**
   * Minutes from one family to the next on this resource's own calendar; what is not listed takes 0. A changeover may begin
   * as soon as the resource is free. Needs capacity 1 (use one resource a machine and `anyOf`).
   */
  readonly changeoverMinutes?: ChangeoverMatrix;
  readonly initialFamily?: string;
  /**
   * When it is not there (broken, ill, lent), ascending and apart: nothing may occupy it then, and its open minutes do not
   * count for a changeover. What was fixed before is a fact and stays.
   */
  readonly unavailable?: readonly MinuteWindow[];
}

export type ResourceUse =
  | { readonly resource: string; readonly units?: number }
  /** Any `units` of these capacity-1 resources, all with the same calendar; listed in order of preference. */
  | { readonly anyOf: readonly string[]; readonly units?: number };

export interface OperationSpec {
  readonly id: string;
  readonly minutes: number;
  /** Short for one use of one unit. */
  readonly resource?: string;
  readonly uses?: readonly ResourceUse[];
  /** Cure or rest after the work, wall clock. */
  readonly unattendedMinutes?: number;
  /** Resources that stay occupied during it; a member of `anyOf` stands for the one that was chosen. */
  readonly holdsDuring?: readonly string[];
  /** Latest start after the end of the last predecessor, wall clock. */
  readonly maxGapMinutes?: number;
  readonly family?: string;
  /** Predecessors in the same job; absent: the operation listed before. */
  readonly after?: readonly string[];
  /** Not before this minute, in addition to the job's release. */
  readonly releaseMinute?: number;
  /** Must fit into one open window: no break, no night in between. */
  readonly uninterrupted?: boolean;
  /** Already running, done or frozen. */
  readonly fixed?: { readonly startMinute: number };
}

export interface JobSpec {
  readonly id: string;
  readonly releaseMinute?: number;
  readonly dueMinute?: number | null;
  readonly deadlineMinute?: number | null;
  readonly weight?: number;
  readonly operations: readonly OperationSpec[];
}

export type Objective =
  | "makespan"
  | { readonly makespan?: number; readonly weightedTardiness?: number; readonly changeover?: number };

export interface ScheduleProblem {
  readonly resources: readonly ResourceSpec[];
  readonly calendars?: Readonly<Record<string, CalendarSpec>>;
  readonly jobs: readonly JobSpec[];
  readonly objective: Objective;
}

export interface ScheduledOperation {
  readonly job: string;
  readonly operation: string;
  readonly startMinute: number;
  /** When the attended work ends. */
  readonly workEndMinute: number;
  /** When the unattended phase is over, too. */
  readonly endMinute: number;
  /** The resources it occupies, one entry a unit of a group. */
  readonly resources: readonly string[];
}

export interface Schedule {
  /** In the order of the problem. */
  readonly operations: readonly ScheduledOperation[];
  readonly makespanMinutes: number;
  readonly weightedTardinessMinutes: number;
  readonly changeoverMinutes: number;
  readonly objectiveValue: number;
  /** No schedule can be below this. */
  readonly lowerBound: number;
  readonly proven: boolean;
  readonly stoppedBy: "iterations" | "budget" | "proven";
  readonly iterations: number;
}

export interface SearchOptions {
  readonly seed: number;
  /** Schedules to try; with a budget and no iterations the budget alone ends the search. */
  readonly iterations?: number;
  /** A cap only: the same seed and iterations give the same schedule whenever the cap is not reached. */
  readonly budgetMs?: number;
  /** Wall clock in milliseconds; needed for `budgetMs`, never read otherwise. */
  readonly clockMs?: () => number;
}
