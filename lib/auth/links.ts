/** Private links: whoever holds one stands for the skier of that one sheet, quote, order or pair. */
import { findLiveLink, insertLink, revokeLinksOf } from "#data/access";
import { type Db, db, type Tx } from "#data/client";
import { type Guest, mintGuest, type Subject } from "./actor";
import { hashToken, looksLikeToken, newToken } from "./tokens";

/** A passer-by: no link, no account. */
export function visitor(): Guest {
  return mintGuest([]);
}

/**
 * Writes a new link and returns its token, which is shown once and stored nowhere. Call it in the transaction that
 * makes the subject. A subject may have several; revoking ends all of them.
 */
export async function issueLink(
  tx: Db | Tx,
  subject: Subject,
  made: { readonly id: string; readonly now: Date; readonly expiresAt?: Date },
): Promise<string> {
  const token = newToken();
  await insertLink(tx, {
    id: made.id,
    tokenHash: hashToken(token),
    subjectKind: subject.kind,
    subjectId: subject.id,
    createdAt: made.now,
    expiresAt: made.expiresAt ?? null,
  });
  return token;
}

/** The guest a token stands for and its subject; null when the link is unknown, expired or revoked. */
export async function guestByToken(
  token: string,
  now: Date,
): Promise<{ readonly actor: Guest; readonly subject: Subject } | null> {
  if (!looksLikeToken(token)) return null;
  const link = await findLiveLink(await db(), hashToken(token), now);
  if (!link) return null;
  const subject: Subject = { kind: link.subjectKind, id: link.subjectId };
  return { actor: mintGuest([subject]), subject };
}

/** Ends every link to a subject. @returns how many were live */
export async function revokeLinks(tx: Db | Tx, subject: Subject, now: Date): Promise<number> {
  return revokeLinksOf(tx, { subjectKind: subject.kind, subjectId: subject.id }, now);
}
