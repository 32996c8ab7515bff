/** Browsers that people of the shop have signed in with, and which of them an owner has enrolled for the floor. */
import type { Db, Tx } from "./client";
import type { Device } from "./generated/client";

export interface DeviceRecord {
  readonly id: string;
  /** As the browser names itself. */
  readonly name: string;
  readonly createdAt: Date;
  readonly lastSeenAt: Date;
  /** What an owner called it when it was enrolled; none when it is not. */
  readonly floorName: string | null;
  readonly enrolledAt: Date | null;
  readonly enrolledByName: string | null;
}

function recordOf({ id, name, createdAt, lastSeenAt, floorName, enrolledAt, enrolledByName }: Device): DeviceRecord {
  return { id, name, createdAt, lastSeenAt, floorName, enrolledAt, enrolledByName };
}

export async function insertDevice(
  db: Db | Tx,
  device: { readonly id: string; readonly tokenHash: string; readonly name: string; readonly at: Date },
): Promise<DeviceRecord> {
  const { at, ...facts } = device;
  return recordOf(await db.device.create({ data: { ...facts, createdAt: at, lastSeenAt: at } }));
}

export async function findDevice(db: Db | Tx, tokenHash: string): Promise<DeviceRecord | null> {
  const row = await db.device.findUnique({ where: { tokenHash } });
  return row && recordOf(row);
}

/** A device that somebody signs in with again; browsers change their names when they are renewed. */
export async function touchDevice(db: Db | Tx, id: string, name: string, lastSeenAt: Date): Promise<void> {
  await db.device.updateMany({ where: { id }, data: { name, lastSeenAt } });
}

/** Devices enrolled for the floor, by name. */
export async function enrolledDevices(db: Db | Tx): Promise<readonly DeviceRecord[]> {
  const rows = await db.device.findMany({
    where: { enrolledAt: { not: null } },
    orderBy: [{ floorName: "asc" }, { id: "asc" }],
  });
  return rows.map(recordOf);
}

/** @returns false when it is enrolled already */
export async function markEnrolled(
  tx: Tx,
  id: string,
  enrolled: { readonly floorName: string; readonly enrolledAt: Date; readonly enrolledByName: string },
): Promise<boolean> {
  const { count } = await tx.device.updateMany({ where: { id, enrolledAt: null }, data: enrolled });
  return count === 1;
}

/** @returns what it was called, or null when it was not enrolled */
export async function clearEnrolled(tx: Tx, id: string): Promise<string | null> {
  const row = await tx.device.findUnique({ where: { id } });
  const nothing = { floorName: null, enrolledAt: null, enrolledByName: null };
  const { count } = await tx.device.updateMany({ where: { id, enrolledAt: { not: null } }, data: nothing });
  return count === 1 ? (row?.floorName ?? "") : null;
}

export async function isDeviceKnown(db: Db | Tx, deviceId: string, staffId: string): Promise<boolean> {
  return (await db.knownDevice.count({ where: { deviceId, staffId } })) > 0;
}

/** From now on this person is known on this device; the first time counts. */
export async function rememberDevice(tx: Tx, deviceId: string, staffId: string, since: Date): Promise<void> {
  await tx.knownDevice.createMany({ data: [{ deviceId, staffId, since }], skipDuplicates: true });
}

/** The person is a stranger on every device again, but on one. */
export async function forgetDevicesOf(tx: Tx, staffId: string, but?: string | null): Promise<void> {
  await tx.knownDevice.deleteMany({ where: { staffId, ...(but ? { NOT: { deviceId: but } } : {}) } });
}
