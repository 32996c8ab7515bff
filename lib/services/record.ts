/** How use cases sign what they write. */
import type { Actor } from "#auth";
import type { EventSubject, NewEvent, Occasion } from "#data/events";
import type { NewMessage } from "#data/outbox";
import type { EventData, EventFacts, EventKind } from "#schemas/events";
import type { Context } from "./context";

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

export function isOwner(actor: Actor): boolean {
  return actor.kind === "system" || (actor.kind === "staff" && actor.role === "owner");
}

/** An event of a kind with that kind's particulars, signed with who asks and when. */
export function eventOf<Kind extends EventKind>(
  ctx: Context,
  kind: Kind,
  subject: { readonly kind: EventSubject; readonly id: string },
  data: EventData<Kind>,
): Occasion & { readonly kind: Kind; readonly data: EventData<Kind> } {
  return { ...occasionOf(ctx, subject), kind, data };
}

/** The same for what is decided elsewhere: a kind that comes with its own particulars. */
export function eventWith(
  ctx: Context,
  subject: { readonly kind: EventSubject; readonly id: string },
  facts: EventFacts,
): NewEvent {
  return { ...occasionOf(ctx, subject), ...facts };
}

function occasionOf(ctx: Context, subject: { readonly kind: EventSubject; readonly id: string }): Occasion {
  const { actor } = ctx;
  return {
    at: ctx.now,
    subjectKind: subject.kind,
    subjectId: subject.id,
    actorKind: actor.kind,
    actorId: actor.kind === "staff" ? actor.staffId : null,
    actorName: nameOf(actor),
  };
}

/** A message for the outbox: who it goes to is an address or "desk". */
export function messageOf(
  ctx: Context,
  kind: string,
  recipient: string,
  subject: { readonly kind: EventSubject; readonly id: string },
  data: Readonly<Record<string, unknown>> = {},
): NewMessage {
  return {
    id: ctx.newId(),
    kind,
    recipient,
    subjectKind: subject.kind,
    subjectId: subject.id,
    data,
    createdAt: ctx.now,
  };
}
