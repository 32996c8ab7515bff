/**
 * Staff sign-in: a random token in a cookie, its hash in the database, over by the clock, by idleness or by somebody's word.
 * By password a person may do what their role may; by short code, on a device of the floor, only what is done there.
 */
import { findStaffForSignIn, type StaffSecrets, sweepAccess } from "#data/access";
import { type Db, db, type Tx } from "#data/client";
import { type DeviceRecord, isDeviceKnown, rememberDevice } from "#data/devices";
import { recordEvents } from "#data/events";
import { newId } from "#data/ids";
import { lockName } from "#data/locks";
import {
  findSession,
  insertSession,
  revokeSessions,
  type SessionKind,
  standingSessions,
  touchSession,
} from "#data/sessions";
import { transaction } from "#data/transaction";
import { accept, type Outcome, refuse } from "#engine/units";
import { mintStaff, type StaffActor, systemActor } from "./actor";
import { type DeviceClaim, deviceByToken, deviceFor } from "./devices";
import { type Door, demoMayEnter } from "./door";
import { idleMinutesFor, isOver, sessionHours } from "./idle";
import { isSecret, spendSecretTime } from "./passwords";
import { countAttempt, forgetAttempts, giveBack, type Limit, signInLimits, type TooMany } from "./rate-limit";
import { staffEvent } from "./record";
import { hashToken, looksLikeToken, newToken } from "./tokens";

/** What somebody did is written down at most this often. */
const touchEveryMs = 60_000;
/** Ended sessions and old counters are kept this long, then swept at the next sign-in. */
const keptDays = 30;

export interface SignIn extends Door {
  readonly email: string;
  readonly password: string;
  readonly device?: DeviceClaim;
}

export interface FloorSignIn {
  readonly staffId: string;
  readonly code: string;
  readonly device: DeviceClaim;
}

export interface Session {
  /** Goes into the cookie; stored nowhere. */
  readonly token: string;
  readonly expiresAt: Date;
  readonly actor: StaffActor;
  /** Goes into the device's own cookie; null where the browser has it. */
  readonly deviceToken: string | null;
}

export interface WrongSignIn {
  readonly code: "wrong-sign-in" | "wrong-floor-code" | "demo-here-only" | "not-a-floor-device";
  readonly path?: "password" | "passcode";
  readonly [parameter: string]: unknown;
}

/**
 * Checks a password and opens a session. Unknown address, wrong password and a person who has left are told alike. Every
 * attempt is counted before the password is looked at, so parallel guesses count too; one that succeeds is taken back, so
 * only failures count. On a device that knows the person their own count holds: whoever guesses elsewhere keeps nobody out.
 */
export async function signIn(input: SignIn, now: Date): Promise<Outcome<Session, WrongSignIn | TooMany>> {
  const client = await db();
  const email = input.email.trim().toLowerCase();
  const staff = await findStaffForSignIn(client, { email });
  const device = await deviceByToken(client, input.device?.token);
  const isKnown = staff !== null && device !== null && (await isDeviceKnown(client, device.id, staff.id));
  const counted: readonly (readonly [Limit, string])[] = isKnown
    ? [[signInLimits.knownDevice, `${device.id} ${email}`]]
    : [
        [signInLimits.address, input.address],
        [signInLimits.account, email],
      ];
  for (const [limit, who] of counted) {
    const attempt = await countAttempt(client, limit, who, now);
    if (attempt.ok) continue;
    await tellOfGuessing(client, staff, limit, attempt.refusal, now);
    return attempt;
  }
  const person = await proved(input.password, staff, "passwordHash");
  if (person === null) return refuse({ code: "wrong-sign-in", path: "password" });
  if (person.isDemoPassword && !demoMayEnter(input)) return refuse({ code: "demo-here-only", path: "password" });
  for (const [limit, who] of counted)
    await (limit === signInLimits.address ? giveBack : forgetAttempts)(client, limit, who);
  return accept(await openSession(client, person, "full", { claim: input.device ?? {}, device, isKnown }, now));
}

/**
 * Checks a short code on an enrolled device. Refuses `not-a-floor-device`, `wrong-floor-code` for a wrong code, an unknown
 * person and one without a code alike, and too many tries by person and by device.
 */
export async function signInByCode(input: FloorSignIn, now: Date): Promise<Outcome<Session, WrongSignIn | TooMany>> {
  const client = await db();
  const device = await deviceByToken(client, input.device.token);
  if (device === null || device.enrolledAt === null) return refuse({ code: "not-a-floor-device" });
  const staff = await findStaffForSignIn(client, { id: input.staffId });
  const counted: readonly (readonly [Limit, string])[] = [
    [signInLimits.floorDevice, device.id],
    [signInLimits.floorPerson, input.staffId],
  ];
  for (const [limit, who] of counted) {
    const attempt = await countAttempt(client, limit, who, now);
    if (attempt.ok) continue;
    await tellOfGuessing(client, staff, limit, attempt.refusal, now);
    return attempt;
  }
  const person = await proved(input.code, staff, "floorCodeHash");
  if (person === null) return refuse({ code: "wrong-floor-code", path: "passcode" });
  await giveBack(client, signInLimits.floorDevice, device.id);
  await forgetAttempts(client, signInLimits.floorPerson, input.staffId);
  return accept(await openSession(client, person, "floor", { claim: input.device, device, isKnown: true }, now));
}

/** The person, if the secret is theirs. As long for nobody, who has left and who has none such as for a wrong one. */
async function proved(secret: string, staff: StaffSecrets | null, by: "passwordHash" | "floorCodeHash") {
  const secretHash = staff?.[by];
  if (staff === null || staff.closedAt !== null || !secretHash) {
    await spendSecretTime(secret);
    return null;
  }
  return (await isSecret(secret, secretHash)) ? staff : null;
}

interface Where {
  readonly claim: DeviceClaim;
  readonly device: DeviceRecord | null;
  /** This person has proved their password here before. */
  readonly isKnown: boolean;
}

/** One session a device: the new one ends the others there, whoever's they are. Of two at once the later stands. */
async function openSession(
  client: Db,
  staff: StaffSecrets,
  kind: SessionKind,
  { claim, device: seen, isKnown }: Where,
  now: Date,
): Promise<Session> {
  await sweepAccess(client, new Date(now.getTime() - keptDays * 86_400_000));
  const token = newToken();
  const id = newId();
  const expiresAt = new Date(now.getTime() + sessionHours * 3_600_000);
  const actor = mintStaff(staff, { id, kind });
  const deviceToken = await transaction(client, async (tx) => {
    const { device, newToken: fresh } = await deviceFor(tx, claim, seen, now);
    await lockName(tx, `device ${device.id}`);
    await endOthersHere(tx, actor, device.id, now);
    await insertSession(tx, {
      id,
      staffId: staff.id,
      kind,
      tokenHash: hashToken(token),
      createdAt: now,
      expiresAt,
      idleMinutes: idleMinutesFor(staff.role, isKnown),
      deviceId: device.id,
    });
    if (kind === "full") await rememberDevice(tx, device.id, staff.id, now);
    const facts = { device: device.floorName ?? device.name, how: kind, isNewDevice: !isKnown };
    await recordEvents(tx, [staffEvent(actor, now, staff.id, { kind: "signed-in", data: facts })]);
    return fresh;
  });
  return { token, expiresAt, actor, deviceToken };
}

/** Tells of those that were still going on; one that had run out ends without a word. */
async function endOthersHere(tx: Tx, actor: StaffActor, deviceId: string, now: Date): Promise<void> {
  const here = (await standingSessions(tx)).filter((session) => session.deviceId === deviceId);
  await revokeSessions(tx, { deviceId }, now);
  const told = here.filter((session) => !isOver(session, now));
  if (told.length === 0) return;
  const ended = { kind: "sign-ins-ended", data: { sessions: 1, why: "replaced" } } as const;
  await recordEvents(
    tx,
    told.map(({ staff }) => staffEvent(actor, now, staff.id, ended)),
  );
}

/** Written down once a window, when guesses at one person are first refused: the owner sees it. */
async function tellOfGuessing(
  client: Db,
  staff: StaffSecrets | null,
  limit: Limit,
  { tries }: TooMany,
  now: Date,
): Promise<void> {
  if (staff === null || tries !== limit.allowed + 1) return;
  const data = { tries, minutes: limit.windowMinutes };
  await transaction(client, (tx) =>
    recordEvents(tx, [staffEvent(systemActor("the door"), now, staff.id, { kind: "sign-in-guessed", data })]),
  );
}

/**
 * The person behind a session cookie, or null when it does not count (any more).
 * @param isTheirDoing false for what a page asks by itself: that keeps nobody signed in
 */
export async function staffBySession(
  token: string | undefined,
  now: Date,
  isTheirDoing = true,
): Promise<StaffActor | null> {
  if (token === undefined || !looksLikeToken(token)) return null;
  const client = await db();
  const session = await findSession(client, hashToken(token));
  if (session === null || isOver(session, now)) return null;
  if (isTheirDoing && now.getTime() - session.lastSeenAt.getTime() >= touchEveryMs) {
    await touchSession(client, session.id, now);
  }
  return mintStaff(session.staff, session);
}

export async function signOut(token: string, now: Date): Promise<void> {
  const actor = await staffBySession(token, now, false);
  if (actor === null) return;
  await transaction(await db(), async (tx) => {
    if ((await revokeSessions(tx, { id: actor.sessionId }, now)) === 0) return;
    await recordEvents(tx, [staffEvent(actor, now, actor.staffId, { kind: "signed-out", data: {} })]);
  });
}
