// Takes somebody on, such as the first owner of a shop that starts without the demo. Stop the shop first.
//   node .ci/add-staff.mjs ROLE EMAIL NAME        ROLE is desk, maker or owner; the password is read from standard input
import { readFileSync } from "node:fs";
import path from "node:path";
import { loadBundled } from "./bundle.mjs";
import { fail, root, say } from "./lib.mjs";
import { prepare } from "./prepare.mjs";

const [role, email, ...names] = process.argv.slice(2);
if (!role || !email || names.length === 0)
  fail("node .ci/add-staff.mjs ROLE EMAIL NAME, with the password on standard input");
if (process.stdin.isTTY) say("Password, then Enter and Ctrl-D:");
const password = readFileSync(0, "utf8").replace(/\r?\n$/, "");

await prepare();
process.env.NODE_ENV ??= "production";
const { addStaff } = await loadBundled("prisma/staff.ts", "staff");
try {
  const wrong = await addStaff({ role, email, name: names.join(" "), password }, path.join(root, "prisma"), new Date());
  if (wrong !== null) fail(wrong);
  say(`${names.join(" ")} can sign in as ${role} with ${email}.`);
  process.exit(0);
} catch (error) {
  fail(error.message);
}
