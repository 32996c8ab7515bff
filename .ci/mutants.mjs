// npm run -s mutants -- --seed N --sample N [--room ROOM] [--limit SECONDS]
// npm run -s mutants -- --map
// Plants faults in product code, one at a time, and counts which of them the tests notice. Faults live in copies of the
// project under the system's temporary folder; the checkout is only read. Progress goes to standard error, JSON to
// standard output. --map notes which functions each test file runs, so that a fault is put to these first; a later --map
// runs again only what has changed.
import { generate, install, requireNode, typegen } from "./prepare.mjs";

requireNode();
await install();
await generate();
await typegen();
await import("./mutants/main.mjs");
