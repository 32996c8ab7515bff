/** How use cases sign what they write. */
import type { Actor } from "#auth";
import type { EventSubject, NewEvent } from "#data/events";
import type { NewMessage } from "#data/outbox";
import type { Context } from "./context";

/** The name that stands in the record: a person's for staff, "skier" for who holds a link. */
export function nameOf(actor: Actor): string {
  switch (actor.kind) {
    case "staff":
      return actor.name;
    case "guest":
      return "skier";
    case "system":
      return actor.task;
  }
}

export function isOwner(actor: Actor): boolean {
  return actor.kind === "system" || (actor.kind === "staff" && actor.role === "owner");
}

export function eventOf(
  ctx: Context,
  kind: string,
  subject: { readonly kind: EventSubject; readonly id: string },
  data: Readonly<Record<string, unknown>> = {},
): NewEvent {
  const { actor } = ctx;
  return {
    at: ctx.now,
    kind,
    subjectKind: subject.kind,
    subjectId: subject.id,
    actorKind: actor.kind,
    actorId: actor.kind === "staff" ? actor.staffId : null,
    actorName: nameOf(actor),
    data,
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
