/** The first owner of an empty shop: a one-time code is told in the terminal, and whoever types it on the page is the owner. */
import { forgetFirstOwnerCodes, hasStaff, insertFirstOwnerCode, insertStaff, isFirstOwnerCode } from "#data/access";
import { db } from "#data/client";
import { recordEvents } from "#data/events";
import { lockName } from "#data/locks";
import { transaction } from "#data/transaction";
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import type { Actor } from "./actor";
import { permit } from "./policy";
import { countAttempt, signInLimits } from "./rate-limit";
import { staffEvent } from "./record";
import { staffRow } from "./staff";
import { hashToken, newReadableCode, readableCode } from "./tokens";
import { weakPassword } from "./weak-passwords";

/** A code that nobody has typed for so long is forgotten at the next start. */
const keptDays = 7;

/** Whether nobody was ever taken on. */
export async function isShopEmpty(): Promise<boolean> {
  return !(await hasStaff(await db()));
}

/**
 * At the start of a shop that has nobody yet: a code that makes its first owner, stored only as a hash. Starts of several
 * servers each have their own; the first one that is typed ends all of them.
 * @returns null when the shop has somebody
 */
export async function offerFirstOwner(now: Date): Promise<string | null> {
  const client = await db();
  if (await hasStaff(client)) return null;
  await forgetFirstOwnerCodes(client, new Date(now.getTime() - keptDays * 86_400_000));
  const code = newReadableCode();
  await insertFirstOwnerCode(client, hashToken(readableCode(code)), now);
  return code;
}

export interface FirstOwner {
  readonly code: string;
  readonly name: string;
  readonly email: string;
  readonly password: string;
  readonly address: string;
}

/** Makes the first owner. Refuses `shop-has-people`, `wrong-first-owner-code`, a weak password and too many tries. */
export async function makeFirstOwner(
  actor: Actor,
  input: FirstOwner,
  now: Date,
  workshop: readonly string[] = [],
): Promise<Outcome<void, Refusal>> {
  const allowed = permit(actor, "first-owner.make");
  if (!allowed.ok) return allowed;
  const client = await db();
  if (await hasStaff(client)) return refuse({ code: "shop-has-people" });
  const counted = await countAttempt(client, signInLimits.firstOwner, input.address, now);
  if (!counted.ok) return counted;
  const codeHash = hashToken(readableCode(input.code));
  if (!(await isFirstOwnerCode(client, codeHash))) return refuse({ code: "wrong-first-owner-code", path: "passcode" });
  const weak = weakPassword(input.password, [input.name, input.email, ...workshop]);
  if (weak) return refuse(weak);
  const row = await staffRow({ ...input, role: "owner" }, now);
  return transaction(client, async (tx) => {
    await lockName(tx, "first owner");
    if (await hasStaff(tx)) return refuse({ code: "shop-has-people" });
    await insertStaff(tx, row);
    await forgetFirstOwnerCodes(tx);
    await recordEvents(tx, [staffEvent(actor, now, row.id, { kind: "first-owner-made", data: {} })]);
    return accept(undefined);
  });
}
