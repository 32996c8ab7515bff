/** How use cases sign what they write. */
import { type Actor, guestName, nameOf, occasionOf } from "#auth";
import type { EventSubject, NewEvent, Occasion } from "#data/events";
import type { NewMessage } from "#data/outbox";
import type { EventData, EventFacts, EventKind } from "#schemas/events";
import type { Context } from "./context";

export { guestName, nameOf };

/** An owner by password; by short code nobody decides as one. */
export function isOwner(actor: Actor): boolean {
  if (actor.kind === "system") return true;
  return actor.kind === "staff" && actor.role === "owner" && actor.sessionKind !== "floor";
}

/** An event of a kind with that kind's particulars, signed with who asks and when. */
export function eventOf<Kind extends EventKind>(
  ctx: Context,
  kind: Kind,
  subject: { readonly kind: EventSubject; readonly id: string },
  data: EventData<Kind>,
): Occasion & { readonly kind: Kind; readonly data: EventData<Kind> } {
  return { ...occasionOf(ctx.actor, ctx.now, subject), kind, data };
}

/** The same for what is decided elsewhere: a kind that comes with its own particulars. */
export function eventWith(
  ctx: Context,
  subject: { readonly kind: EventSubject; readonly id: string },
  facts: EventFacts,
): NewEvent {
  return { ...occasionOf(ctx.actor, ctx.now, subject), ...facts };
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
