// Brings the database up to date and, when it is new, fills in the demo shop. Run by start; may be run by hand.
//
// The demo comes from prisma/seed.ts and is made in an empty database only. A start that was ended while it was being made
// left a mark in the database: the next one clears that away and begins anew.
import path from "node:path";
import { bundleThreads, loadBundled } from "./bundle.mjs";
import { fail, root, say, step, writeStamp } from "./lib.mjs";
import { settings } from "./settings.mjs";

const { wantsDemo, dataFolder } = settings();
process.env.NODE_ENV ??= "production";

try {
  await bundleThreads();
  const maintenance = await loadBundled("lib/data/maintenance.ts", "maintenance");
  const open = await step("Opening the database", () => maintenance.database());
  const { applied, startedOver } = await maintenance.prepareDatabase(open, path.join(root, "prisma"), async () => {
    if (!wantsDemo) return;
    const { seedDemo } = await loadBundled("prisma/seed.ts", "seed");
    const { signIns } = await step("Setting up the demo shop, Thistle Yard", () => seedDemo());
    writeStamp(path.join(dataFolder, "demo-sign-ins.json"), JSON.stringify(signIns, null, 2));
  });
  if (startedOver) say("The first start before this one was ended early; what it left was cleared away.");
  if (applied.length > 0) say(`Database brought up to date: ${applied.join(", ")}`);
  await maintenance.closeDatabase();
  process.exit(0);
} catch (error) {
  if (["FolderInUse", "DatabaseProblem"].includes(error?.name)) fail(error.message);
  say(`\nThe database could not be prepared: ${error?.stack ?? error}`);
  process.exit(1);
}
