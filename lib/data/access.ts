/** Reads and writes of who may come in: the people of the shop, and the counters that slow guessing down. */
import type { Db, Tx } from "./client";
import type { Staff, StaffRole } from "./generated/client";

export type { StaffRole };

export interface StaffMember {
  readonly id: string;
  readonly email: string;
  readonly name: string;
  readonly role: StaffRole;
  readonly createdAt: Date;
  readonly closedAt: Date | null;
  /** The password is the published one of the demo. */
  readonly isDemoPassword: boolean;
  /** Has a short code for the floor. */
  readonly hasFloorCode: boolean;
}

export function memberOf(row: Staff): StaffMember {
  const { id, email, name, role, createdAt, closedAt, isDemoPassword, floorCodeHash } = row;
  return { id, email, name, role, createdAt, closedAt, isDemoPassword, hasFloorCode: floorCodeHash !== null };
}

/** A person with what they prove themselves by. */
export interface StaffSecrets extends StaffMember {
  readonly passwordHash: string;
  readonly floorCodeHash: string | null;
}

/** By address, or by id where the person is known already. */
export async function findStaffForSignIn(
  db: Db | Tx,
  who: { readonly email: string } | { readonly id: string },
): Promise<StaffSecrets | null> {
  const row = await db.staff.findUnique({ where: who });
  return row && { ...memberOf(row), passwordHash: row.passwordHash, floorCodeHash: row.floorCodeHash };
}

/** Whether the shop has anybody at all, those who have left included. */
export async function hasStaff(db: Db | Tx): Promise<boolean> {
  return (await db.staff.findFirst({ select: { id: true } })) !== null;
}

/** Everybody who was ever taken on: who is still here first, then by name. */
export async function allStaff(db: Db | Tx): Promise<readonly StaffMember[]> {
  const rows = await db.staff.findMany({ orderBy: [{ name: "asc" }, { id: "asc" }] });
  const members = rows.map(memberOf);
  return [
    ...members.filter(({ closedAt }) => closedAt === null),
    ...members.filter(({ closedAt }) => closedAt !== null),
  ];
}

/** Who is here and has a short code for the floor, by name. */
export async function floorStaff(db: Db | Tx): Promise<readonly StaffMember[]> {
  const where = { closedAt: null, floorCodeHash: { not: null } };
  return (await db.staff.findMany({ where, orderBy: [{ name: "asc" }, { id: "asc" }] })).map(memberOf);
}

export async function countOwners(tx: Tx): Promise<number> {
  return tx.staff.count({ where: { role: "owner", closedAt: null } });
}

export async function insertStaff(
  db: Db | Tx,
  staff: {
    readonly id: string;
    readonly email: string;
    readonly name: string;
    readonly role: StaffRole;
    readonly passwordHash: string;
    readonly isDemoPassword?: boolean;
    readonly createdAt: Date;
  },
): Promise<void> {
  await db.staff.create({ data: staff });
}

/** @returns whether there is such a person who has not left */
export async function updatePassword(db: Db | Tx, staffId: string, passwordHash: string): Promise<boolean> {
  const data = { passwordHash, isDemoPassword: false };
  const { count } = await db.staff.updateMany({ where: { id: staffId, closedAt: null }, data });
  return count === 1;
}

/** Sets the short code for the floor, or takes it away. @returns whether there is such a person who has not left */
export async function updateFloorCode(db: Db | Tx, staffId: string, floorCodeHash: string | null): Promise<boolean> {
  const { count } = await db.staff.updateMany({ where: { id: staffId, closedAt: null }, data: { floorCodeHash } });
  return count === 1;
}

export async function insertFirstOwnerCode(db: Db | Tx, codeHash: string, madeAt: Date): Promise<void> {
  await db.firstOwnerCode.create({ data: { codeHash, madeAt } });
}

export async function isFirstOwnerCode(db: Db | Tx, codeHash: string): Promise<boolean> {
  return (await db.firstOwnerCode.count({ where: { codeHash } })) > 0;
}

export async function forgetFirstOwnerCodes(db: Db | Tx, before?: Date): Promise<void> {
  await db.firstOwnerCode.deleteMany({ where: before === undefined ? {} : { madeAt: { lt: before } } });
}

/** Marks a person as gone. The first day stays where they are gone already. */
export async function closeStaff(tx: Tx, staffId: string, closedAt: Date): Promise<void> {
  await tx.staff.updateMany({ where: { id: staffId, closedAt: null }, data: { closedAt, floorCodeHash: null } });
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

/** Takes one back that turned out not to count. */
export async function uncountEvent(db: Db | Tx, key: string): Promise<void> {
  await db.rateCounter.updateMany({ where: { key, count: { gt: 0 } }, data: { count: { decrement: 1 } } });
}

export async function forgetEvents(db: Db | Tx, key: string): Promise<void> {
  await db.rateCounter.deleteMany({ where: { key } });
}

/** Removes counters and sessions nobody will ask about again. Devices stay: that one is known is what keeps its people getting in. */
export async function sweepAccess(db: Db | Tx, before: Date): Promise<void> {
  await db.rateCounter.deleteMany({ where: { windowStartedAt: { lt: before } } });
  await db.staffSession.deleteMany({ where: { OR: [{ expiresAt: { lt: before } }, { revokedAt: { lt: before } }] } });
}
