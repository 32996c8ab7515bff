/** Staff sign-in: a random token in a cookie, its hash in the database, revocable at any time. */
import {
  findLiveSession,
  findStaffForSignIn,
  insertSession,
  revokeSession,
  sweepAccess,
  touchSession,
} from "#data/access";
import { db } from "#data/client";
import { newId } from "#data/ids";
import { accept, type Outcome, refuse } from "#engine/units";
import { mintStaff, type StaffActor } from "./actor";
import { isPassword, spendPasswordTime } from "./passwords";
import { countAttempt, forgetAttempts, signInLimits, type TooMany } from "./rate-limit";
import { hashToken, looksLikeToken, newToken } from "./tokens";

/** A working day with its overtime; staff sign in once a morning. Shop practice, no source. */
export const sessionHours = 14;
const touchEveryMinutes = 5;
/** Ended sessions and old counters are kept this long, then swept at the next sign-in. */
const keptDays = 30;

export interface SignIn {
  readonly email: string;
  readonly password: string;
  /** Where the request came from, as far as it can be believed. */
  readonly address: string;
}

export interface Session {
  /** Goes into the cookie; stored nowhere. */
  readonly token: string;
  readonly expiresAt: Date;
  readonly actor: StaffActor;
}

export interface WrongSignIn {
  readonly code: "wrong-sign-in";
  readonly path: "password";
  readonly [parameter: string]: unknown;
}

/**
 * Checks a password and opens a session. Unknown address, wrong password and a person who has left are told alike.
 * The attempt is counted before the password is looked at, so parallel guesses count too.
 */
export async function signIn(input: SignIn, now: Date): Promise<Outcome<Session, WrongSignIn | TooMany>> {
  const client = await db();
  const email = input.email.trim().toLowerCase();
  const byAddress = await countAttempt(client, signInLimits.address, input.address, now);
  if (!byAddress.ok) return byAddress;
  const byAccount = await countAttempt(client, signInLimits.account, email, now);
  if (!byAccount.ok) return byAccount;

  const staff = await findStaffForSignIn(client, email);
  if (!staff || staff.closedAt !== null) {
    await spendPasswordTime(input.password);
    return refuse({ code: "wrong-sign-in", path: "password" });
  }
  if (!(await isPassword(input.password, staff.passwordHash)))
    return refuse({ code: "wrong-sign-in", path: "password" });

  await forgetAttempts(client, signInLimits.account, email);
  await sweepAccess(client, new Date(now.getTime() - keptDays * 86_400_000));
  const token = newToken();
  const expiresAt = new Date(now.getTime() + sessionHours * 3_600_000);
  await insertSession(client, {
    id: newId(),
    staffId: staff.id,
    tokenHash: hashToken(token),
    createdAt: now,
    expiresAt,
  });
  return accept({ token, expiresAt, actor: mintStaff(staff) });
}

/** The person behind a session cookie, or null when it does not count (any more). */
export async function staffBySession(token: string | undefined, now: Date): Promise<StaffActor | null> {
  if (token === undefined || !looksLikeToken(token)) return null;
  const client = await db();
  const session = await findLiveSession(client, hashToken(token), now);
  if (!session) return null;
  if (now.getTime() - session.lastSeenAt.getTime() > touchEveryMinutes * 60_000) {
    await touchSession(client, session.id, now);
  }
  return mintStaff(session.staff);
}

export async function signOut(token: string, now: Date): Promise<void> {
  if (looksLikeToken(token)) await revokeSession(await db(), hashToken(token), now);
}
