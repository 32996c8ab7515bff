/** The browser somebody signs in with, known by a cookie of its own that outlives the sign-in. */
import { floorStaff } from "#data/access";
import { type Db, db, type Tx } from "#data/client";
import { type DeviceRecord, findDevice, insertDevice, touchDevice } from "#data/devices";
import { newId } from "#data/ids";
import { hashToken, looksLikeToken, newToken } from "./tokens";

/** As a request tells it. */
export interface DeviceClaim {
  /** Of its cookie; none at a first visit. */
  readonly token?: string | undefined;
  /** As the browser names itself. */
  readonly name?: string | undefined;
}

const unnamed = "a browser";

/** The device of a cookie, or null when it has none that we know. */
export async function deviceByToken(db: Db | Tx, token: string | undefined): Promise<DeviceRecord | null> {
  if (token === undefined || !looksLikeToken(token)) return null;
  return findDevice(db, hashToken(token));
}

/**
 * The device somebody has just proved themselves on: as known, or a new one.
 * @returns with the token for its cookie where it is new, stored nowhere
 */
export async function deviceFor(
  tx: Tx,
  claim: DeviceClaim,
  known: DeviceRecord | null,
  now: Date,
): Promise<{ readonly device: DeviceRecord; readonly newToken: string | null }> {
  const name = claim.name ?? known?.name ?? unnamed;
  if (known !== null) {
    await touchDevice(tx, known.id, name, now);
    return { device: known, newToken: null };
  }
  const token = newToken();
  const device = await insertDevice(tx, { id: newId(), tokenHash: hashToken(token), name, at: now });
  return { device, newToken: token };
}

/** What the sign-in of an enrolled device offers. */
export interface FloorDoor {
  readonly name: string;
  /** Who has a short code, by name. */
  readonly people: readonly { readonly staffId: string; readonly name: string }[];
}

/** Null on a device that nobody has enrolled: there no name is told. */
export async function floorDoor(claim: DeviceClaim): Promise<FloorDoor | null> {
  const client = await db();
  const device = await deviceByToken(client, claim.token);
  if (device === null || device.enrolledAt === null) return null;
  const people = await floorStaff(client);
  return { name: device.floorName ?? device.name, people: people.map(({ id, name }) => ({ staffId: id, name })) };
}
