/** The one door through which a letter leaves the shop. What is put in is sent: only where a person said so, or asked for it. */
import type { Tx } from "#data/client";
import type { EventSubject } from "#data/events";
import { addJob } from "#data/jobs";
import { insertLetter } from "#data/letters";

export interface NewLetter {
  readonly id: string;
  /** What it is, such as "notice-delay". */
  readonly kind: string;
  /** A mail address. */
  readonly to: string;
  /** Its heading, one line. */
  readonly subject: string;
  /** Plain text. */
  readonly text: string;
  /** What it is about. */
  readonly about: { readonly kind: EventSubject; readonly id: string };
  /** It holds a code or a link: its text is forgotten as soon as it has gone, or was given up. */
  readonly secret?: boolean;
  readonly createdAt: Date;
}

/** Whether there is anywhere to send it. */
export function isMailAddress(text: string): boolean {
  return /^[^\s@]+@[^\s@]+$/.test(text) && text.length <= 254;
}

/**
 * Puts a letter into the queue, in the caller's transaction: it goes out soon after that commits, and not when it does not.
 * @throws RangeError when `to` is no mail address, which the caller has to look at first (`isMailAddress`)
 */
export async function enqueueLetter(tx: Tx, letter: NewLetter): Promise<void> {
  if (!isMailAddress(letter.to)) throw new RangeError(`letter ${letter.id}: to is no mail address`);
  await insertLetter(tx, {
    id: letter.id,
    kind: letter.kind,
    recipient: letter.to,
    heading: letter.subject.replaceAll(/\s+/g, " ").trim(),
    body: letter.text,
    isSecret: letter.secret ?? false,
    subjectKind: letter.about.kind,
    subjectId: letter.about.id,
    createdAt: letter.createdAt,
  });
  await addJob(tx, "letter", letter.id);
}
