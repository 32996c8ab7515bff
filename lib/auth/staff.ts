/** The people of the shop: taking somebody on, new passwords and short codes, somebody leaving. Each is an event. */
import {
  closeStaff,
  countOwners,
  findStaffForSignIn,
  insertStaff,
  type StaffRole,
  updateFloorCode,
  updatePassword,
} from "#data/access";
import { db, type Tx } from "#data/client";
import { forgetDevicesOf } from "#data/devices";
import { Conflict } from "#data/errors";
import { recordEvents } from "#data/events";
import { newId } from "#data/ids";
import { lockName } from "#data/locks";
import { revokeSessions } from "#data/sessions";
import { transaction } from "#data/transaction";
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import type { Actor } from "./actor";
import { weakFloorCode } from "./floor-codes";
import { hashSecret, isSecret } from "./passwords";
import { permit } from "./policy";
import { countAttempt, forgetAttempts, signInLimits } from "./rate-limit";
import { staffEvent } from "./record";
import { weakPassword } from "./weak-passwords";

export interface NewStaff {
  readonly email: string;
  readonly name: string;
  readonly role: StaffRole;
  readonly password: string;
  /** The demo's published password: taken as it is, and good on this machine only. */
  readonly isDemoPassword?: boolean;
}

export async function takeOnStaff(
  actor: Actor,
  input: NewStaff,
  now: Date,
  workshop: readonly string[] = [],
): Promise<Outcome<{ readonly id: string }, Refusal>> {
  const allowed = permit(actor, "staff.manage");
  if (!allowed.ok) return allowed;
  const isDemoPassword = actor.kind === "system" && input.isDemoPassword === true;
  const weak = isDemoPassword ? null : weakPassword(input.password, [input.name, input.email, ...workshop]);
  if (weak) return refuse(weak);
  const row = await staffRow({ ...input, isDemoPassword }, now);
  try {
    await transaction(await db(), async (tx) => {
      await insertStaff(tx, row);
      await recordEvents(tx, [staffEvent(actor, now, row.id, { kind: "staff-taken-on", data: { role: row.role } })]);
    });
  } catch (error) {
    if (error instanceof Conflict) return refuse({ code: "email-taken", path: "email", email: row.email });
    throw error;
  }
  return accept({ id: row.id });
}

/** A new person as they are kept. */
export async function staffRow({ email, name, role, password, isDemoPassword = false }: NewStaff, now: Date) {
  return {
    id: newId(),
    email: email.trim().toLowerCase(),
    name: name.trim(),
    role,
    passwordHash: await hashSecret(password),
    isDemoPassword,
    createdAt: now,
  };
}

/** An owner sets somebody's password, and ends the person's sign-ins everywhere; no device knows them any more. */
export async function changePassword(
  actor: Actor,
  staffId: string,
  password: string,
  now: Date,
  workshop: readonly string[] = [],
): Promise<Outcome<void, Refusal>> {
  const allowed = permit(actor, "staff.manage");
  if (!allowed.ok) return allowed;
  const person = await findStaffForSignIn(await db(), { id: staffId });
  if (person === null || person.closedAt !== null) return refuse({ code: "staff-unknown", staffId });
  const weak = weakPassword(password, [person.name, person.email, ...workshop]);
  if (weak) return refuse(weak);
  return keepPassword(actor, staffId, password, now);
}

/** One's own password, by the one that counts now; every other sign-in of the person ends, this one stays. */
export async function changeOwnPassword(
  actor: Actor,
  input: { readonly current: string; readonly password: string },
  now: Date,
  workshop: readonly string[] = [],
): Promise<Outcome<void, Refusal>> {
  const allowed = permit(actor, "account.own");
  if (!allowed.ok) return allowed;
  if (actor.kind !== "staff") return refuse({ code: "not-allowed", action: "account.own", signIn: true });
  const client = await db();
  const { staffId, sessionId } = actor;
  const counted = await countAttempt(client, signInLimits.knownDevice, `own ${staffId}`, now);
  if (!counted.ok) return counted;
  const person = await findStaffForSignIn(client, { id: staffId });
  if (person === null) return refuse({ code: "staff-unknown", staffId });
  if (!(await isSecret(input.current, person.passwordHash)))
    return refuse({ code: "wrong-password", path: "currentPassword" });
  await forgetAttempts(client, signInLimits.knownDevice, `own ${staffId}`);
  const weak = weakPassword(input.password, [person.name, person.email, ...workshop]);
  if (weak) return refuse(weak);
  return keepPassword(actor, staffId, input.password, now, sessionId);
}

async function keepPassword(
  actor: Actor,
  staffId: string,
  password: string,
  now: Date,
  but?: string,
): Promise<Outcome<void, Refusal>> {
  const passwordHash = await hashSecret(password);
  return transaction(await db(), async (tx) => {
    if (!(await updatePassword(tx, staffId, passwordHash))) return refuse({ code: "staff-unknown", staffId });
    const sessions = await revokeSessions(tx, { staffId, ...(but === undefined ? {} : { but }) }, now);
    // Whoever has the old password is a stranger on every device, and cannot go round the limit of tries there.
    await forgetDevicesOf(tx, staffId);
    await recordEvents(tx, [staffEvent(actor, now, staffId, { kind: "password-set", data: { sessions } })]);
    return accept(undefined);
  });
}

/** Sets or takes away the short code of somebody (an owner) or one's own; sign-ins by the old one end. */
export async function setFloorCode(
  actor: Actor,
  input: { readonly staffId: string; readonly code: string | null },
  now: Date,
): Promise<Outcome<void, Refusal>> {
  const { staffId, code } = input;
  const isSelf = actor.kind === "staff" && actor.staffId === staffId;
  const allowed = permit(actor, isSelf ? "account.own" : "staff.manage");
  if (!allowed.ok) return allowed;
  const weak = code === null ? null : weakFloorCode(code);
  if (weak) return refuse(weak);
  const codeHash = code === null ? null : await hashSecret(code);
  return transaction(await db(), async (tx) => {
    if (!(await updateFloorCode(tx, staffId, codeHash))) return refuse({ code: "staff-unknown", staffId });
    const sessions = await revokeSessions(tx, { staffId, kind: "floor" }, now);
    const facts =
      codeHash === null
        ? ({ kind: "floor-code-taken", data: { sessions } } as const)
        : ({ kind: "floor-code-set", data: {} } as const);
    await recordEvents(tx, [staffEvent(actor, now, staffId, facts)]);
    return accept(undefined);
  });
}

/**
 * Somebody leaves: no sign-in and no session counts from this instant; what they did stays in the record. Refuses
 * `cannot-close-yourself`, and `last-owner`: of two owners who let each other go at once, one stays.
 */
export async function letStaffGo(actor: Actor, staffId: string, now: Date): Promise<Outcome<void, Refusal>> {
  const allowed = permit(actor, "staff.manage");
  if (!allowed.ok) return allowed;
  if (actor.kind === "staff" && actor.staffId === staffId) return refuse({ code: "cannot-close-yourself", staffId });
  return transaction(await db(), async (tx) => {
    await lockName(tx, "owners");
    const refused = await notToGo(tx, staffId);
    if (refused) return refuse(refused);
    await closeStaff(tx, staffId, now);
    const sessions = await revokeSessions(tx, { staffId }, now);
    await forgetDevicesOf(tx, staffId);
    await recordEvents(tx, [staffEvent(actor, now, staffId, { kind: "staff-left", data: { sessions } })]);
    return accept(undefined);
  });
}

async function notToGo(tx: Tx, staffId: string): Promise<Refusal | null> {
  const person = await findStaffForSignIn(tx, { id: staffId });
  if (person === null || person.closedAt !== null) return { code: "staff-unknown", staffId };
  if (person.role === "owner" && (await countOwners(tx)) <= 1) return { code: "last-owner", staffId };
  return null;
}
