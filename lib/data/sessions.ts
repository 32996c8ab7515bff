/** Sessions of the staff: one row for each sign-in, found by the hash of its token. */
import { memberOf, type StaffMember } from "./access";
import type { Db, Tx } from "./client";
import type { Prisma, SessionKind } from "./generated/client";

export type { SessionKind };

export interface NewSession {
  readonly id: string;
  readonly staffId: string;
  readonly kind: SessionKind;
  readonly tokenHash: string;
  readonly createdAt: Date;
  readonly expiresAt: Date;
  readonly idleMinutes: number;
  readonly deviceId: string | null;
}

export interface SessionTimes {
  readonly lastSeenAt: Date;
  readonly expiresAt: Date;
  readonly idleMinutes: number;
}

export interface SessionRecord extends SessionTimes {
  readonly id: string;
  readonly kind: SessionKind;
  readonly createdAt: Date;
  readonly deviceId: string | null;
  /** As the browser names itself; none for a session from before devices were known. */
  readonly deviceName: string | null;
  /** What an owner called the device when it was enrolled for the floor. */
  readonly floorName: string | null;
  readonly staff: StaffMember;
}

const whole = { staff: true, device: true } as const satisfies Prisma.StaffSessionInclude;

function recordOf(row: Prisma.StaffSessionGetPayload<{ include: typeof whole }>): SessionRecord {
  const { id, kind, createdAt, expiresAt, lastSeenAt, idleMinutes, deviceId, device, staff } = row;
  const names = { deviceName: device?.name ?? null, floorName: device?.floorName ?? null };
  return { id, kind, createdAt, expiresAt, lastSeenAt, idleMinutes, deviceId, ...names, staff: memberOf(staff) };
}

export async function insertSession(db: Db | Tx, session: NewSession): Promise<void> {
  await db.staffSession.create({ data: { ...session, lastSeenAt: session.createdAt } });
}

/** The session of a token hash that nobody has ended, of a person who is still here; whether its time is over is not asked. */
export async function findSession(db: Db | Tx, tokenHash: string): Promise<SessionRecord | null> {
  const row = await db.staffSession.findFirst({
    where: { tokenHash, revokedAt: null, staff: { closedAt: null } },
    include: whole,
  });
  return row && recordOf(row);
}

/** Sessions that nobody has ended, of one person or of everybody who is still here, last used first. */
export async function standingSessions(db: Db | Tx, staffId?: string): Promise<readonly SessionRecord[]> {
  const rows = await db.staffSession.findMany({
    where: { revokedAt: null, staff: { closedAt: null }, ...(staffId === undefined ? {} : { staffId }) },
    include: whole,
    orderBy: { lastSeenAt: "desc" },
  });
  return rows.map(recordOf);
}

export async function touchSession(db: Db | Tx, id: string, lastSeenAt: Date): Promise<void> {
  // Not backwards: of two requests at once the earlier may write last.
  await db.staffSession.updateMany({ where: { id, lastSeenAt: { lt: lastSeenAt } }, data: { lastSeenAt } });
}

/** Ends what is named, all of it. @returns how many were not ended yet */
export async function revokeSessions(
  db: Db | Tx,
  which: {
    readonly id?: string;
    readonly staffId?: string;
    readonly deviceId?: string;
    readonly kind?: SessionKind;
    /** This one stays. */
    readonly but?: string;
  },
  revokedAt: Date,
): Promise<number> {
  const { but, ...named } = which;
  if (Object.keys(named).length === 0) throw new Error("revokeSessions: whose?");
  const where = { ...named, ...(but === undefined ? {} : { NOT: { id: but } }), revokedAt: null };
  const { count } = await db.staffSession.updateMany({ where, data: { revokedAt } });
  return count;
}
