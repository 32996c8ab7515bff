/**
 * Who is asking. An actor can only be made in lib/auth, so a use case that takes one has proof that somebody checked.
 */
import type { StaffRole } from "#data/access";
import type { SessionKind } from "#data/sessions";

declare const minted: unique symbol;

/** What a private link opens; `answers` has a sheet's id and opens the skier's answers on it alone. */
export interface Subject {
  readonly kind: "sheet" | "answers" | "quote" | "club" | "order" | "pair" | "wall";
  readonly id: string;
}

/** Somebody without an account; `grants` are what the links they hold open. Empty for a passer-by. */
export interface Guest {
  readonly kind: "guest";
  readonly grants: readonly Subject[];
  readonly [minted]: true;
}

export interface StaffActor {
  readonly kind: "staff";
  readonly staffId: string;
  readonly name: string;
  readonly role: StaffRole;
  /** "floor" when they came in by short code: then only what is done on the floor is theirs to do. */
  readonly sessionKind: SessionKind;
  readonly sessionId: string;
  readonly [minted]: true;
}

/** The program itself: the first start, a scheduled task, the command line. */
export interface SystemActor {
  readonly kind: "system";
  readonly task: string;
  readonly [minted]: true;
}

export type Actor = Guest | StaffActor | SystemActor;

/** The minting functions; lib/auth/index.ts does not hand out `mintStaff` and `mintGuest`. */
export function mintStaff(
  staff: { readonly id: string; readonly name: string; readonly role: StaffRole },
  session: { readonly id: string; readonly kind: SessionKind },
): StaffActor {
  const { id: staffId, name, role } = staff;
  return { kind: "staff", staffId, name, role, sessionKind: session.kind, sessionId: session.id } as StaffActor;
}

export function mintGuest(grants: readonly Subject[]): Guest {
  return { kind: "guest", grants } as Guest;
}

/** An actor for the program's own tasks. @param task names it in the record, such as "first start" */
export function systemActor(task: string): SystemActor {
  return { kind: "system", task } as SystemActor;
}
