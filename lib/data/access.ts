/** Reads and writes of who may come in: staff, sessions, private links and rate counters. */
import type { Db, Tx } from "./client";
import type { LinkSubject, Staff, StaffRole } from "./generated/client";

export type { LinkSubject, StaffRole };

export interface StaffMember {
  readonly id: string;
  readonly email: string;
  readonly name: string;
  readonly role: StaffRole;
  readonly closedAt: Date | null;
}

function memberOf({ id, email, name, role, closedAt }: Staff): StaffMember {
  return { id, email, name, role, closedAt };
}

export async function findStaffForSignIn(
  db: Db | Tx,
  email: string,
): Promise<(StaffMember & { passwordHash: string }) | null> {
  const row = await db.staff.findUnique({ where: { email } });
  return row && { ...memberOf(row), passwordHash: row.passwordHash };
}

export async function insertStaff(
  db: Db | Tx,
  staff: {
    readonly id: string;
    readonly email: string;
    readonly name: string;
    readonly role: StaffRole;
    readonly passwordHash: string;
    readonly createdAt: Date;
  },
): Promise<void> {
  await db.staff.create({ data: staff });
}

/** @returns whether there was such a person */
export async function updatePassword(db: Db | Tx, staffId: string, passwordHash: string): Promise<boolean> {
  const { count } = await db.staff.updateMany({ where: { id: staffId }, data: { passwordHash } });
  return count === 1;
}

/** Marks a person as gone. @returns false when there is nobody of that id still here */
export async function closeStaff(db: Db | Tx, staffId: string, closedAt: Date): Promise<boolean> {
  const { count } = await db.staff.updateMany({ where: { id: staffId, closedAt: null }, data: { closedAt } });
  return count === 1;
}

export async function insertSession(
  db: Db | Tx,
  session: {
    readonly id: string;
    readonly staffId: string;
    readonly tokenHash: string;
    readonly createdAt: Date;
    readonly expiresAt: Date;
  },
): Promise<void> {
  await db.staffSession.create({ data: { ...session, lastSeenAt: session.createdAt } });
}

/** The living session of a token hash and its person, or null when unknown, expired, revoked or the person has left. */
export async function findLiveSession(
  db: Db | Tx,
  tokenHash: string,
  now: Date,
): Promise<{ readonly id: string; readonly lastSeenAt: Date; readonly staff: StaffMember } | null> {
  const row = await db.staffSession.findFirst({
    where: { tokenHash, revokedAt: null, expiresAt: { gt: now }, staff: { closedAt: null } },
    include: { staff: true },
  });
  return row && { id: row.id, lastSeenAt: row.lastSeenAt, staff: memberOf(row.staff) };
}

export async function touchSession(db: Db | Tx, sessionId: string, lastSeenAt: Date): Promise<void> {
  await db.staffSession.updateMany({ where: { id: sessionId }, data: { lastSeenAt } });
}

export async function revokeSession(db: Db | Tx, tokenHash: string, revokedAt: Date): Promise<number> {
  const { count } = await db.staffSession.updateMany({ where: { tokenHash, revokedAt: null }, data: { revokedAt } });
  return count;
}

export async function revokeSessionsOf(db: Db | Tx, staffId: string, revokedAt: Date): Promise<number> {
  const { count } = await db.staffSession.updateMany({ where: { staffId, revokedAt: null }, data: { revokedAt } });
  return count;
}

export async function insertLink(
  db: Db | Tx,
  link: {
    readonly id: string;
    readonly tokenHash: string;
    readonly subjectKind: LinkSubject;
    readonly subjectId: string;
    readonly createdAt: Date;
    readonly expiresAt: Date | null;
  },
): Promise<void> {
  await db.privateLink.create({ data: link });
}

/** What a living link stands for, or null when unknown, expired or revoked. */
export async function findLiveLink(
  db: Db | Tx,
  tokenHash: string,
  now: Date,
): Promise<{ readonly subjectKind: LinkSubject; readonly subjectId: string } | null> {
  return db.privateLink.findFirst({
    where: { tokenHash, revokedAt: null, OR: [{ expiresAt: null }, { expiresAt: { gt: now } }] },
    select: { subjectKind: true, subjectId: true },
  });
}

export async function revokeLinksOf(
  db: Db | Tx,
  subject: { readonly subjectKind: LinkSubject; readonly subjectId: string },
  revokedAt: Date,
): Promise<number> {
  const { count } = await db.privateLink.updateMany({ where: { ...subject, revokedAt: null }, data: { revokedAt } });
  return count;
}

/**
 * Counts one more event under `key` in a window that starts with its first event.
 * One statement, so parallel callers are counted exactly.
 * @returns the count including this event, and when the window started
 */
export async function countEvent(
  db: Db | Tx,
  key: string,
  now: Date,
  windowMinutes: number,
): Promise<{ readonly count: number; readonly windowStartedAt: Date }> {
  const oldest = new Date(now.getTime() - windowMinutes * 60_000);
  const rows = await db.$queryRaw<{ count: number; window_started_at: Date }[]>`
    INSERT INTO rate_counters AS c (key, window_started_at, count)
    VALUES (${key}, ${now}::timestamptz, 1)
    ON CONFLICT (key) DO UPDATE SET
      count = CASE WHEN c.window_started_at <= ${oldest}::timestamptz THEN 1 ELSE c.count + 1 END,
      window_started_at = CASE WHEN c.window_started_at <= ${oldest}::timestamptz THEN ${now}::timestamptz ELSE c.window_started_at END
    RETURNING count, window_started_at`;
  const [row] = rows;
  if (!row) throw new Error("countEvent: the upsert returned no row");
  return { count: Number(row.count), windowStartedAt: row.window_started_at };
}

export async function forgetEvents(db: Db | Tx, key: string): Promise<void> {
  await db.rateCounter.deleteMany({ where: { key } });
}

/** Removes counters and sessions nobody will ask about again. */
export async function sweepAccess(db: Db | Tx, before: Date): Promise<void> {
  await db.rateCounter.deleteMany({ where: { windowStartedAt: { lt: before } } });
  await db.staffSession.deleteMany({ where: { OR: [{ expiresAt: { lt: before } }, { revokedAt: { lt: before } }] } });
}
