/** How what happened is signed: when, about whom, and by whom. */
import type { EventSubject, NewEvent, Occasion } from "#data/events";
import type { EventFacts } from "#schemas/events";
import type { Actor } from "./actor";

/** How a record names whoever holds a link. */
export const guestName = "skier";

/** The name that stands in the record: a person's for staff, "skier" for who holds a link. */
export function nameOf(actor: Actor): string {
  switch (actor.kind) {
    case "staff":
      return actor.name;
    case "guest":
      return guestName;
    case "system":
      return actor.task;
  }
}

export function occasionOf(
  actor: Actor,
  at: Date,
  subject: { readonly kind: EventSubject; readonly id: string },
): Occasion {
  return {
    at,
    subjectKind: subject.kind,
    subjectId: subject.id,
    actorKind: actor.kind,
    actorId: actor.kind === "staff" ? actor.staffId : null,
    actorName: nameOf(actor),
  };
}

/** What happened to somebody of the staff. */
export function staffEvent(actor: Actor, at: Date, staffId: string, facts: EventFacts): NewEvent {
  return { ...occasionOf(actor, at, { kind: "staff", id: staffId }), ...facts };
}
