/**
 * Messages to people: written with the change they tell of, sent after commit. None holds the key of a private link: whoever
 * sends it makes a link to its subject then, and only that link's hash is stored.
 */
import type { Tx } from "./client";
import { asJson } from "./json";

export interface NewMessage {
  readonly id: string;
  readonly kind: string;
  readonly recipient: string;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly data: Readonly<Record<string, unknown>>;
  readonly createdAt: Date;
}

export async function queueMessages(tx: Tx, messages: readonly NewMessage[]): Promise<void> {
  if (messages.length === 0) return;
  await tx.outboxMessage.createMany({ data: messages.map((message) => ({ ...message, data: asJson(message.data) })) });
}
