import type { Instant } from "#engine/units";
/** A press as the person who loads it finds it; free when nothing is in it and it is not down. */
export interface PressChoice {
  readonly press: string;
  readonly name: string;
  readonly takenBy: { readonly serial: string; readonly by: string } | null;
  readonly down: { readonly until: Instant | null; readonly reason: string } | null;
}
