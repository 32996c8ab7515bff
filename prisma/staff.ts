/** Takes somebody on from the command line: the first owner of a shop that starts without the demo. */
import { type NewStaff, systemActor, takeOnStaff } from "#auth";
import { closeDatabase, database } from "#data/client";
import { applyMigrations } from "#data/migrate";
import { newStaffSchema } from "#schemas";

/** @returns what is wrong in words, or null when the person can sign in */
export async function addStaff(input: unknown, prismaFolder: string, now: Date): Promise<string | null> {
  const parsed = newStaffSchema.safeParse(input);
  if (!parsed.success) return parsed.error.issues.map((issue) => issue.message).join("; ");
  const open = await database();
  await applyMigrations(open, prismaFolder);
  const staff: NewStaff = parsed.data;
  const outcome = await takeOnStaff(systemActor("command line"), staff, now);
  await closeDatabase();
  if (outcome.ok) return null;
  const { code, ...details } = outcome.refusal;
  return `${code}: ${JSON.stringify(details)}`;
}
