/** Private links: a token's hash and what it opens. */
import type { Db, Tx } from "./client";
import type { LinkSubject } from "./generated/client";

export type { LinkSubject };

interface Subject {
  readonly subjectKind: LinkSubject;
  readonly subjectId: string;
}

export interface LinkRecord extends Subject {
  readonly createdAt: Date;
  readonly expiresAt: Date | null;
  readonly wallName: string | null;
}

export async function insertLink(
  db: Db | Tx,
  link: Subject & {
    readonly id: string;
    readonly tokenHash: string;
    readonly createdAt: Date;
    readonly expiresAt: Date;
    readonly wallName: string | null;
  },
): Promise<void> {
  await db.privateLink.create({ data: link });
}

/** What a living link stands for, or null when unknown, over or closed. */
export async function findLiveLink(db: Db | Tx, tokenHash: string, now: Date): Promise<Subject | null> {
  return db.privateLink.findFirst({
    where: { tokenHash, revokedAt: null, OR: [{ expiresAt: null }, { expiresAt: { gt: now } }] },
    select: { subjectKind: true, subjectId: true },
  });
}

/** A subject's links that nobody has closed, those that are over included; the newest first. */
export async function linksOf(db: Db | Tx, subject: Subject): Promise<readonly LinkRecord[]> {
  return db.privateLink.findMany({ where: { ...subject, revokedAt: null }, orderBy: { createdAt: "desc" } });
}

/** Every screen's link that nobody has closed, by its name. */
export async function wallLinks(db: Db | Tx): Promise<readonly LinkRecord[]> {
  return db.privateLink.findMany({
    where: { subjectKind: "wall", revokedAt: null },
    orderBy: [{ wallName: "asc" }, { createdAt: "asc" }],
  });
}

export async function revokeLinksOf(db: Db | Tx, subject: Subject, revokedAt: Date): Promise<number> {
  const { count } = await db.privateLink.updateMany({ where: { ...subject, revokedAt: null }, data: { revokedAt } });
  return count;
}

/** Sets the end of a subject's links that nobody has closed. @returns how many there are */
export async function endLinksAt(db: Db | Tx, subject: Subject, expiresAt: Date): Promise<number> {
  const { count } = await db.privateLink.updateMany({ where: { ...subject, revokedAt: null }, data: { expiresAt } });
  return count;
}

/** The same for those that would end later. */
export async function endLinksBy(db: Db | Tx, subject: Subject, latest: Date): Promise<void> {
  const later = { OR: [{ expiresAt: null }, { expiresAt: { gt: latest } }] };
  await db.privateLink.updateMany({ where: { ...subject, revokedAt: null, ...later }, data: { expiresAt: latest } });
}
