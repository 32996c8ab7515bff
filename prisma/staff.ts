/** The people of the shop from the command line: the first owner of a shop without the demo, a new password, somebody leaving. */
import { z } from "zod";
import { changePassword, letStaffGo, systemActor, takeOnStaff } from "#auth";
import { findStaffForSignIn } from "#data/access";
import { closeDatabase, database, db } from "#data/client";
import { prepareDatabase } from "#data/first-start";
import type { Outcome } from "#engine/units";
import { newStaffSchema } from "#schemas";

const somebody = { email: newStaffSchema.shape.email };
const request = z.discriminatedUnion("verb", [
  z.strictObject({ verb: z.literal("add"), ...newStaffSchema.shape }),
  z.strictObject({ verb: z.literal("password"), ...somebody, password: newStaffSchema.shape.password }),
  z.strictObject({ verb: z.literal("leave"), ...somebody }),
]);

/** @returns what is wrong in words, or null when it is done */
export async function manageStaff(input: unknown, prismaFolder: string, now: Date): Promise<string | null> {
  const parsed = request.safeParse(input);
  if (!parsed.success) return parsed.error.issues.map((issue) => issue.message).join("; ");
  const open = await database();
  try {
    // What somebody sets up by hand begins without the demo.
    await prepareDatabase(open, prismaFolder, async () => {});
    const outcome = await carryOut(parsed.data, now);
    if (outcome === null) return `nobody signs in with ${parsed.data.email}`;
    if (outcome.ok) return null;
    const { code, ...details } = outcome.refusal;
    return `${code}: ${JSON.stringify(details)}`;
  } finally {
    await closeDatabase();
  }
}

async function carryOut(asked: z.infer<typeof request>, now: Date): Promise<Outcome<unknown> | null> {
  const actor = systemActor("command line");
  if (asked.verb === "add") {
    const { verb: _, ...staff } = asked;
    return takeOnStaff(actor, staff, now);
  }
  const person = await findStaffForSignIn(await db(), { email: asked.email.trim().toLowerCase() });
  if (person === null) return null;
  if (asked.verb === "leave") return letStaffGo(actor, person.id, now);
  return changePassword(actor, person.id, asked.password, now);
}
