/** What a contact should say, beside what it says. */
import { accept, type Outcome, refuse } from "#engine/units";
import { normalisePhone } from "#shop/names/phone";

export interface CorrectContactInput {
  readonly name: string;
  /** Empty: there is none. */
  readonly phone: string;
  readonly email: string;
  readonly reason: string;
}

interface Contact {
  readonly name: string;
  readonly phone: string | null;
  readonly email: string | null;
}

export interface CorrectedContact extends Contact {
  /** E.164. */
  readonly phoneNormalised: string | null;
  /** By field: as it was, where it is different now. */
  readonly before: Readonly<Record<string, unknown>>;
  readonly reason: string;
}

/** Refuses `reason-missing`, `invalid-phone`, `contact-unchanged`. */
export function correctedContact(stands: Contact, input: CorrectContactInput): Outcome<CorrectedContact> {
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  const right: Contact = {
    name: input.name.trim(),
    phone: input.phone.trim() || null,
    email: input.email.trim() || null,
  };
  const number = right.phone === null ? accept(null) : normalisePhone(right.phone);
  if (!number.ok) return number;
  const changed = (["name", "phone", "email"] as const).filter((key) => stands[key] !== right[key]);
  if (changed.length === 0) return refuse({ code: "contact-unchanged" });
  const before = Object.fromEntries(changed.map((key) => [key, stands[key]]));
  return accept({ ...right, phoneNormalised: number.value, before, reason });
}
