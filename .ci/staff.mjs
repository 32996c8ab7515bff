// The people of the shop, from the command line. Stop a shop on the embedded database first.
//   node .ci/staff.mjs add ROLE EMAIL NAME     takes somebody on, such as the first owner; ROLE is desk, maker or owner
//   node .ci/staff.mjs password EMAIL          a new password; every session of the person ends
//   node .ci/staff.mjs leave EMAIL             no sign-in and no session counts from now on; what they did stays in the record
// Passwords are read from standard input.
import { readFileSync } from "node:fs";
import path from "node:path";
import { bundleThreads, loadBundled } from "./bundle.mjs";
import { fail, root, say } from "./lib.mjs";
import { prepare } from "./prepare.mjs";

const usage = "node .ci/staff.mjs add ROLE EMAIL NAME | password EMAIL | leave EMAIL";
const [verb, ...words] = process.argv.slice(2);

function readPassword() {
  if (process.stdin.isTTY) say("Password, then Enter and Ctrl-D:");
  return readFileSync(0, "utf8").replace(/\r?\n$/, "");
}

/** What is asked of the shop, and what to say when it is done. */
function request() {
  if (verb === "add" && words.length >= 3) {
    const [role, email, ...names] = words;
    const name = names.join(" ");
    const input = { verb, role, email, name, password: readPassword() };
    return { input, done: `${name} can sign in as ${role} with ${email}.` };
  }
  const [email] = words;
  if (verb === "password" && words.length === 1)
    return { input: { verb, email, password: readPassword() }, done: `${email} signs in with the new password.` };
  if (verb === "leave" && words.length === 1)
    return { input: { verb, email }, done: `${email} cannot sign in any more; every session has ended.` };
  return fail(usage);
}

const { input, done } = request();
await prepare();
process.env.NODE_ENV ??= "production";
await bundleThreads();
const { manageStaff } = await loadBundled("prisma/staff.ts", "staff");
try {
  const wrong = await manageStaff(input, path.join(root, "prisma"), new Date());
  if (wrong !== null) fail(wrong);
  say(done);
  process.exit(0);
} catch (error) {
  fail(error.message);
}
