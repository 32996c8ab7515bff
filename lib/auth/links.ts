/** Private links: whoever holds one stands for the skier of that one sheet, quote, order or pair, or for a screen on the wall. */
import { type Db, db, type Tx } from "#data/client";
import { endLinksAt, endLinksBy, findLiveLink, insertLink, linksOf, revokeLinksOf } from "#data/links";
import { type Guest, mintGuest, type Subject } from "./actor";
import { hashToken, looksLikeToken, newToken } from "./tokens";

const day = 86_400_000;

/** How long a link works, days, counted from when it was made or renewed. Shop practice, no source. */
export const linkDays: Readonly<Record<Subject["kind"], number>> = {
  sheet: 180,
  // For the days of one call; it ends with the quote at the latest.
  answers: 14,
  quote: 180,
  club: 180,
  // The pair's record goes on being read when the pair is skied.
  order: 730,
  pair: 730,
  wall: 365,
};

/** A passer-by: no link, no account. */
export function visitor(): Guest {
  return mintGuest([]);
}

/** When a link of this kind ends that is made or renewed now. */
export function linkEnd(kind: Subject["kind"], now: Date): Date {
  return new Date(now.getTime() + linkDays[kind] * day);
}

/**
 * Writes a new link and returns its token, which is shown once and stored nowhere. Call it in the transaction that
 * makes the subject. A subject may have several; revoking ends all of them.
 */
export async function issueLink(
  tx: Db | Tx,
  subject: Subject,
  made: { readonly id: string; readonly now: Date; readonly expiresAt?: Date; readonly wallName?: string },
): Promise<string> {
  const token = newToken();
  await insertLink(tx, {
    id: made.id,
    tokenHash: hashToken(token),
    subjectKind: subject.kind,
    subjectId: subject.id,
    createdAt: made.now,
    expiresAt: made.expiresAt ?? linkEnd(subject.kind, made.now),
    wallName: made.wallName ?? null,
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

/** Lets every link to a subject that nobody has closed work until this instant, also one that is over. @returns how many */
export async function renewLinks(tx: Tx, subject: Subject, until: Date): Promise<number> {
  return endLinksAt(tx, { subjectKind: subject.kind, subjectId: subject.id }, until);
}

/**
 * What a link opens has come to its end: whoever holds one can still read how it ended, for a while. Shop practice, no source.
 */
const closedDays = 60;

/** A cancelled order, a withdrawn quote, a sheet turned down: its links work for 60 days more at most. */
export async function endLinksSoon(tx: Tx, subject: Subject, now: Date): Promise<void> {
  const latest = new Date(now.getTime() + closedDays * day);
  await endLinksBy(tx, { subjectKind: subject.kind, subjectId: subject.id }, latest);
}

export interface LinkStanding {
  /** That work now. */
  readonly open: number;
  /** Whose time is over; a renewal opens them again. */
  readonly over: number;
  /** The last end of those that work, or the last of those that are over; null when there is none. */
  readonly until: Date | null;
}

/** What there is of links to a subject, those that somebody closed left out. */
export async function linkStanding(client: Db | Tx, subject: Subject, now: Date): Promise<LinkStanding> {
  const links = await linksOf(client, { subjectKind: subject.kind, subjectId: subject.id });
  const isOpen = ({ expiresAt }: (typeof links)[number]) => expiresAt === null || expiresAt > now;
  const open = links.filter(isOpen);
  const ends = (open.length > 0 ? open : links).map(({ expiresAt }) => expiresAt?.getTime() ?? 0);
  return {
    open: open.length,
    over: links.length - open.length,
    until: ends.length === 0 ? null : new Date(Math.max(...ends)),
  };
}
