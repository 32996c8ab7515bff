/** The people of the shop: taking somebody on, a new password, somebody leaving. */
import { closeStaff, insertStaff, revokeSessionsOf, type StaffRole, updatePassword } from "#data/access";
import { db } from "#data/client";
import { Conflict, translateError } from "#data/errors";
import { newId } from "#data/ids";
import { transaction } from "#data/transaction";
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import type { Actor } from "./actor";
import { hashPassword, passwordLength } from "./passwords";
import { permit } from "./policy";

export interface NewStaff {
  readonly email: string;
  readonly name: string;
  readonly role: StaffRole;
  readonly password: string;
}

export async function takeOnStaff(
  actor: Actor,
  input: NewStaff,
  now: Date,
): Promise<Outcome<{ readonly id: string }, Refusal>> {
  const allowed = permit(actor, "staff.manage");
  if (!allowed.ok) return allowed;
  const weak = refusePassword(input.password);
  if (weak) return refuse(weak);
  const id = newId();
  const email = input.email.trim().toLowerCase();
  const passwordHash = await hashPassword(input.password);
  try {
    await insertStaff(await db(), {
      id,
      email,
      name: input.name.trim(),
      role: input.role,
      passwordHash,
      createdAt: now,
    });
  } catch (error) {
    const known = translateError(error);
    if (known instanceof Conflict) return refuse({ code: "email-taken", path: "email", email });
    throw known;
  }
  return accept({ id });
}

/** Sets a new password and ends the person's sessions everywhere. */
export async function changePassword(
  actor: Actor,
  staffId: string,
  password: string,
  now: Date,
): Promise<Outcome<void, Refusal>> {
  const isSelf = actor.kind === "staff" && actor.staffId === staffId;
  const allowed = permit(actor, "staff.manage");
  if (!isSelf && !allowed.ok) return allowed;
  const weak = refusePassword(password);
  if (weak) return refuse(weak);
  const passwordHash = await hashPassword(password);
  return transaction(await db(), async (tx) => {
    if (!(await updatePassword(tx, staffId, passwordHash))) return refuse({ code: "staff-unknown", staffId });
    await revokeSessionsOf(tx, staffId, now);
    return accept(undefined);
  });
}

/** Somebody leaves: no sign-in and no session counts from now on; what they did stays in the record. */
export async function letStaffGo(actor: Actor, staffId: string, now: Date): Promise<Outcome<void, Refusal>> {
  const allowed = permit(actor, "staff.manage");
  if (!allowed.ok) return allowed;
  if (actor.kind === "staff" && actor.staffId === staffId) return refuse({ code: "cannot-close-yourself", staffId });
  return transaction(await db(), async (tx) => {
    if (!(await closeStaff(tx, staffId, now))) return refuse({ code: "staff-unknown", staffId });
    await revokeSessionsOf(tx, staffId, now);
    return accept(undefined);
  });
}

function refusePassword(password: string): Refusal | null {
  const { min, max } = passwordLength;
  if (password.length >= min && password.length <= max) return null;
  return { code: "password-length", path: "password", length: password.length, min, max };
}
