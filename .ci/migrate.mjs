// Brings the database up to date and, when it is new, fills in the demo shop. Run by start; may be run by hand.
//
// The demo comes from prisma/seed.ts: `export async function seedDemo(): Promise<{ signIns: {role, email, password}[] }>`.
// A database without staff counts as new, so the seed must write the staff last or everything in one transaction.
import { existsSync } from "node:fs";
import path from "node:path";
import { loadBundled } from "./bundle.mjs";
import { fail, root, say, step, writeStamp } from "./lib.mjs";
import { settings } from "./settings.mjs";

const { wantsDemo, dataFolder } = settings();
process.env.NODE_ENV ??= "production";

try {
  const maintenance = await loadBundled("lib/data/maintenance.ts", "maintenance");
  const open = await step("Opening the database", () => maintenance.database());
  const applied = await maintenance.applyMigrations(open, path.join(root, "prisma"));
  if (applied.length > 0) say(`Database brought up to date: ${applied.join(", ")}`);
  if (wantsDemo && existsSync(path.join(root, "prisma/seed.ts")) && (await open.db.staff.count()) === 0) {
    const { seedDemo } = await loadBundled("prisma/seed.ts", "seed");
    const made = await step("Setting up the demo shop, Thistle Yard", () => seedDemo());
    writeStamp(path.join(dataFolder, "demo-sign-ins.json"), JSON.stringify(made?.signIns ?? [], null, 2));
  }
  await maintenance.closeDatabase();
  process.exit(0);
} catch (error) {
  if (error?.name === "FolderInUse") fail(error.message);
  say(`\nThe database could not be prepared: ${error?.stack ?? error}`);
  process.exit(1);
}
